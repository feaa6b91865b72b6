// Texts, things, functions of upper layers, and totals of columns.
#include "check.hpp"
#include "exact/error.hpp"
#include "sheet/cells.hpp"

using namespace scalepan;

namespace {

/// A food is known by its name.
class Named final : public Thing {
 public:
  explicit Named(std::string name) : name_(std::move(name)) {}
  [[nodiscard]] std::string text() const override { return name_; }
  [[nodiscard]] bool same_as(const Thing& other) const override {
    const auto* named = dynamic_cast<const Named*>(&other);
    return named != nullptr && named->name_ == name_;
  }

 private:
  std::string name_;
};

ThingPointer food(const std::string& name) { return std::make_shared<Named>(name); }

/// `edible(food)`: the share of a leek, and of no other food.
const Function edible{"edible",
                      "edible(food)",
                      "the edible share",
                      1,
                      1,
                      Operation::call,
                      [](std::string_view name, std::span<const ValueType> arguments) {
                        if (arguments[0].kind != ValueKind::food) {
                          fail("formula.type",
                               std::string(name) + " needs a food, not " + arguments[0].name());
                        }
                        return quantity_type(parse_quantity("1 EP/AP").unit());
                      },
                      [](std::span<const Value> arguments) -> Value {
                        const std::string name = std::get<ThingPointer>(arguments[0])->text();
                        if (name == "leek") return Rational(44, 100);
                        fail("fact.missing", "no edible share of " + name + " is known");
                      }};

/// `between(low, high)`: all from the one to the other.
const Function between{
    "between",
    "between(low, high)",
    "all from the one to the other",
    2,
    2,
    Operation::call,
    [](std::string_view, std::span<const ValueType> arguments) { return arguments[0]; },
    [](std::span<const Value> arguments) -> Value {
      return Interval{std::get<Rational>(arguments[0]), std::get<Rational>(arguments[1])};
    }};

const Cells& cellar() {
  static const Cells cells = [] {
    Cells made({{"kind", "\"soup\""}, {"need", "5 kg EP"}, {"large", "yes"}, {"n", "2"}},
               {edible, between});
    made.add("leek", food("leek"), {ValueKind::food});
    made.add("other_leek", food("leek"), {ValueKind::food});
    made.add("barley", food("barley"), {ValueKind::food});
    const Unit whole = Unit::named("kg").at(Stage::as_purchased);
    made.add("bag", food("bag"), {ValueKind::packs, false, whole, Unit::named("GBP")});
    made.add("tin", food("tin"), {ValueKind::packs, false, Unit::named("kg"), Unit::named("GBP")});
    made.add("till", food("till"), {ValueKind::offers, false, whole, Unit::named("GBP")});
    made.add_total("lines.price", "31.20 GBP");
    made.add_total("n", "7");
    return made;
  }();
  return cells;
}

std::string told(std::string_view text) { return cellar().told(text); }
Thrown refusal(std::string_view text) {
  return thrown_by([&] { return told(text); });
}

}  // namespace

TEST_CASE("sheet/things: texts stand between quotes") {
  CHECK(told("kind = \"soup\"") == "yes");
  CHECK(told("kind <> \"soup\"") == "no");
  CHECK(told("\"a \"\"thick\"\" soup\"") == "a \"thick\" soup");
  CHECK(told("if large then kind else \"\"") == "soup");
  CHECK(told("\"if 2 g + kind\" = \"if 2 g + kind\"") == "yes");
  CHECK(told("\"cr\u00E8me\"") == "cr\u00E8me");
}

TEST_CASE("sheet/things: things are compared and chosen") {
  CHECK(told("leek = other_leek") == "yes");
  CHECK(told("leek <> barley") == "yes");
  CHECK(told("if large then leek else barley") == "leek");
  CHECK(told("(if large then leek else barley) = barley") == "no");
  CHECK(cellar().compile("till").programme->type.name() == "offers of weight AP in GBP");
  CHECK(cellar().compile("bag").programme->type.name() == "packs of weight AP in GBP");
}

TEST_CASE("sheet/things: functions of upper layers take any values") {
  CHECK(told("need / edible(leek)") == "11363 7/11 g AP");
  CHECK(told("1 + 2 * between(n, n * 3)") == "5 to 13");
  CHECK(told("between(2, 2) + 1") == "3");
  CHECK(told("n - between(1 + n, between(1, 1) + 3) * 2") == "-6 to -4");
}

TEST_CASE("sheet/things: the total of a column is not the cell of that name") {
  CHECK(told("sum(lines.price) / 40") == "0.78 GBP");
  CHECK(told("n + sum ( n )") == "9");
  const Formula formula = cellar().compile("n + sum ( n )");
  CHECK(formula.inputs.size() == 2);
  CHECK(text_of(*formula.programme, cellar().naming(formula)) == "n + sum ( n )");
}

TEST_CASE("sheet/things: what things cannot do is refused when the formula is entered") {
  CHECK(refusal("kind < \"z\"") ==
        Thrown{"formula.type", "\"<\" meets text on its left and text on its right", "", 5});
  CHECK(refusal("kind + 1") == Thrown{"formula.type",
                                      "\"+\" meets text on its left and plain number on its right",
                                      "", 5});
  CHECK(refusal("kind = leek") ==
        Thrown{"formula.type", "\"=\" meets text on its left and a food on its right", "", 5});
  CHECK(refusal("if large then bag else tin") ==
        Thrown{"formula.type",
               "\"else\" meets packs of weight AP in GBP on its left and packs of weight in GBP on "
               "its right",
               "", 18});
  CHECK(refusal("-leek") == Thrown{"formula.type", "a number is needed, not a food", "", 0});
  CHECK(refusal("min(kind, \"a\")") ==
        Thrown{"formula.type", "a number is needed, not text", "", 0});
  CHECK(refusal("1 + edible(kind)") ==
        Thrown{"formula.type", "edible needs a food, not text", "", 4});
}

TEST_CASE("sheet/things: what a function refuses stands at its name") {
  CHECK(refusal("need / edible(barley)") ==
        Thrown{"fact.missing", "no edible share of barley is known", "", 7});
}
