#include "bindings/cell_value.hpp"

#include "exact/error.hpp"
#include "measure/amount.hpp"
#include "measure/unit_text.hpp"

namespace scalepan::bindings {

namespace {

/// Amounts of one unit between two bounds, or at least the lower one.
struct QuantityInterval {
  Quantity low;
  std::optional<Quantity> high;
};

CellValue value_of(const Quantity& quantity) {
  return {quantity_type(quantity.unit()), quantity.coherent()};
}

QuantityInterval interval_between(const py::handle& low, const py::handle& high) {
  const Quantity from = quantity_from(low);
  if (high.is_none()) return {from, std::nullopt};
  const Quantity to = quantity_from(high);
  if (!(from.dimension() == to.dimension())) {
    fail_dimensions("quantity.compare", "an interval from", from, to);
  }
  if (to < from) {
    fail("sheet.interval", "an interval from " + from.text() + " cannot end at " + to.text(),
         "the lower bound comes first");
  }
  return {from, to};
}

CellValue value_of(const QuantityInterval& interval) {
  Interval value{interval.low.coherent(), std::nullopt};
  if (interval.high) value.high = interval.high->coherent();
  if (value.high == value.low) return value_of(interval.low);
  return {quantity_type(interval.low.unit()), value};
}

bool is_number(const py::handle& given) {
  Rational number;
  return rational_from_python(given, number);
}

}  // namespace

/// A food, a recipe, offers or packs: to be handed on, and compared.
struct HeldThing {
  CellValue value;

  [[nodiscard]] std::string text() const { return std::get<ThingPointer>(value.value)->text(); }
};

Quantity quantity_from(const py::handle& given) {
  if (py::isinstance<Quantity>(given)) return given.cast<Quantity>();
  if (py::isinstance<py::str>(given)) return parse_quantity(given.cast<std::string>());
  return Quantity(given.cast<Rational>());
}

CellValue cell_value_of(const py::handle& given) {
  if (py::isinstance<py::bool_>(given)) return {flag_type(), Rational(given.cast<bool>() ? 1 : 0)};
  if (py::isinstance<QuantityInterval>(given)) return value_of(given.cast<QuantityInterval>());
  if (py::isinstance<HeldThing>(given)) return given.cast<const HeldThing&>().value;
  if (py::isinstance<Text>(given)) {
    return {text_type(), std::make_shared<const Text>(given.cast<const Text&>().text())};
  }
  const bool amount = py::isinstance<Quantity>(given) || py::isinstance<py::str>(given);
  if (amount || is_number(given)) return value_of(quantity_from(given));
  fail("sheet.value",
       "a cell cannot hold a " +
           py::str(py::type::handle_of(given).attr("__name__")).cast<std::string>(),
       "an amount, a number, yes or no, an Interval or a Text");
}

py::object python_of(const CellValue& value) {
  if (const auto* thing = std::get_if<ThingPointer>(&value.value)) {
    if (value.type.kind != ValueKind::text) return py::cast(HeldThing{value});
    return py::str((*thing)->text());
  }
  if (const auto* interval = std::get_if<Interval>(&value.value)) {
    QuantityInterval told{Quantity::of_coherent(interval->low, value.type.shown), std::nullopt};
    if (interval->high) told.high = Quantity::of_coherent(*interval->high, value.type.shown);
    return py::cast(told);
  }
  const Rational& number = std::get<Rational>(value.value);
  if (value.type.kind == ValueKind::flag) return py::bool_(!number.is_zero());
  return py::cast(Quantity::of_coherent(number, value.type.shown));
}

py::object given_of(const CellValue& value) {
  const auto* thing = std::get_if<ThingPointer>(&value.value);
  const bool text = thing != nullptr && value.type.kind == ValueKind::text;
  return text ? py::cast(Text((*thing)->text())) : python_of(value);
}

ValueType value_type_of(const std::string& text) {
  if (text == "text") return text_type();
  if (text == "yes or no") return flag_type();
  if (text == "plain number" || text.empty()) return quantity_type(Unit());
  return quantity_type(parse_unit(text));
}

void bind_interval(py::module_& m) {
  py::class_<HeldThing>(m, "Thing")
      .def_property_readonly("kind", [](const HeldThing& self) { return self.value.type.name(); })
      .def("__str__", &HeldThing::text)
      .def("__repr__", [](const HeldThing& self) { return "<Thing " + self.text() + ">"; })
      .def("__eq__", [](const HeldThing& a, const HeldThing& b) { return a.value == b.value; })
      .def("__hash__", [](const HeldThing& self) { return py::hash(py::str(self.text())); });
  py::class_<QuantityInterval>(m, "Interval")
      .def(py::init(&interval_between), py::arg("low"), py::arg("high") = py::none())
      .def_readonly("low", &QuantityInterval::low)
      .def_readonly("high", &QuantityInterval::high)
      .def("__eq__", [](const QuantityInterval& a,
                        const QuantityInterval& b) { return a.low == b.low && a.high == b.high; })
      .def("__hash__",
           [](const QuantityInterval& self) {
             return self.low.hash() ^ (self.high ? 31 * self.high->hash() : 1);
           })
      .def("__str__",
           [](const QuantityInterval& self) {
             const CellValue value = value_of(self);
             return figure_text(value.value, value.type);
           })
      .def("__repr__", [](const QuantityInterval& self) {
        return "scalepan.Interval('" + self.low.text() + "'" +
               (self.high ? ", '" + self.high->text() + "'" : "") + ")";
      });
  py::class_<Text>(m, "Text")
      .def(py::init<std::string>(), py::arg("written"))
      .def("__str__", &Text::text)
      .def("__repr__",
           [](const Text& self) {
             return "scalepan.Text(" + py::repr(py::str(self.text())).cast<std::string>() + ")";
           })
      .def("__eq__", [](const Text& a, const Text& b) { return a.text() == b.text(); })
      .def("__hash__", [](const Text& self) { return py::hash(py::str(self.text())); });
}

}  // namespace scalepan::bindings
