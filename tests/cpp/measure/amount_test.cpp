// Amounts as a cook writes them. 1 lb is 45359237/100000 g, 1 oz a sixteenth of it.
#include "measure/amount.hpp"

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

const Rational pound(45359237, 100000);

struct Read {
  std::optional<Amount> amount;
  std::size_t position = 0;
};

Read read(std::string_view text, UnitStyle style = UnitStyle::kitchen,
          Measures measures = Measures::metric) {
  Read result;
  result.amount = read_amount(text, result.position, measures, style);
  return result;
}

TEST_CASE("amounts: a number and a unit") {
  CHECK(q("1 1/2 cup", Measures::us) == q("3/2 cup_us"));
  CHECK(q("1-1/2 cup", Measures::us) == q("3/2 cup_us"));
  CHECK(q("1½ cup", Measures::us) == q("3/2 cup_us"));
  CHECK(q("5 kg EP").stage() == Stage::edible);
  CHECK(q("  .5kg  ") == q("500 g"));
  CHECK(q("40").dimension().is_number());
  CHECK(q("-3 kg").coherent() == Rational(-3000));
  CHECK(q("44/100 EP/AP").coherent() == Rational(11, 25));
}

TEST_CASE("amounts: a sum of units that grow smaller") {
  CHECK(q("1 lb 4 oz").coherent() == pound * Rational(5, 4));
  CHECK(q("1 lb 4 oz").unit() == u("lb"));
  CHECK(q("2 kg 500 g 250 mg").coherent() == Rational(250025, 100));
  CHECK(q("1 kg EP 200 g EP") == q("1.2 kg EP"));
  CHECK(q("1 cup 2 tbsp 1/2 tsp", Measures::au) == q("292.5 mL"));
  CHECK(q("1 h 20 min") == q("4800 s"));
}

TEST_CASE("amounts: so many times so much") {
  CHECK(q("2 x 400 g") == q("800 g"));
  CHECK(q("2 × 400 g") == q("800 g"));
  CHECK(q("2x400g") == q("800 g"));
  CHECK(q("3 x 1 lb 4 oz").coherent() == pound * Rational(15, 4));
  const Read tins = read("2 x 400 g tins chickpeas");
  REQUIRE(tins.amount);
  CHECK(tins.amount->times == Rational(2));
  CHECK(tins.amount->low == Rational(800));
  CHECK(tins.amount->high == Rational(800));
  CHECK(tins.position == 9);
  CHECK(read("2 xylitol sticks").position == 1);
}

TEST_CASE("amounts: ranges keep both ends") {
  const auto is_range = [](std::string_view text, const Rational& low, const Rational& high) {
    const Read range = read(text);
    return range.amount && range.amount->is_range() && range.amount->low == low &&
           range.amount->high == high;
  };
  CHECK(is_range("2-3 eggs", 2, 3));
  CHECK(is_range("2 - 3 eggs", 2, 3));
  CHECK(is_range("2 to 3 eggs", 2, 3));
  CHECK(is_range("3 to 2 eggs", 2, 3));
  CHECK(is_range("2–3 eggs", 2, 3));
  CHECK(is_range("2 — 3 eggs", 2, 3));
  CHECK(is_range("1-2 1/2 kg flour", 1000, 2500));
  CHECK(is_range("1/2-3/4 kg flour", 500, 750));
  CHECK(is_range("1½ to 2 kg flour", 1500, 2000));
  CHECK(is_range("2 x 1 to 2 kg flour", 2000, 4000));
}

TEST_CASE("amounts: what looks like a range but is a mixed number") {
  CHECK(q("1-1/2") == q("1.5"));
  CHECK(q("3-1/4") == q("3.25"));
  CHECK(q("1-2/3") == q("5/3"));
}

TEST_CASE("amounts: in a recipe line the unit is one kitchen unit, and reading stops there") {
  const Read leeks = read("500 g EP leeks");
  REQUIRE(leeks.amount);
  CHECK(leeks.amount->low == Rational(500));
  CHECK(leeks.amount->unit == u("g"));
  CHECK(leeks.position == 5);
  CHECK_FALSE(read("3 eggs").amount->unit);
  CHECK(read("3 eggs").position == 1);
  CHECK(read("1 kg 2 eggs").position == 4);
  CHECK(read("2 to taste").position == 1);
}

TEST_CASE("amounts: no number, no amount") {
  CHECK_FALSE(read("some salt").amount);
  CHECK(read("some salt").position == 0);
  CHECK_FALSE(read("").amount);
  CHECK_FALSE(read("- 3 g salt").amount);
}

}  // namespace
}  // namespace scalepan
