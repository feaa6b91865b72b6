#include "recipe/batch.hpp"

#include "recipe/batch_text.hpp"
#include "recipe/dishes.hpp"

namespace scalepan {
namespace {

Quantity g(const Rational& grams) { return {grams, Unit::named("g")}; }

Thrown no_loss(const char* text) {
  return thrown_by([&] { return parse_loss(text); });
}

TEST_CASE("batch texts: a loss says what it is of, and the two differ") {
  for (const char* of : {"of the raw batch", "of raw", "of the dough", "of the batter weight",
                         "of the mixture", "of the unbaked batch weight"}) {
    CHECK(parse_loss("12 % " + std::string(of)) == Rational(88, 100));
  }
  for (const char* of : {"of the cooked batch", "of the baked weight", "of the bread"}) {
    CHECK(parse_loss("12 % " + std::string(of)) == Rational(100, 112));
  }
  CHECK(parse_loss("0 % of the raw batch") == Rational(1));
  CHECK(parse_loss(" 12.5% of the dough ") == Rational(7, 8));
}

TEST_CASE("batch texts: a loss of nothing said is refused with both readings") {
  const Thrown open{"batch.loss",
                    "it is not said what the loss of 12 % is of: of 1 kg raw it leaves 880 g, of "
                    "the cooked weight ≈ 892.9 g",
                    "write \"12 % of the raw batch\" or \"12 % of the cooked batch\"", 0};
  CHECK(no_loss("12 %") == open);
  CHECK(no_loss("12 % of the batch") == open);
  CHECK(no_loss("12 % of the flour") == open);
}

TEST_CASE("batch texts: what is no loss") {
  for (const char* text :
       {"", "twelve", "12", "12 g", "100 % of the raw batch", "-1 % of the raw batch",
        "12 % off the raw batch", "12 % of the raw batch, about"}) {
    CHECK(no_loss(text) == Thrown{"batch.loss", "\"" + std::string(text) + "\" is no loss",
                                  "write a percentage and what it is of: 12 % of the raw batch",
                                  0});
  }
}

TEST_CASE("batch texts: what a recipe makes") {
  CHECK(parse_makes("1.2 kg", Measures::metric) == q("1200 g"));
  CHECK(parse_makes("3 L", Measures::metric) == q("3000 mL"));
  CHECK(parse_makes("24", Measures::metric) == q("24 piece"));
  CHECK(parse_makes("12 portions", Measures::metric) == q("12 portion"));
  CHECK(parse_makes("48 x 90 g", Measures::metric) == q("4320 g"));
  for (const char* text : {"0 kg", "3 EUR", "2 kg EP", "3 cm"}) {
    CHECK(thrown_by([&] { return parse_makes(text, Measures::metric); }) ==
          Thrown{"batch.makes", "\"" + std::string(text) + "\" is no amount that a recipe makes",
                 "write a weight, a volume, pieces or portions: 1.2 kg, 3 L, 24 pieces", 0});
  }
}

TEST_CASE("batch texts: trays") {
  CHECK(parse_trays("2 trays") == Rational(2));
  CHECK_FALSE(parse_trays("2 kg"));
  CHECK_FALSE(parse_trays("2 trays of 12"));
  for (const char* text : {"0 trays", "1/2 tray"}) {
    CHECK(thrown_by([&] { return parse_trays(text).has_value(); }) ==
          Thrown{"batch.load", "\"" + std::string(text) + "\" is no number of trays in a load",
                 "write a whole number above zero", 0});
  }
}

// Leeks trimmed are EP; a line as purchased goes in at its edible share: 4 x 50 g EP of egg.
TEST_CASE("batches: the weight before cooking is what is edible") {
  const auto pot = dish({"500 g leeks, trimmed", "1 kg onions", "4 eggs", "10 g salt"}, 4);
  CHECK(pot->batch().before_cooking(pot->size()) == g(500 + 900 + 4 * 50 + 10));
  CHECK(pot->batch().weight(pot->size()) == g(1610));
  const Recipe ten = pot->scaled(10);
  CHECK(ten.batch().weight(ten.size()) == g(Rational(1610 * 10, 4)));
}

// 65 % of 800 g; what the line gives as drained already goes in as it is.
TEST_CASE("batches: what a tin is drained of does not go in") {
  const auto tins = dish({"2 x 400 g tins chickpeas, drained", "600 g beef stock"}, 4);
  CHECK(tins->batch().weight(tins->size()) == g(520 + 600));
  const auto whole = dish({"2 x 400 g tins chickpeas", "600 g beef stock"}, 4);
  CHECK(whole->batch().weight(whole->size()) == g(800 + 600));
  const auto drained = dish({"480 g chickpeas, drained", "600 g beef stock"}, 4);
  CHECK(drained->batch().weight(drained->size()) == g(480 + 600));
}

TEST_CASE("batches: without a drained share the weight is not known") {
  for (const char* line : {"2 x 400 g tins courgettes, drained", "2 x 400 g tins xylk, drained"}) {
    const auto tins = dish({line, "600 g beef stock"}, 4);
    CHECK_FALSE(tins->batch().weight(tins->size()));
    CHECK(tins->batch().unweighed().size() == 1);
  }
}

TEST_CASE("batches: a measured weight overrides the sum, and a loss leaves its part") {
  const auto measured = dish({"600 g broth", "400 g zest | fixed"}, 4, {.makes = "800 g"});
  CHECK(measured->batch().before_cooking(measured->size()) == g(1000));
  CHECK(measured->batch().weight(measured->size()) == g(800));
  const Recipe twice = measured->scaled(8);
  CHECK(twice.batch().before_cooking(twice.size()) == g(1600));
  CHECK(twice.batch().weight(twice.size()) == g(1280));

  const auto of_raw = dish({"1 kg broth"}, 4, {.loss = "12 % of the raw batch"});
  CHECK(of_raw->batch().weight(of_raw->size()) == g(880));
  const auto of_cooked = dish({"1 kg broth"}, 4, {.loss = "12 % of the cooked batch"});
  CHECK(of_cooked->batch().weight(of_cooked->size()) == g(Rational(100000, 112)));
}

TEST_CASE("batches: what stays in the food of frying oil, and what is taken out") {
  const auto fried =
      dish({"1 kg dough", "1 kg oil | 15 % taken up", "50 g bones | 0 % taken up"}, 4);
  CHECK(fried->batch().weight(fried->size()) == g(1150));
  CHECK(fried->lines()[1].amount == q("1 kg AP"));
  // Taken out again, so its weight need not be known.
  const auto leaf = dish({"1 kg broth", "1 bay leaf | 0 % taken up"}, 4);
  CHECK(leaf->batch().unweighed().empty());
  CHECK(leaf->batch().weight(leaf->size()) == g(1000));
}

TEST_CASE("batches: without a weight of every line, what is measured goes in proportion") {
  const auto pot = dish({"1 kg broth", "3 stars"}, 4, {.makes = "1.2 kg"});
  CHECK(pot->batch().unweighed() == std::vector<std::string>{"stars"});
  CHECK_FALSE(pot->batch().before_cooking(pot->size()));
  const Recipe ten = pot->scaled(10);
  CHECK(ten.batch().weight(ten.size()) == g(3000));
}

TEST_CASE("batches: where the lines weigh nothing, what is measured still counts") {
  const auto pot = dish({"salt, to taste"}, 4, {.makes = "1 kg"});
  CHECK(pot->batch().weight(pot->size()) == g(1000));
  const Recipe eight = pot->scaled(8);
  CHECK(eight.batch().weight(eight.size()) == g(2000));
  CHECK(eight.batch().amount(eight.size()) == g(2000));
}

TEST_CASE("batches: volumes and pieces follow the weight") {
  const auto soup = dish({"600 g broth", "400 g zest | fixed"}, 4, {.makes = "2 L"});
  const Recipe twice = soup->scaled(8);
  CHECK(twice.batch().amount(twice.size()) == q("3.2 L"));
  const auto buns = dish({"960 g dough"}, 8, {.makes = "16"});
  const Recipe more = buns->scaled(10);
  CHECK(more.batch().amount(more.size()) == q("20 piece"));
}

TEST_CASE("batches: loads by portions, weight, trays and pieces") {
  const auto loads = [](const Says& says, const Rational& portions) {
    return dish({"1 kg dough"}, 4, says)->scaled(portions).size().loads;
  };
  CHECK(loads({}, 400) == Rational(1));
  CHECK(loads({.load = "12 portions"}, 12) == Rational(1));
  CHECK(loads({.load = "12 portions"}, Rational(121, 10)) == Rational(2));
  CHECK(loads({.load = "4 kg"}, 16) == Rational(1));
  CHECK(loads({.load = "4 kg"}, 17) == Rational(2));
  CHECK(loads({.load = "2 trays", .trays = 1}, 9) == Rational(2));
  CHECK(loads({.load = "2 trays", .trays = Rational(1, 2)}, 9) == Rational(1));
  CHECK(loads({.makes = "10 pieces", .load = "24 pieces"}, 10) == Rational(2));
}

TEST_CASE("batches: what swells is loaded by what comes out") {
  // 1.2 kg of lines make 2 kg with water that none of them names: 4 kg pots take two such batches.
  const auto pot = dish({"1 kg dough", "200 g broth"}, 4, {.makes = "2 kg", .load = "4 kg"});
  CHECK(pot->scaled(8).size().loads == Rational(1));
  CHECK(pot->scaled(9).size().loads == Rational(2));
}

TEST_CASE("batches: what goes into each load") {
  const auto split = [](const Says& says, const Rational& portions, LoadSplit how) {
    const Recipe sized = dish({"1 kg dough"}, 4, says)->scaled(portions);
    const auto loads = sized.batch().loads(sized.size(), how);
    CHECK(loads->count() == sized.size().loads);
    return loads->text();
  };
  const Says by_portions{.load = "12 portions"};
  CHECK(split(by_portions, 40, LoadSplit::full_and_short) ==
        "3 loads of 12 portions and one of 4 portions");
  CHECK(split(by_portions, 40, LoadSplit::equal) == "4 loads of 10 portions");
  // A started portion counts whole: 25 of them in threes of 12.
  CHECK(split(by_portions, Rational(49, 2), LoadSplit::full_and_short) ==
        "2 loads of 12 portions and one of 1 portion");
  CHECK(split({.load = "4 kg"}, 18, LoadSplit::full_and_short) ==
        "one load of 4 kg and one of 500 g");
  CHECK(split({.load = "4 kg"}, 18, LoadSplit::equal) == "2 loads of 2.25 kg");
  CHECK(split({.load = "2 trays", .trays = 1}, 18, LoadSplit::full_and_short) ==
        "2 loads of 2 and one of 1");
  const auto without = dish({"1 kg dough"}, 4);
  CHECK_FALSE(without->batch().loads(without->size(), LoadSplit::equal));
}

TEST_CASE("batches: lines by the load go with them, and are part of what a load holds") {
  const auto pot = dish({"1980 g dough", "20 g oil | 10 g per load"}, 4, {.load = "1 kg"});
  CHECK(pot->size().loads == Rational(2));
  const Recipe six = pot->scaled(6);
  CHECK(six.size().loads == Rational(3));
  CHECK(six.lines()[1].amount == q("30 g AP"));
  CHECK(six.batch().weight(six.size()) == g(3000));
  const Recipe above = pot->scaled(Rational(6001, 1000));
  CHECK(above.size().loads == Rational(4));
}

TEST_CASE("batches: what is measured holds the lines of every load") {
  // Two loads at the written size, so 1.6 kg are 4/5 of 2 kg.
  const auto pot =
      dish({"1980 g dough", "20 g oil | 10 g per load"}, 4, {.makes = "1.6 kg", .load = "1 kg"});
  CHECK(pot->batch().weight(pot->size()) == g(1600));
  const Recipe six = pot->scaled(6);
  CHECK(six.batch().weight(six.size()) == g(2400));
}

TEST_CASE("batches: lines by the load alone") {
  const auto pot = dish({"200 g dough | 100 g per load"}, 4, {.load = "2 portions"});
  const Recipe seven = pot->scaled(7);
  CHECK(seven.batch().weight(seven.size()) == g(400));
  const auto measured =
      dish({"200 g dough | 100 g per load"}, 4, {.makes = "150 g", .load = "2 portions"});
  const Recipe more = measured->scaled(7);
  CHECK(more.batch().weight(more.size()) == g(300));
  CHECK(refused_dish({"200 g dough | 100 g per load"}, 4, {.load = "2 kg"}) ==
        "batch.load @ pot.toml:23:8: a load takes 2 kg, but how much the recipe makes in weight is "
        "not known (state it: makes = \"...\")");
}

TEST_CASE("batch errors: both makes and loss, loads that cannot be told") {
  CHECK(refused_dish({"1 kg broth"}, 4, {.makes = "800 g", .loss = "12 % of the raw batch"}) ==
        "batch.makes @ pot.toml:21:9: both what the recipe makes (800 g) and its loss are stated "
        "(state one of the two)");
  CHECK(refused_dish({"1 kg broth"}, 4, {.makes = "12 portions"}) ==
        "batch.makes @ pot.toml:21:9: the recipe serves 4, but makes 12 portions (state a weight, "
        "a volume or pieces)");
  CHECK(refused_dish({"1 kg broth"}, 4, {.loss = "12 %"}) ==
        "batch.loss @ pot.toml:22:8: it is not said what the loss of 12 % is of: of 1 kg raw it "
        "leaves 880 g, of the cooked weight ≈ 892.9 g (write \"12 % of the raw batch\" or \"12 % "
        "of the cooked batch\")");
  CHECK(refused_dish({"1 kg broth"}, 4, {.load = "2 L"}) ==
        "batch.load @ pot.toml:23:8: a load takes 2 L, but how much the recipe makes in volume is "
        "not known (state it: makes = \"...\")");
  CHECK(refused_dish({"1 kg broth"}, 4, {.load = "12"}) ==
        "batch.load @ pot.toml:23:8: a load takes 12 pieces, but how much the recipe makes in "
        "count is not known (write \"12 portions\", or state it: makes = \"...\")");
  CHECK(refused_dish({"1 kg dough", "20 g oil | per load"}, 4, {.load = "15 g"}) ==
        "batch.load @ pot.toml:23:8: a load takes 15 g, and the lines by the load alone weigh 20 "
        "g");
  CHECK(refused_dish({"1 kg dough", "20 g oil | 20 g per load"}, 24, {.load = "12 portions"}) ==
        "rule.contradiction @ pot.toml:6:11: the line has 20 g AP for 24 portions in 2 loads, but "
        "its rule (20 g per load) gives 40 g AP (change the amount or the rule)");
}

}  // namespace
}  // namespace scalepan
