#include "check.hpp"
#include "sheet/cells.hpp"

using namespace scalepan;

namespace {

Thrown refusal(std::string_view text) {
  static const Cells cells{{"need", "5 kg EP"}, {"edible", "44/100 EP/AP"}, {"buy", "9 kg AP"},
                           {"amount", "250 g"}, {"large", "yes"},           {"nothing", "0 g"}};
  return thrown_by([&] { return cells.told(text); });
}

}  // namespace

TEST_CASE("sheet/formula: a clash of dimensions stands at its sign and names both sides") {
  CHECK(refusal("need * edible + buy") ==
        Thrown{"formula.dimension", "\"+\" meets g EP^2/AP on its left and weight AP on its right",
               "", 14});
  CHECK(refusal("need + buy") ==
        Thrown{"formula.dimension", "\"+\" meets weight EP on its left and weight AP on its right",
               "a share in AP/EP turns the left into the right", 5});
  CHECK(refusal("need > amount") ==
        Thrown{"formula.dimension", "\">\" meets weight EP on its left and weight on its right",
               "state the stage of both", 5});
  CHECK(refusal("amount + 5") ==
        Thrown{"formula.dimension", "\"+\" meets weight on its left and plain number on its right",
               "", 7});
  CHECK(refusal("if large then amount else 3") ==
        Thrown{"formula.dimension",
               "\"else\" meets weight on its left and plain number on its right", "", 21});
  CHECK(refusal("min(amount, 3)") ==
        Thrown{"formula.dimension",
               "\"min\" meets weight on its left and plain number on its right", "", 0});
}

TEST_CASE("sheet/formula: yes or no is no number") {
  CHECK(refusal("large + 1") ==
        Thrown{"formula.type", "\"+\" meets yes or no on its left and plain number on its right",
               "", 6});
  CHECK(refusal("if amount then 1 else 2") ==
        Thrown{"formula.type", "\"if\" needs yes or no, not weight", "", 0});
  CHECK(refusal("not 3") ==
        Thrown{"formula.type", "\"not\" needs yes or no, not plain number", "", 0});
  CHECK(refusal("1 and large") ==
        Thrown{"formula.type", "\"and\" meets plain number on its left and yes or no on its right",
               "both sides must be yes or no", 2});
  CHECK(refusal("1 < 2 < 3") ==
        Thrown{"formula.type", "\"<\" meets yes or no on its left and plain number on its right",
               "", 6});
  CHECK(refusal("-large") == Thrown{"formula.type", "a number is needed, not yes or no", "", 0});
}

TEST_CASE("sheet/formula: what is missing is told where it is missing") {
  CHECK(refusal("") == Thrown{"formula.unreadable", "a value is missing at the end", "", 0});
  CHECK(refusal("1 +") == Thrown{"formula.unreadable", "a value is missing at the end", "", 3});
  CHECK(refusal("* 2") == Thrown{"formula.unreadable", "a value is missing before \"*\"", "", 0});
  CHECK(refusal("(1 + 2") == Thrown{"formula.unreadable", "\")\" is missing at the end", "", 6});
  CHECK(refusal("1 + 2)") == Thrown{"formula.unreadable", "a sign is missing before \")\"", "", 5});
  CHECK(refusal("amount large") ==
        Thrown{"formula.unreadable", "a sign is missing before \"large\"", "", 7});
  CHECK(refusal("if large then 1") ==
        Thrown{"formula.unreadable", "\"else\" is missing at the end", "", 15});
  CHECK(refusal("if large else 1") ==
        Thrown{"formula.unreadable", "\"then\" is missing before \"else\"", "", 9});
  CHECK(refusal("min()") == Thrown{"formula.unreadable", "a value is missing before \")\"", "", 4});
  CHECK(refusal("1 $ 2") ==
        Thrown{"formula.unreadable", "\"$ 2\" means nothing in a formula", "", 2});
}

TEST_CASE("sheet/formula: unknown names come with the nearest") {
  CHECK(refusal("2 * ammount") ==
        Thrown{"formula.name", "no cell is called \"ammount\"", "nearest: amount", 4});
  CHECK(refusal("mini(1, 2)") ==
        Thrown{"formula.function", "no function is called \"mini\"", "nearest: min", 0});
  CHECK(refusal("abs(1, 2)") ==
        Thrown{"formula.arguments", "abs is given 2 values", "it is written abs(a)", 0});
}

TEST_CASE("sheet/formula: what can be read in two ways is refused") {
  CHECK(refusal("amount / 3/4 g") == Thrown{"formula.doubtful", "\"3/4 g\" can be read in two ways",
                                            "put brackets around what belongs together", 9});
  CHECK(refusal("1.5/2 kg") == Thrown{"formula.doubtful", "\"1.5/2 kg\" can be read in two ways",
                                      "put brackets around what belongs together", 0});
  CHECK(refusal("2 GBP/kg AP").code == "unit.doubtful");
  CHECK(refusal("2 cup").code == "unit.which_measures");
}

TEST_CASE("sheet/formula: powers are whole and small") {
  CHECK(refusal("2^0.5") ==
        Thrown{"formula.power", "what follows \"^\" must be a whole number up to 99", "", 2});
  CHECK(refusal("2^100").code == "formula.power");
  CHECK(refusal("amount^10").code == "formula.power");
}

TEST_CASE("sheet/formula: depth and length have limits") {
  std::string deep = "1";
  for (std::size_t i = 0; i <= deepest_formula; ++i) deep = "(" + deep + ")";
  CHECK(refusal(deep) == Thrown{"formula.deep", "more than 200 parts stand in one another",
                                "give inner parts names of their own", 200});
  const std::string longest(1'000'000, '1');
  CHECK(refusal(longest) ==
        Thrown{"formula.long", "the formula has 1000000 characters, and at most 100000 are read",
               "give parts of it names of their own", Place::no_offset});
}

TEST_CASE("sheet/formula: what fails while it runs stands at its sign") {
  CHECK(refusal("1 + amount / nothing") ==
        Thrown{"number.division_by_zero", "division by zero", "", 11});
  CHECK(refusal("nothing^-1") == Thrown{"number.division_by_zero", "division by zero", "", 7});
  CHECK(refusal("up_to_multiple(amount, nothing)").code == "number.rounding_step");
  CHECK(refusal("(10^99)^99").code == "nothing");
  CHECK(refusal("((10^99)^99)^99").code == "number.too_large");
}
