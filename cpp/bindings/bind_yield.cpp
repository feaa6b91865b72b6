#include <variant>

#include "bindings/bind.hpp"
#include "bindings/kept.hpp"
#include "bindings/placed.hpp"
#include "food/yield_test.hpp"
#include "measure/amount.hpp"

namespace scalepan::bindings {

namespace {

using Given = std::variant<Quantity, std::string>;

Quantity quantity_of(const Given& given) {
  if (const auto* text = std::get_if<std::string>(&given)) return parse_quantity(*text);
  return std::get<Quantity>(given);
}

YieldTest make_yield_test(const std::vector<py::dict>& rows, const std::string& measures) {
  std::vector<WeighedRow> read;
  read.reserve(rows.size());
  for (const py::dict& row : rows) {
    read.push_back(
        read_yield_row({placed_at(row, "trial"), placed_at(row, "what"), placed_at(row, "part"),
                        placed_at(row, "weight"), placed_at(row, "value"), placed_at(row, "use")},
                       measures_named(measures)));
  }
  return YieldTest(make_trials(read));
}

void bind_trial(py::module_& m) {
  py::class_<TrialPart>(m, "TrialPart")
      .def_property_readonly("what", [](const TrialPart& p) { return text_of(p.what); })
      .def_readonly("name", &TrialPart::name)
      .def_readonly("weight", &TrialPart::weight)
      .def_readonly("is_rest", &TrialPart::is_rest)
      .def_readonly("value", &TrialPart::value)
      .def_readonly("use", &TrialPart::use)
      .def("__repr__",
           [](const TrialPart& p) { return "<TrialPart " + p.name + " " + p.weight.text() + ">"; });
  py::class_<YieldTrial>(m, "YieldTrial")
      .def_readonly("name", &YieldTrial::name)
      .def_readonly("food", &YieldTrial::food)
      .def_readonly("bought", &YieldTrial::bought)
      .def_readonly("cost", &YieldTrial::cost)
      .def_property_readonly("priced_per",
                             [](const YieldTrial& t) {
                               return t.priced_per ? std::optional(t.priced_per->symbol())
                                                   : std::nullopt;
                             })
      .def_readonly("cut", &YieldTrial::cut)
      .def_readonly("edible", &YieldTrial::edible)
      .def_readonly("drained", &YieldTrial::drained)
      .def_readonly("into_the_pan", &YieldTrial::pan)
      .def_readonly("cooked", &YieldTrial::cooked)
      .def_readonly("off", &YieldTrial::off)
      .def_readonly("served", &YieldTrial::served)
      .def("__repr__", [](const YieldTrial& t) { return "<YieldTrial " + t.name + ">"; });
}

void bind_shares(py::module_& m) {
  py::class_<TrialRatio>(m, "TrialRatio")
      .def_readonly("ratio_of_sums", &TrialRatio::of_sums)
      .def_readonly("mean_of_ratios", &TrialRatio::mean)
      .def_readonly("low", &TrialRatio::low)
      .def_readonly("high", &TrialRatio::high)
      .def_readonly("trials", &TrialRatio::trials)
      .def("__repr__", [](const TrialRatio& r) {
        return "<TrialRatio of sums " + r.of_sums.text() + ", mean " + r.mean.text() + ">";
      });
  py::class_<YieldShare>(m, "YieldShare")
      .def_property_readonly("of", [](const YieldShare& s) { return symbol_of(s.from); })
      .def_property_readonly("stage", [](const YieldShare& s) { return symbol_of(s.to); })
      .def_readonly("share", &YieldShare::ratio)
      .def_property_readonly("loss", [](const YieldShare& s) { return s.ratio.rest(); })
      .def("__repr__", [](const YieldShare& s) {
        return "<YieldShare " + std::string(symbol_of(s.to)) + "/" +
               std::string(symbol_of(s.from)) + ">";
      });
  py::class_<PartShare>(m, "PartShare")
      .def_property_readonly("what", [](const PartShare& p) { return text_of(p.what); })
      .def_readonly("name", &PartShare::name)
      .def_readonly("use", &PartShare::use)
      .def_property_readonly("of", [](const PartShare& p) { return symbol_of(p.of); })
      .def_readonly("weight", &PartShare::weight)
      .def_readonly("value", &PartShare::value)
      .def_readonly("share", &PartShare::ratio)
      .def("__repr__",
           [](const PartShare& p) { return "<PartShare " + p.name + " " + p.weight.text() + ">"; });
}

void bind_cost(py::module_& m) {
  py::class_<StageCost>(m, "StageCost")
      .def_property_readonly("stage", [](const StageCost& c) { return symbol_of(c.stage); })
      .def_readonly("trials", &StageCost::trials)
      .def_readonly("weight", &StageCost::weight)
      .def_readonly("value", &StageCost::value)
      .def_readonly("bought", &StageCost::bought)
      .def_readonly("paid", &StageCost::paid)
      .def_property_readonly("credit", [](const StageCost& c) { return c.paid - c.value; })
      .def_property_readonly("per_unit", &StageCost::per_unit)
      .def_property_readonly("price", &StageCost::price)
      .def_property_readonly("factor", &StageCost::factor)
      .def_property_readonly("yield_factor", &StageCost::yield_factor)
      .def(
          "at_price", [](const StageCost& c, const Given& p) { return c.at_price(quantity_of(p)); },
          py::arg("price"))
      .def(
          "portion_cost",
          [](const StageCost& c, const Given& size, const std::optional<Given>& price) {
            const Quantity portion = quantity_of(size);
            return price ? c.portion_cost(portion, quantity_of(*price)) : c.portion_cost(portion);
          },
          py::arg("size"), py::arg("price") = py::none())
      .def(
          "portion_factor",
          [](const StageCost& c, const Given& size) { return c.portion_factor(quantity_of(size)); },
          py::arg("size"))
      .def("__repr__", [](const StageCost& c) {
        return "<StageCost " + std::string(symbol_of(c.stage)) + " " + c.per_unit().text() + ">";
      });
}

}  // namespace

void bind_yield(py::module_& m) {
  bind_trial(m);
  bind_shares(m);
  bind_cost(m);
  keep<TrialPart>(m, "TrialPart");
  keep<YieldTrial>(m, "YieldTrial");
  keep<TrialRatio>(m, "TrialRatio");
  keep<YieldShare>(m, "YieldShare");
  keep<PartShare>(m, "PartShare");
  keep<StageCost>(m, "StageCost");
  py::class_<YieldTest>(m, "YieldTest")
      .def_property_readonly("food", &YieldTest::food)
      .def_property_readonly("trials", &YieldTest::trials)
      .def_property_readonly("shares", &YieldTest::shares)
      .def_property_readonly("parts", &YieldTest::parts)
      .def_property_readonly("costs", &YieldTest::costs);
  m.def("make_yield_test", &make_yield_test, py::arg("rows"), py::arg("measures"));
}

}  // namespace scalepan::bindings
