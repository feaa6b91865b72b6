// What the line reader reads of an amount: numbers, units, sums, containers. Expected values follow
// the grammars in number_phrase.hpp, measure_phrase.hpp and sum_phrase.hpp.
#include "recipe/reading.hpp"
#include "recipe/written.hpp"

namespace scalepan {
namespace {

struct Row {
  const char* text;
  const char* low;  // empty: open
  const char* high;
  const char* unit;
  const char* food;
};

void check(const Row& row, Measures measures = Measures::metric,
           DecimalMark decimal = DecimalMark::point) {
  INFO(row.text);
  const WrittenLine line = written_of(row.text, measures, decimal);
  CHECK(line.kind == LineKind::ingredient);
  CHECK(bound_text(line.low) == row.low);
  CHECK(bound_text(line.high) == row.high);
  CHECK(line.unit == row.unit);
  CHECK(line.food() == row.food);
}

TEST_CASE("written amounts: numbers in digits") {
  for (const Row& row : {
           Row{"3 eggs", "3", "3", "piece", "eggs"},
           {"1 1/2 cups milk", "3/2", "3/2", "cup", "milk"},
           {"1-1/2 cups milk", "3/2", "3/2", "cup", "milk"},
           {"1 & 1/2 cups milk", "3/2", "3/2", "cup", "milk"},
           {"2½ cups milk", "5/2", "5/2", "cup", "milk"},
           {"½ cup milk", "1/2", "1/2", "cup", "milk"},
           {"2.5 kg leeks", "5/2", "5/2", "kg", "leeks"},
           {".35 kg leeks", "7/20", "7/20", "kg", "leeks"},
           {"1 and 1/2 cups milk", "3/2", "3/2", "cup", "milk"},
       }) {
    check(row);
  }
}

TEST_CASE("written amounts: numbers in words") {
  for (const Row& row : {
           Row{"two leeks", "2", "2", "piece", "leeks"},
           {"Twelve leeks", "12", "12", "piece", "leeks"},
           {"twenty-four eggs", "24", "24", "piece", "eggs"},
           {"one hundred and fifty g flour", "150", "150", "g", "flour"},
           {"a hundred g flour", "100", "100", "g", "flour"},
           {"one and a half cups milk", "3/2", "3/2", "cup", "milk"},
           {"two-and-a-half cups milk", "5/2", "5/2", "cup", "milk"},
           {"2 and a half cups milk", "5/2", "5/2", "cup", "milk"},
           {"three-quarters cup milk", "3/4", "3/4", "cup", "milk"},
           {"two thirds cup milk", "2/3", "2/3", "cup", "milk"},
           {"half an onion", "1/2", "1/2", "piece", "onion"},
           {"half-pint milk", "1/2", "1/2", "pt", "milk"},
           {"a pound and a half of flour", "3/2", "3/2", "lb", "flour"},
           {"an onion", "1", "1", "piece", "onion"},
           {"a dozen eggs", "1", "1", "dozen", "eggs"},
           {"half a dozen eggs", "1/2", "1/2", "dozen", "eggs"},
       }) {
    check(row);
  }
  CHECK(written_of("an onion").article);
  CHECK_FALSE(written_of("one onion").article);
}

TEST_CASE("written amounts: ranges and bounds") {
  for (const Row& row : {
           Row{"2 to 3 leeks", "2", "3", "piece", "leeks"},
           {"2-3 leeks", "2", "3", "piece", "leeks"},
           {"2–3 leeks", "2", "3", "piece", "leeks"},
           {"1 or 2 eggs", "1", "2", "piece", "eggs"},
           {"1 (or 2) eggs", "1", "2", "piece", "eggs"},
           {"two to three eggs", "2", "3", "piece", "eggs"},
           {"between 2 and 3 eggs", "2", "3", "piece", "eggs"},
           {"⅓ to ¼ cup milk", "1/4", "1/3", "cup", "milk"},
           {"400-500 g leeks", "400", "500", "g", "leeks"},
           {"2 lb to 3 lb leeks", "2", "3", "lb", "leeks"},
           // A metric tablespoon is three metric teaspoons.
           {"1 tsp to 1 tbsp milk", "1", "3", "tsp", "milk"},
           {"at least 2 eggs", "2", "", "piece", "eggs"},
           {"rather more than 1 pint milk", "1", "", "pt", "milk"},
           {"1 or more eggs", "1", "", "piece", "eggs"},
           {"2 eggs or more", "2", "", "piece", "eggs"},
           {"2 cups or more milk", "2", "", "cup", "milk"},
           {"1 tsp milk (more if liked)", "1", "", "tsp", "milk"},
           {"up to 2 eggs", "", "2", "piece", "eggs"},
           {"just under 1 pint milk", "", "1", "pt", "milk"},
           {"nearly 1 lb leeks", "", "1", "lb", "leeks"},
           {"2 eggs or less", "", "2", "piece", "eggs"},
       }) {
    check(row);
  }
}

TEST_CASE("written amounts: hedges") {
  for (const char* text :
       {"about 500 g leeks", "About 500 g leeks", "approx. 500 g leeks", "roughly 500 g leeks",
        "ca. 500 g leeks", "~500 g leeks", "500 g or so leeks"}) {
    INFO(text);
    check({text, "500", "500", "g", "leeks"});
    CHECK(written_of(text).about);
  }
  CHECK_FALSE(written_of("500 g leeks").about);
}

TEST_CASE("written amounts: what leaves the amount to the cook gives none") {
  for (const char* text : {"some milk", "a little milk", "milk, to taste", "milk as needed",
                           "plenty of milk", "milk, to serve", "enough milk"}) {
    check({text, "", "", "", "milk"});
    INFO(text);
    CHECK(written_of(text).to_taste);
    CHECK_FALSE(written_of(text).has_amount());
  }
  check({"a few onions", "", "", "piece", "onions"});
  check({"leeks, trimmed", "", "", "", "leeks"});
  CHECK_FALSE(written_of("leeks, trimmed").to_taste);
}

TEST_CASE("written amounts: units") {
  for (const Row& row : {
           Row{"500g leeks", "500", "500", "g", "leeks"},
           {"500 g. of leeks", "500", "500", "g", "leeks"},
           {"2 T milk", "2", "2", "tbsp", "milk"},
           {"2 t milk", "2", "2", "tsp", "milk"},
           {"2 c milk", "2", "2", "cup", "milk"},
           {"2 tablespoonfuls milk", "2", "2", "tbsp", "milk"},
           {"3 fl. oz. milk", "3", "3", "fl oz", "milk"},
           {"3# onions", "3", "3", "lb", "onions"},
           {"3 lbs onions", "3", "3", "lb", "onions"},
           {"1 cup(s) milk", "1", "1", "cup", "milk"},
           {"3 cloves of garlic", "3", "3", "clove", "garlic"},
           {"3 cloves garlic", "3", "3", "clove", "garlic"},
           {"2 garlic cloves", "2", "2", "clove", "garlic"},
           {"2 thin slices onion", "2", "2", "slice", "onion"},
           {"pinch of flour", "1", "1", "pinch", "flour"},
           {"a pinch flour", "1", "1", "pinch", "flour"},
           {"2 x eggs", "2", "2", "piece", "eggs"},
       }) {
    check(row);
  }
}

TEST_CASE("written amounts: a weight has its unit, a cup only where measures are stated") {
  CHECK(written_of("1 lb leeks", Measures::unstated).measure == u("lb"));
  CHECK(written_of("1 cup milk", Measures::us).measure == u("cup_us"));
  CHECK(written_of("1 cup milk", Measures::imperial).measure == u("cup_imperial"));
  CHECK_FALSE(written_of("1 cup milk", Measures::unstated).measure);
  CHECK_FALSE(written_of("1 pinch flour").measure);
}

TEST_CASE("written amounts: fills") {
  CHECK(written_of("1 heaping tbsp flour").fill == "heaping");
  CHECK(written_of("scant 1/4 tsp flour").fill == "scant");
  CHECK(written_of("1 level tbsp flour").fill == "level");
  CHECK(written_of("2 well packed cups flour").fill == "well packed");
  CHECK(written_of("1 cup flour (packed)").fill == "packed");
  CHECK(written_of("1 cup flour").fill.empty());
  const WrittenLine handful = written_of("large handful leeks");
  CHECK(handful.size == "large");
  CHECK(handful.unit == "handful");
}

TEST_CASE("written amounts: a sum is exact in its first unit") {
  for (const Row& row : {
           // 16 ounces make a pound.
           Row{"1 lb 4 oz leeks", "5/4", "5/4", "lb", "leeks"},
           {"1 lb 9 oz leeks", "25/16", "25/16", "lb", "leeks"},
           {"1 lb. and 4 oz. leeks", "5/4", "5/4", "lb", "leeks"},
           {"1 kg 250 g leeks", "5/4", "5/4", "kg", "leeks"},
           // Metric: a cup of 250 mL, a spoon of 15 mL.
           {"1 cup plus 2 tbsp flour", "28/25", "28/25", "cup", "flour"},
       }) {
    check(row);
  }
  for (const Row& row : {
           // US: 4 cups a quart, 16 tablespoons a cup, 3 teaspoons a tablespoon.
           Row{"1 quart(s) + 1 cup(s) milk", "5/4", "5/4", "qt", "milk"},
           {"2 qt 2 cups milk", "5/2", "5/2", "qt", "milk"},
           {"1 cup + 1 tbsp + 1 tsp flour", "13/12", "13/12", "cup", "flour"},
       }) {
    check(row, Measures::us);
  }
}

TEST_CASE("written amounts: decimal comma") {
  for (const Row& row : {
           Row{"1,5 kg leeks", "3/2", "3/2", "kg", "leeks"},
           {"0,25 kg leeks", "1/4", "1/4", "kg", "leeks"},
           {"2,5 to 3,5 kg leeks", "5/2", "7/2", "kg", "leeks"},
           {"1 1/2 kg leeks", "3/2", "3/2", "kg", "leeks"},
           {"500 g leeks, sliced", "500", "500", "g", "leeks"},
       }) {
    check(row, Measures::metric, DecimalMark::comma);
  }
}

struct Container {
  const char* text;
  const char* number;
  const char* unit;
  const char* each_text;
  const char* each;
};

TEST_CASE("written amounts: containers and pieces of a stated size") {
  for (const Container& row : {
           Container{"2 x 400 g tins chickpeas", "2", "tin", "400 g", "400 g"},
           {"2 × 400g tins chickpeas", "2", "tin", "400g", "400 g"},
           {"one 14-oz can chickpeas", "1", "can", "14-oz", "14 oz"},
           {"1 (14.5-ounce) can chickpeas", "1", "can", "14.5-ounce", "14.5 oz"},
           {"2 (400 g) tins chickpeas", "2", "tin", "400 g", "400 g"},
           {"3 cans (400 g each) chickpeas", "3", "can", "400 g", "400 g"},
           {"200 g can chickpeas", "1", "can", "200 g", "200 g"},
           {"pound package flour", "1", "package", "pound", "1 lb"},
           {"4 x 150 g leeks", "4", "piece", "150 g", "150 g"},
       }) {
    INFO(row.text);
    const WrittenLine line = written_of(row.text);
    CHECK(bound_text(line.low) == row.number);
    CHECK(line.high == line.low);
    CHECK(line.unit == row.unit);
    CHECK(line.each_text == row.each_text);
    REQUIRE(line.each);
    CHECK(*line.each == q(row.each));
  }
  const WrittenLine spoon = written_of("2 x 15 ml spoons milk");
  CHECK(bound_text(spoon.low) == "30");
  CHECK(spoon.unit == "mL");
}

struct Sized {
  const char* text;
  const char* number;
  const char* unit;
  const char* size;
};

TEST_CASE("written amounts: sizes that are no weights") {
  for (const Sized& row : {
           Sized{"2 #10 cans chickpeas", "2", "can", "#10"},
           {"#10 can chickpeas", "1", "can", "#10"},
           {"2 cm piece garlic", "1", "piece", "2 cm"},
           {"3-inch stick apple", "1", "stick", "3-inch"},
           {"2 x 1 cm slices onion", "2", "slice", "1 cm"},
           {"3 large eggs", "3", "piece", "large"},
           {"1 medium-sized onion", "1", "piece", "medium-sized"},
       }) {
    INFO(row.text);
    const WrittenLine line = written_of(row.text);
    CHECK(bound_text(line.low) == row.number);
    CHECK(line.high == line.low);
    CHECK(line.unit == row.unit);
    CHECK(line.size == row.size);
    CHECK_FALSE(line.each);
  }
}

}  // namespace
}  // namespace scalepan
