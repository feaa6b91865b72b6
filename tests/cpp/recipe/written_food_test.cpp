// What the line reader reads of a food and of what stands beside it. Expected values follow the
// grammar in written_line.hpp.
#include "recipe/reading.hpp"
#include "recipe/written.hpp"

namespace scalepan {
namespace {

using Texts = std::vector<std::string>;

struct Row {
  const char* text;
  const char* food;
  Texts states;
};

void check(const Row& row) {
  INFO(row.text);
  const WrittenLine line = written_of(row.text);
  CHECK(line.kind == LineKind::ingredient);
  CHECK(line.food() == row.food);
  CHECK(line.states == row.states);
}

TEST_CASE("written foods: states in front and behind") {
  for (const Row& row : {
           Row{"500 g trimmed leeks", "leeks", {"trimmed"}},
           {"500 g leeks, trimmed", "leeks", {"trimmed"}},
           {"500 g leeks (trimmed)", "leeks", {"trimmed"}},
           {"500 g leeks -- trimmed", "leeks", {"trimmed"}},
           {"500 g leeks; trimmed", "leeks", {"trimmed"}},
           {"500 g trimmed leeks, washed well", "leeks", {"trimmed", "washed well"}},
           {"500 g finely chopped onions", "onions", {"finely chopped"}},
           {"1 cup onions, peeled and chopped", "onions", {"peeled and chopped"}},
           {"1 cup peeled and chopped onions", "onions", {"peeled and chopped"}},
           {"1 cup flour, sifted", "flour", {"sifted"}},
           {"500 g leeks, cut in 2 cm pieces", "leeks", {"cut in 2 cm pieces"}},
           {"500 g cold milk", "milk", {"cold"}},
           {"2 red onions", "red onions", {}},
           {"220 g pearl barley", "pearl barley", {}},
           {"500 g leeks", "leeks", {}},
       }) {
    check(row);
  }
}

TEST_CASE("written foods: marks of lists and footnotes belong to no food") {
  for (const char* text : {"* 500 g leeks", "- 500 g leeks", "• 500 g leeks", "500 g leeks*",
                           "500 g leeks.", "500 g leeks,"}) {
    check({text, "leeks", {}});
  }
}

TEST_CASE("written foods: a stage said outright") {
  CHECK(written_of("500 g leeks, EP").stage == Stage::edible);
  CHECK(written_of("500 g leeks EP").stage == Stage::edible);
  CHECK(written_of("500 g AP leeks").stage == Stage::as_purchased);
  CHECK(written_of("500 g leeks, A.P.").stage == Stage::as_purchased);
  CHECK(written_of("500 g leeks (E.P.)").stage == Stage::edible);
  CHECK(written_of("500 g leeks (peeled weight)").stage == Stage::edible);
  CHECK(written_of("500 g leeks (cooked weight)").stage == Stage::cooked);
  CHECK(written_of("500 g chickpeas (drained weight)").stage == Stage::drained);
  // A state by itself says no stage outright.
  CHECK_FALSE(written_of("500 g leeks, peeled").stage);
}

TEST_CASE("written foods: several foods of one amount") {
  CHECK(written_of("1 cup leeks and onions").foods == Texts{"leeks", "onions"});
  CHECK(written_of("1 cup leeks & onions").foods == Texts{"leeks", "onions"});
  CHECK(written_of("1 tsp sage, thyme, and marjoram").foods == Texts{"sage", "thyme", "marjoram"});
  CHECK(written_of("salt and pepper").foods == Texts{"salt", "pepper"});
  CHECK(written_of("leeks, onions").foods == Texts{"leeks", "onions"});
  CHECK(written_of("1 cup leeks and onions").food() == "leeks and onions");
}

struct Choice {
  const char* text;
  const char* food;
  Texts alternatives;
};

TEST_CASE("written foods: of alternatives the first is read") {
  for (const Choice& row : {
           Choice{"500 g leeks or onions", "leeks", {"onions"}},
           {"2 onions, or leeks", "onions", {"leeks"}},
           {"2 onions (or leeks)", "onions", {"leeks"}},
           {"1/2 oz. of flour or 2 oz. milk", "flour", {"2 oz. milk"}},
           {"1 large or 2 small onions", "onions", {"2 small onions"}},
           {"2 red or white onions", "red onions", {"white onions"}},
       }) {
    INFO(row.text);
    const WrittenLine line = written_of(row.text);
    CHECK(line.food() == row.food);
    CHECK(line.alternatives == row.alternatives);
  }
  CHECK(written_of("1 large or 2 small onions").size == "large");
}

TEST_CASE("written foods: foods beside it have amounts of their own") {
  CHECK(written_of("500 g leeks with 2 eggs").beside == Texts{"2 eggs"});
  CHECK(written_of("500 g leeks, plus 2 eggs").beside == Texts{"2 eggs"});
  CHECK(written_of("500 g leeks and 2 eggs").beside == Texts{"2 eggs"});
  CHECK(written_of("500 g leeks").beside.empty());
}

struct Part {
  const char* text;
  const char* number;
  const char* food;
  const char* part;
};

TEST_CASE("written foods: of a part, the count is of the whole food") {
  for (const Part& row : {
           Part{"juice of 2 apples", "2", "apples", "juice"},
           {"Juice 2 apples", "2", "apples", "Juice"},
           {"Juice ½ apple", "1/2", "apple", "Juice"},
           {"the juice of one apple", "1", "apple", "juice"},
           {"grated rind and juice of 1 apple", "1", "apple", "grated rind and juice"},
           {"Whites two eggs", "2", "eggs", "Whites"},
           {"yolks of 3 eggs", "3", "eggs", "yolks"},
           {"2 apples, juice and rind", "2", "apples", "juice and rind"},
           {"2 apples (juice)", "2", "apples", "juice"},
       }) {
    INFO(row.text);
    const WrittenLine line = written_of(row.text);
    CHECK(bound_text(line.low) == row.number);
    CHECK(line.high == line.low);
    CHECK(line.unit == "piece");
    CHECK(line.food() == row.food);
    CHECK(line.part == row.part);
  }
}

struct Columns {
  const char* text;
  const char* number;
  const char* unit;
  const char* food;
};

TEST_CASE("written foods: the food first, as in two columns") {
  for (const Columns& row : {
           Columns{"Leeks  500 g", "500", "g", "Leeks"},
           {"Leeks\t2 lb", "2", "lb", "Leeks"},
           {"Leeks - 500 g", "500", "g", "Leeks"},
           {"Leeks – 500 g", "500", "g", "Leeks"},
           {"Leeks: 500 g", "500", "g", "Leeks"},
           {"Leeks 500 g", "500", "g", "Leeks"},
           {"Flour, sifted      ½ cup", "1/2", "cup", "Flour"},
           {"Eggs  3 large", "3", "piece", "Eggs"},
           {"Onions, chopped   1 lb (2 cups)", "1", "lb", "Onions"},
           {"Milk  As desired", "", "", "Milk"},
       }) {
    INFO(row.text);
    const WrittenLine line = written_of(row.text);
    CHECK(bound_text(line.low) == row.number);
    CHECK(line.high == line.low);
    CHECK(line.unit == row.unit);
    CHECK(line.food() == row.food);
  }
  CHECK(written_of("Flour, sifted      ½ cup").states == Texts{"sifted"});
  CHECK(written_of("Eggs  3 large").size == "large");
}

struct Second {
  const char* text;
  const char* second;
  const char* number;
  const char* unit;
  bool each;
};

TEST_CASE("written foods: second measures") {
  for (const Second& row : {
           Second{"250 g (8 oz) leeks", "8 oz", "8", "oz", false},
           {"200g/7oz flour", "7oz", "7", "oz", false},
           {"1 cup flour (125 g)", "125 g", "125", "g", false},
           {"1 cup (125 g) flour", "125 g", "125", "g", false},
           {"1 cup flour, 125 g", "125 g", "125", "g", false},
           {"4 cups or 1 kg milk", "1 kg", "1", "kg", false},
           {"4 onions (150 g each)", "150 g", "150", "g", true},
       }) {
    INFO(row.text);
    const WrittenLine line = written_of(row.text);
    REQUIRE(line.second_measures.size() == 1);
    const SecondMeasure& second = line.second_measures.front();
    CHECK(second.text == row.second);
    CHECK(fraction_text(second.low) == row.number);
    CHECK(second.high == second.low);
    CHECK(second.unit == row.unit);
    CHECK(second.each == row.each);
  }
}

// recipe_lines.md: 1 oz as 25 g and 1 lb as 500 g are read, 1.5 litres as 2 pints are not.
TEST_CASE("written foods: two measures may lie a fifth apart") {
  CHECK(written_of("1 oz (25 g) flour").second_measures.size() == 1);
  CHECK(written_of("1 lb (500 g) flour").second_measures.size() == 1);
  // 100 is a fifth of 500 away from 400; 399 is more.
  CHECK(written_of("500 g (400 g) flour").second_measures.size() == 1);
  CHECK(told_by([] { return written_of("500 g (399 g) flour"); }) ==
        "line.second_measure @ two measures of one amount contradict: 500 g and 399 g lie more "
        "than a fifth apart; understood so far: 500 g flour (write the one that is right)");
}

TEST_CASE("written foods: headings, separators and labels") {
  for (const char* text : {"TOPPING", "For the sauce", "Filling for Cake"}) {
    INFO(text);
    CHECK(written_of(text).kind == LineKind::heading);
    CHECK(written_of(text).heading == text);
    CHECK(written_of(text).foods.empty());
  }
  CHECK(written_of("Sauce:").heading == "Sauce");
  for (const char* text : {"or", "OR", "and", "---", "==="}) {
    INFO(text);
    CHECK(written_of(text).kind == LineKind::separator);
  }
  // Capitals with an amount are a line.
  CHECK(written_of("ONE CUP FLOUR").kind == LineKind::ingredient);
  CHECK(written_of("2 LEEKS").kind == LineKind::ingredient);
  const WrittenLine labelled = written_of("For dredging: 50 g flour");
  CHECK(labelled.kind == LineKind::ingredient);
  CHECK(labelled.heading == "For dredging");
  CHECK(labelled.food() == "flour");
  CHECK(bound_text(labelled.low) == "50");
}

TEST_CASE("written foods: notes") {
  CHECK(written_of("50 g flour, for dusting").notes == Texts{"for dusting"});
  CHECK(written_of("50 g flour for dusting").notes == Texts{"for dusting"});
  CHECK(written_of("500 g leeks (white part)").notes == Texts{"white part"});
  CHECK(written_of("2 leeks (such as baby leeks)").notes == Texts{"such as baby leeks"});
  CHECK(written_of("500 g leeks, No. 107").notes == Texts{"No. 107"});
  CHECK(written_of("milk, to taste").notes == Texts{"to taste"});
}

TEST_CASE("written foods: optional") {
  for (const char* text : {"1 onion (optional)", "1 onion, optional", "1 onion, if desired",
                           "(optional) 1 onion", "when liked, 1 onion", "Optional: 1 onion"}) {
    INFO(text);
    CHECK(written_of(text).optional);
    CHECK(written_of(text).food() == "onion");
    CHECK(bound_text(written_of(text).low) == "1");
  }
  CHECK_FALSE(written_of("1 onion").optional);
}

TEST_CASE("written foods: the rule behind the bar") {
  CHECK(written_of("4 eggs | one per portion").rule == "one per portion");
  CHECK(written_of("4 eggs|fixed").rule == "fixed");
  CHECK(written_of("4 eggs |").rule.empty());
  CHECK(written_of("4 eggs | one per portion").rule_at == 9);
  CHECK(written_of("500 g leeks, sliced | fixed").states == Texts{"sliced"});
  CHECK(written_of("500 g leeks (washed) | fixed").food() == "leeks");
}

TEST_CASE("written foods: parts of the line know their offsets") {
  CHECK(written_of("500 g leeks").food_at == 6);
  CHECK(written_of("500 g leeks").unit_at == 4);
  CHECK(written_of("500 g trimmed leeks").food_at == 14);
}

}  // namespace
}  // namespace scalepan
