#include "bindings/cell_value.hpp"

#include <algorithm>

#include "bindings/archive_shared.hpp"
#include "bindings/kept.hpp"
#include "bindings/share.hpp"
#include "costing/kitchen_things.hpp"
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

std::string written_of(const Text& text) { return text.text(); }

std::unique_ptr<Text> text_of(std::string written) {
  return std::make_unique<Text>(std::move(written));
}

/// A food, and its facts as the catalogue has them.
struct FoodState {
  std::string name;
  std::shared_ptr<const Catalog> catalog;
  std::vector<std::pair<std::string, std::string>> facts;  // of a food, by id
};

FoodState state_of(const FoodThing& food) {
  FoodState state{food.text(), food.shared_catalog(), {}};
  for (const Fact* fact : food.facts()) state.facts.emplace_back(fact->food, fact->id);
  return state;
}

ThingPointer food_of(const FoodState& state) {
  std::vector<const Fact*> facts;
  for (const auto& [food, id] : state.facts) {
    const std::vector<const Fact*> known = state.catalog->facts(food);
    const auto found = std::ranges::find(known, id, &Fact::id);
    if (found == known.end()) fail_damaged();
    facts.push_back(*found);
  }
  return std::make_shared<const FoodThing>(state.name, state.catalog, std::move(facts));
}

enum class ThingKind : std::uint8_t { text, food, recipe };

/// Offers and packs belong to the plan of a costing; compared, they are what they tell.
bool is_of_costing(const Thing& thing) {
  return dynamic_cast<const OffersThing*>(&thing) != nullptr ||
         dynamic_cast<const PacksThing*>(&thing) != nullptr;
}

ThingKind kind_of(const Thing* thing) {
  if (dynamic_cast<const FoodThing*>(thing) != nullptr) return ThingKind::food;
  if (dynamic_cast<const RecipeThing*>(thing) != nullptr) return ThingKind::recipe;
  if (dynamic_cast<const Text*>(thing) != nullptr) return ThingKind::text;
  fail("pickle.thing", "offers and packs are parts of a costing, and go into no pickle without it",
       "make a pickle of the costing");
}

}  // namespace

/// A food, a recipe, offers or packs: to be handed on, and compared.
struct HeldThing {
  CellValue value;

  [[nodiscard]] std::string text() const { return std::get<ThingPointer>(value.value)->text(); }
};

void pass(Archive& archive, ThingPointer& value) {
  if (archive.compares() && is_of_costing(*value)) {
    std::string told = value->text();
    std::vector<Why> parts = value->parts();
    archive.text(told);
    return pass(archive, parts);
  }
  ThingKind kind = archive.reads() ? ThingKind::text : kind_of(value.get());
  pass(archive, kind);
  if (kind == ThingKind::food) {
    FoodState state;
    if (!archive.reads()) state = state_of(dynamic_cast<const FoodThing&>(*value));
    pass(archive, state);
    if (archive.reads()) value = food_of(state);
  } else if (kind == ThingKind::recipe) {
    std::shared_ptr<const Recipe> recipe;
    if (!archive.reads()) recipe = dynamic_cast<const RecipeThing&>(*value).recipe();
    pass(archive, recipe);
    if (archive.reads()) value = std::make_shared<const RecipeThing>(std::move(recipe));
  } else {
    std::string text;
    if (!archive.reads()) text = value->text();
    archive.text(text);
    if (archive.reads()) value = std::make_shared<const Text>(std::move(text));
  }
}

void pass(Archive& archive, std::shared_ptr<const Error>& value) {
  bool there = value != nullptr;
  pass(archive, there);
  if (!there) return;
  std::string code;
  std::string message;
  std::string hint;
  Place place;
  if (!archive.reads()) {
    code = value->code();
    message = value->message();
    hint = value->hint();
    place = value->place();
  }
  pass(archive, code);
  pass(archive, message);
  pass(archive, hint);
  pass(archive, place);
  if (archive.reads()) {
    value = std::make_shared<const Error>(code, std::move(message), std::move(hint), place);
  }
}

Quantity quantity_from(const py::handle& given) {
  if (py::isinstance<Quantity>(given)) return given.cast<Quantity>();
  if (py::isinstance<py::str>(given)) return parse_quantity(given.cast<std::string>());
  return Quantity(number_of(given));
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
      .def("__repr__", [](const HeldThing& self) { return "<Thing " + self.text() + ">"; });
  keep<HeldThing>(m, "Thing");
  py::class_<QuantityInterval>(m, "Interval")
      .def(py::init(&interval_between), py::arg("low"), py::arg("high") = py::none())
      .def_readonly("low", &QuantityInterval::low)
      .def_readonly("high", &QuantityInterval::high)
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
      .def("__repr__", [](const Text& self) {
        return "scalepan.Text(" + py::repr(py::str(self.text())).cast<std::string>() + ")";
      });
  keep<QuantityInterval>(m, "Interval");
  keep_by<Text, &written_of, &text_of>(m, "Text");
}

}  // namespace scalepan::bindings
