#include <memory>

#include "bindings/bind.hpp"
#include "bindings/kept.hpp"
#include "bindings/share.hpp"
#include "exact/error.hpp"
#include "measure/amount.hpp"
#include "measure/measuring_out.hpp"
#include "measure/nearest.hpp"
#include "measure/told.hpp"
#include "measure/unit_table.hpp"
#include "measure/unit_text.hpp"

namespace scalepan::bindings {

namespace {

Quantity make_quantity(const py::object& amount, const std::optional<std::string>& unit,
                       const std::optional<std::string>& measures) {
  const Measures region = measures_named(measures.value_or(""));
  const bool text = py::isinstance<py::str>(amount);
  if (!unit && text) return parse_quantity(amount.cast<std::string>(), region);
  const Unit shown = unit ? parse_unit(*unit, region) : Unit();
  return {number_of(amount), shown};
}

/// What stands on the other side of an operator: a quantity, or a number.
std::optional<Quantity> operand(const py::object& other) {
  if (py::isinstance<Quantity>(other)) return other.cast<Quantity>();
  Rational number;
  if (py::isinstance<py::str>(other) || !rational_from_python(other, number)) return std::nullopt;
  return Quantity(number);
}

/// As `operand`, for sums and comparisons: a literal zero takes any dimension.
std::optional<Quantity> like(const Quantity& q, const py::object& other) {
  auto value = operand(other);
  const bool number = value && !py::isinstance<Quantity>(other);
  if (number && value->coherent().is_zero()) return Quantity(0, q.unit());
  return value;
}

template <typename Take, typename Apply>
auto operation(Take take, Apply apply) {
  return [take, apply](const Quantity& q, const py::object& other) -> py::object {
    const auto value = take(q, other);
    if (!value) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
    return py::cast(apply(q, *value));
  };
}

std::optional<Quantity> any(const Quantity& /*q*/, const py::object& other) {
  return operand(other);
}

bool equals(const Quantity& q, const py::object& other) {
  return py::isinstance<Quantity>(other) && q == other.cast<Quantity>();
}

void bind_arithmetic(py::class_<Quantity>& type) {
  using Q = Quantity;
  type.def("__add__", operation(like, [](const Q& a, const Q& b) { return a + b; }))
      .def("__radd__", operation(like, [](const Q& a, const Q& b) { return b + a; }))
      .def("__sub__", operation(like, [](const Q& a, const Q& b) { return a - b; }))
      .def("__rsub__", operation(like, [](const Q& a, const Q& b) { return b - a; }))
      .def("__mul__", operation(any, [](const Q& a, const Q& b) { return a * b; }))
      .def("__rmul__", operation(any, [](const Q& a, const Q& b) { return b * a; }))
      .def("__truediv__", operation(any, [](const Q& a, const Q& b) { return a / b; }))
      .def("__rtruediv__", operation(any, [](const Q& a, const Q& b) { return b / a; }))
      .def("__lt__", operation(like, [](const Q& a, const Q& b) { return a < b; }))
      .def("__le__", operation(like, [](const Q& a, const Q& b) { return a <= b; }))
      .def("__gt__", operation(like, [](const Q& a, const Q& b) { return a > b; }))
      .def("__ge__", operation(like, [](const Q& a, const Q& b) { return a >= b; }))
      .def("__eq__", &equals)
      .def("__hash__", &Quantity::hash)
      .def("__neg__", [](const Q& q) { return -q; })
      .def("__abs__", [](const Q& q) { return q.coherent().sign() < 0 ? -q : q; })
      .def("__bool__", [](const Q& q) { return !q.coherent().is_zero(); });
}

void bind_quantity(py::module_& m) {
  py::class_<Quantity> type(m, "Quantity");
  type.def(
          "to",
          [](const Quantity& q, const std::string& unit, const std::string& measures) {
            return q.to(parse_unit(unit, measures_named(measures)));
          },
          py::arg("unit"), py::arg("measures") = "")
      .def_property_readonly("value", &Quantity::value)
      .def_property_readonly("unit", [](const Quantity& q) { return q.unit().symbol(); })
      .def_property_readonly("dimension", [](const Quantity& q) { return q.dimension().name(); })
      .def_property_readonly("stage",
                             [](const Quantity& q) { return std::string(symbol_of(q.stage())); })
      .def_property_readonly("told", [](const Quantity& q) { return tell(q).text; })
      .def_property_readonly("told_money", [](const Quantity& q) { return tell_money(q).text; })
      .def("__str__", &Quantity::text)
      .def("__repr__", [](const Quantity& q) { return "Quantity('" + q.text() + "')"; })
      .def("__copy__", [](const Quantity& q) { return q; })
      .def("__deepcopy__", [](const Quantity& q, const py::dict& /*memo*/) { return q; })
      .def(
          py::pickle([](const Quantity& q) { return py::make_tuple(q.value(), q.unit().symbol()); },
                     [](const py::tuple& state) {
                       const auto symbol = state[1].cast<std::string>();
                       return Quantity(state[0].cast<Rational>(),
                                       symbol.empty() ? Unit() : parse_unit(symbol));
                     }));
  bind_arithmetic(type);
}

py::list unit_rows() {
  py::list rows;
  for (const NamedUnit* unit : all_units()) {
    rows.append(py::make_tuple(unit->symbol, unit->label, unit->ucum, unit->dimension.name(),
                               unit->ratio, std::string(name_of(unit->measures))));
  }
  return rows;
}

std::vector<std::string> near_misses(const std::string& name,
                                     const std::vector<std::string>& known) {
  return nearest_names(name, std::vector<std::string_view>(known.begin(), known.end()));
}

/// One measure: name, plural, size, most, graduations as (step, from, to), source.
using MeasureRow = std::tuple<std::string, std::string, Quantity, std::optional<Rational>,
                              std::vector<std::tuple<Quantity, Quantity, Quantity>>, std::string>;

std::shared_ptr<MeasureSet> make_measure_set(const std::string& name,
                                             const std::vector<MeasureRow>& rows) {
  std::vector<KitchenMeasure> measures;
  measures.reserve(rows.size());
  for (const auto& [own_name, plural, size, most, graduations, source] : rows) {
    KitchenMeasure measure{own_name, plural, size, most, {}, source};
    for (const auto& [step, from, to] : graduations) {
      measure.graduations.push_back({step, from, to});
    }
    measures.push_back(std::move(measure));
  }
  return std::make_shared<MeasureSet>(name, std::move(measures));
}

py::list rows_of(const MeasureSet& set) {
  py::list rows;
  for (const KitchenMeasure& measure : set.measures()) {
    py::list graduations;
    for (const auto& [step, from, to] : measure.graduations) {
      graduations.append(py::make_tuple(step, from, to));
    }
    rows.append(py::make_tuple(measure.name, measure.plural, measure.size, measure.most,
                               graduations, measure.source));
  }
  return rows;
}

py::tuple measured(const MeasureSet& set, const Quantity& exact,
                   const std::optional<Rational>& most_pieces,
                   const std::optional<Quantity>& within) {
  const MeasuredOut out = set.nearest(exact, {most_pieces, within});
  py::list pieces;
  for (const auto& [count, name] : out.pieces) pieces.append(py::make_tuple(int_of(count), name));
  return py::make_tuple(pieces, out.text, out.amount, out.error);
}

struct MeasureSetState {
  std::string name;
  std::vector<KitchenMeasure> measures;
};

MeasureSetState state_of_set(const MeasureSet& set) { return {set.name(), set.measures()}; }

std::unique_ptr<MeasureSet> set_of(MeasureSetState state) {
  return std::make_unique<MeasureSet>(std::move(state.name), std::move(state.measures));
}

void bind_measure_set(py::module_& m) {
  py::class_<MeasureSet, std::shared_ptr<MeasureSet>>(m, "MeasureSet")
      .def_property_readonly("name", &MeasureSet::name)
      .def_property_readonly("dimension",
                             [](const MeasureSet& set) { return set.dimension().name(); })
      .def_property_readonly("measures", &rows_of)
      .def("nearest", &measured, py::arg("exact"), py::arg("most_pieces") = py::none(),
           py::arg("within") = py::none())
      .def("__repr__", [](const MeasureSet& set) { return "<MeasureSet " + set.name() + ">"; });
  keep_by<MeasureSet, &state_of_set, &set_of>(m, "MeasureSet");
  m.def("make_measure_set", &make_measure_set, py::arg("name"), py::arg("rows"));
}

}  // namespace

void bind_measure(py::module_& m) {
  bind_quantity(m);
  m.def("quantity", &make_quantity, py::arg("amount"), py::arg("unit") = py::none(),
        py::arg("measures") = py::none());
  bind_measure_set(m);
  m.def("unit_rows", &unit_rows);
  m.def("nearest_names", &near_misses, py::arg("name"), py::arg("known"));
}

}  // namespace scalepan::bindings
