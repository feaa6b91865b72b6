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
  CHECK(refusal("amount = \"leek") == Thrown{"formula.unreadable",
                                             "the text \"leek is not closed in its line",
                                             "a text stands between two \"", 9});
  CHECK(refusal("\"a\nb\"").code == "formula.unreadable");
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
  CHECK(refusal("amount / 1.5/2 kg * 3") == Thrown{"formula.doubtful",
                                                   "\"1.5/2 kg\" can be read in two ways",
                                                   "put brackets around what belongs together", 9});
  CHECK(refusal("2 cm^2") == Thrown{"formula.doubtful",
                                    "\"^\" behind a unit can be read in two ways",
                                    "put brackets around what belongs together", 4});
  CHECK(refusal("2^3^2") == Thrown{"formula.doubtful", "\"^\" behind \"^\" can be read in two ways",
                                   "put brackets around what belongs together", 3});
  CHECK(refusal("2^1/2 kg") == Thrown{"formula.doubtful",
                                      "\"^\" before a fraction with a unit can be read in two ways",
                                      "put brackets around what belongs together", 1});
  CHECK(refusal("2 GBP/kg AP").code == "unit.doubtful");
  CHECK(refusal("2 cup").code == "unit.which_measures");
  CHECK(refusal("1 + 2 GBP/t") ==
        Thrown{"unit.doubtful", "\"t\" can mean tsp or tbsp", "write the unit out", 10});
}

TEST_CASE("sheet/formula: sum takes a column of rows and nothing else") {
  const auto refused = [](std::string_view text) {
    Cells cells{{"lines", "1"}};
    cells.add_total("lines.price", "31.20 GBP");
    return thrown_by([&] { return cells.told(text); });
  };
  CHECK(refused("sum(lines.prize)") ==
        Thrown{"formula.column", "\"sum\" needs a column of rows, and \"lines.prize\" is none",
               "nearest: lines.price", 4});
  CHECK(refused("1 + sum(2 * lines)") == Thrown{"formula.column",
                                                "\"sum\" needs a column of rows, and \"2\" is none",
                                                "it is written sum(column)", 8});
  CHECK(refused("sum(lines.price * 2)") ==
        Thrown{"formula.column",
               "\"sum\" needs one column of rows, and more stands in its brackets",
               "it is written sum(column)", 16});
  CHECK(refused("sum(lines.price, lines.price)").code == "formula.column");
  CHECK(refused("sum()") == Thrown{"formula.unreadable", "a value is missing before \")\"", "", 4});
  CHECK(refused("sum(lines.price") ==
        Thrown{"formula.unreadable", "\")\" is missing at the end", "", 15});
  CHECK(refused("lines.price") ==
        Thrown{"formula.column", "\"lines.price\" is a column of rows, and a value is needed",
               "its total is sum(lines.price)", 0});
}

TEST_CASE("sheet/formula: what bounds leave open is refused, with both sides") {
  Cells cells{{"spread", "3 kg to 5 kg"}, {"some", "at least 3 kg"}, {"around", "-1 to 1"}};
  cells.add("either_way", Interval{0, Rational(1)}, flag_type());
  const auto refused = [&](std::string_view text) {
    return thrown_by([&] { return cells.told(text); });
  };
  CHECK(refused("spread > 4 kg") ==
        Thrown{"formula.undecided",
               "\">\" cannot be decided between 3 to 5 kg on its left and 4 kg on its right",
               "give figures that leave no choice", 7});
  CHECK(refused("if 1 = 1 and some \u2264 4000 g then 1 else 2") ==
        Thrown{"formula.undecided",
               "\"\u2264\" cannot be decided between at least 3 kg on its left and 4000 g on its "
               "right",
               "give figures that leave no choice", 18});
  CHECK(refused("spread <> some").code == "formula.undecided");
  CHECK(refused("1 + if either_way then 1 else 2") ==
        Thrown{"formula.undecided", "\"if\" cannot be decided: its condition may be yes or no", "",
               4});
  CHECK(refused("up_to_multiple(7 kg, spread)") ==
        Thrown{"formula.undecided", "what is rounded to cannot be decided: the step is 3 to 5 kg",
               "give one figure", 0});
  CHECK(refused("5 kg - some") ==
        Thrown{"formula.unbounded",
               "\"-\" leaves no lower bound: 5 kg on its left and at least 3 kg on its right",
               "give an upper bound", 5});
  CHECK(refused("2 * -some") == Thrown{"formula.unbounded",
                                       "\"-\" leaves no lower bound of at least 3 kg",
                                       "give an upper bound", 4});
  CHECK(refused("around * some").code == "formula.unbounded");
  CHECK(refused("some / around") ==
        Thrown{"number.division_by_zero", "division by what may be zero: -1 to 1", "", 5});
  CHECK(refused("around^-2") ==
        Thrown{"number.division_by_zero", "division by what may be zero: 0 to 1", "", 6});
}

TEST_CASE("sheet/formula: powers are whole and small") {
  CHECK(refusal("2^0.5") ==
        Thrown{"formula.power", "what follows \"^\" must be a whole number up to 99", "", 2});
  CHECK(refusal("2^100").code == "formula.power");
  CHECK(refusal("2^2.0").code == "formula.power");
  CHECK(refusal("2^4 2/2").code == "formula.power");
  CHECK(refusal("2^3 g").code == "formula.power");
  CHECK(refusal("amount^10").code == "formula.power");
}

TEST_CASE("sheet/formula: depth and length have limits") {
  std::string deep = "1";
  for (std::size_t i = 0; i <= deepest_formula; ++i) deep = "(" + deep + ")";
  CHECK(refusal(deep) == Thrown{"formula.deep", "more than 200 parts stand in one another",
                                "give inner parts names of their own", 200});
  for (const std::string part : {"-", "not ", "if yes then ", "min(", "abs("}) {
    INFO(part);
    std::string nested;
    for (std::size_t i = 0; i <= deepest_formula; ++i) nested += part;
    CHECK(refusal(nested + "1").code == "formula.deep");
  }
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
