#include <memory>
#include <string>
#include <utility>

#include "bindings/bind.hpp"
#include "bindings/costing_state.hpp"
#include "bindings/curve_of.hpp"
#include "bindings/kept.hpp"
#include "bindings/share.hpp"
#include "measure/quantity.hpp"

namespace scalepan::bindings {

namespace {

void heed_signals() {
  const py::gil_scoped_acquire held;
  if (PyErr_CheckSignals() != 0) throw py::error_already_set();
}

/// Whole portions in equal steps upward; nothing for another range, which is taken point by point.
std::optional<CurvePoints> points_of_range(const py::iterable& portions) {
  constexpr long long most = 1LL << 40;
  if (!PyRange_Check(portions.ptr())) return std::nullopt;
  const auto within = [&](const char* name) {
    int overflow = 0;
    const py::object value = portions.attr(name);
    const long long word = PyLong_AsLongLongAndOverflow(value.ptr(), &overflow);
    return overflow == 0 && word > 0 && word <= most ? std::optional(word) : std::nullopt;
  };
  const auto first = within("start");
  const auto step = within("step");
  const auto stop = within("stop");
  if (!first || !step || !stop) return std::nullopt;
  const long long count = *stop <= *first ? 0 : (*stop - *first - 1) / *step + 1;
  return CurvePoints(CurvePoints::Even{*first, *step}, static_cast<std::size_t>(count));
}

CurvePoints points_of(const py::iterable& portions) {
  if (auto even = points_of_range(portions)) return std::move(*even);
  std::vector<Rational> listed;
  for (const py::handle size : portions) {
    listed.push_back(number_of(size));
    expect_curve_points(listed.size());
  }
  return CurvePoints(std::move(listed));
}

/// Without the interpreter's lock, which the curve's own would wait for.
template <class Action>
decltype(auto) released(Action action) {
  const py::gil_scoped_release released;
  return action();
}

struct CurveState {
  CostingState costing;
  std::optional<CurvePoints::Even> even;
  std::size_t count = 0;
  std::vector<Rational> listed;
  std::optional<CurveRecord> record;
};

CurveState state_of_curve(const Curve& curve) {
  const CurvePoints& points = curve.points();
  CurveState state{
      state_of_costing(curve.costing()), points.even(), points.size(), {}, curve.record()};
  for (std::size_t i = 0; !points.even() && i < points.size(); ++i) {
    state.listed.push_back(points[i]);
  }
  return state;
}

std::unique_ptr<Curve> curve_from(CurveState state) {
  const std::unique_ptr<Costing> costing = costing_of(std::move(state.costing));
  CurvePoints points =
      state.even ? CurvePoints(*state.even, state.count) : CurvePoints(std::move(state.listed));
  if (!state.record) return std::make_unique<Curve>(*costing, std::move(points), heed_signals);
  return std::make_unique<Curve>(*costing, std::move(points), std::move(*state.record));
}

py::list fractions_of(const std::vector<Rational>& numbers) {
  py::list list(numbers.size());
  for (std::size_t i = 0; i < numbers.size(); ++i) list[i] = fraction_of(numbers[i]);
  return list;
}

py::list cost_list(const Curve& curve, const char* which) {
  return fractions_of(
      released([&]() -> const std::vector<Rational>& { return curve.cost(which); }));
}

py::list portions_of(const Curve& curve) {
  py::list list(curve.points().size());
  for (std::size_t i = 0; i < curve.points().size(); ++i) {
    list[i] = fraction_of(curve.points()[i]);
  }
  return list;
}

void bind_breakpoints(py::module_& m) {
  py::class_<Breakpoint>(m, "Breakpoint")
      .def_readonly("portions", &Breakpoint::portions)
      .def_readonly("item", &Breakpoint::item)
      .def_property_readonly("packs_before",
                             [](const Breakpoint& b) { return packs_of(b.packs_before); })
      .def_property_readonly("packs", [](const Breakpoint& b) { return packs_of(b.packs); })
      .def("__repr__", [](const Breakpoint& b) {
        return "<Breakpoint at " + Quantity(b.portions).text() + ": " + b.item + " " +
               text_of(b.packs) + ">";
      });
}

void bind_counts(py::module_& m) {
  py::class_<CountRun>(m, "CountRun")
      .def_readonly("first", &CountRun::first)
      .def_readonly("last", &CountRun::last)
      .def_readonly("every", &CountRun::every)
      .def("__repr__", [](const CountRun& run) { return "<CountRun " + text_of(run) + ">"; })
      .def("__str__", [](const CountRun& run) { return text_of(run); });
  py::class_<EvenCounts>(m, "EvenCounts")
      .def_readonly("item", &EvenCounts::item)
      .def_readonly("counts", &EvenCounts::counts);
  py::class_<CheapestCount>(m, "CheapestCount")
      .def_readonly("portions", &CheapestCount::portions)
      .def_readonly("per_portion", &CheapestCount::per_portion)
      .def_readonly("counts", &CheapestCount::counts);
  py::class_<DominatedCounts>(m, "DominatedCounts")
      .def_readonly("first", &DominatedCounts::first)
      .def_readonly("last", &DominatedCounts::last)
      .def_readonly("by", &DominatedCounts::by)
      .def_readonly("costs", &DominatedCounts::costs);
}

void bind_column(py::module_& m) {
  py::class_<WordColumn, std::shared_ptr<WordColumn>>(m, "ExactColumn", py::buffer_protocol())
      .def_readonly("step", &WordColumn::step)
      .def("__len__", [](const WordColumn& column) { return column.size; })
      .def_buffer([](WordColumn& column) {
        return py::buffer_info(column.counts.get(), static_cast<py::ssize_t>(column.size), true);
      });
}

}  // namespace

std::shared_ptr<Curve> curve_of(const Costing& costing, const py::iterable& portions) {
  CurvePoints points = points_of(portions);
  const py::gil_scoped_release released;
  return std::make_shared<Curve>(costing, std::move(points), heed_signals);
}

void bind_curve(py::module_& m) {
  bind_breakpoints(m);
  bind_counts(m);
  bind_column(m);
  py::class_<Curve, std::shared_ptr<Curve>>(m, "Curve")
      .def_property_readonly("portions", &portions_of)
      .def_property_readonly("till", [](const Curve& c) { return cost_list(c, "till"); })
      .def_property_readonly("used", [](const Curve& c) { return cost_list(c, "used"); })
      .def_property_readonly("thrown", [](const Curve& c) { return cost_list(c, "thrown"); })
      .def_property_readonly("borne", [](const Curve& c) { return cost_list(c, "borne"); })
      .def_property_readonly("currency", &Curve::currency)
      .def_property_readonly("unpriced", &Curve::unpriced)
      .def_property_readonly("kernel", &Curve::kernel)
      .def(
          "column",
          [](const Curve& c, const std::string& which) {
            return released([&] { return c.column(which); });
          },
          py::arg("which") = "till")
      .def_property_readonly(
          "breakpoints", [](const Curve& c) { return released([&] { return c.breakpoints(); }); })
      .def_property_readonly(
          "even_counts", [](const Curve& c) { return released([&] { return c.even_counts(); }); })
      .def(
          "cheapest",
          [](const Curve& c, const std::string& which) {
            return released([&] { return c.cheapest(which); });
          },
          py::arg("which") = "borne")
      .def(
          "dominated",
          [](const Curve& c, const std::string& which) {
            return released([&] { return c.dominated(which); });
          },
          py::arg("which") = "till");
  keep<Breakpoint>(m, "Breakpoint");
  keep<CountRun>(m, "CountRun");
  keep<EvenCounts>(m, "EvenCounts");
  keep<CheapestCount>(m, "CheapestCount");
  keep<DominatedCounts>(m, "DominatedCounts");
  keep<WordColumn>(m, "ExactColumn");
  keep_by<Curve, &state_of_curve, &curve_from>(m, "Curve");
}

}  // namespace scalepan::bindings
