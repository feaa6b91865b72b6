// Lines that cannot be read: code, place with its column, message and hint. The text begins at
// pot.toml:4:11.
#include "recipe/reading.hpp"

namespace scalepan {
namespace {

std::string refusal(const char* text, Measures measures = Measures::metric) {
  return told_by([&] { return line_of(text, measures); });
}

std::string refusal(const LineInput& input) {
  return told_by([&] { return line_of(input); });
}

TEST_CASE("line errors: no amount, or nothing of it") {
  CHECK(refusal("leeks, trimmed") ==
        "line.no_amount @ pot.toml:4:11: no amount is written in \"leeks, trimmed\" (write one, or "
        "say that it is left to the cook: leeks, to taste)");
  CHECK(refusal("") ==
        "line.empty @ pot.toml:4:11: the line is empty (write an amount and a food: 500 g leeks)");
  CHECK(refusal("  0 g leeks") == "line.amount @ pot.toml:4:13: an amount must be above zero");
  CHECK(refusal("-2 eggs") == "line.amount @ pot.toml:4:11: an amount must be above zero");
  CHECK(refusal("0-2 eggs") == "line.amount @ pot.toml:4:11: an amount must be above zero");
}

TEST_CASE("line errors: no food") {
  const auto no_food = [](const std::string& understood) {
    return ": no food is written after the amount; understood so far: " + understood +
           " (write what it is an amount of: 500 g leeks)";
  };
  CHECK(refusal("500 g") == "line.no_food @ pot.toml:4:16" + no_food("500 g"));
  CHECK(refusal("500") == "line.no_food @ pot.toml:4:14" + no_food("500"));
  CHECK(refusal("500 g, sliced") == "line.no_food @ pot.toml:4:24" + no_food("500 g"));
}

TEST_CASE("line errors: units") {
  CHECK(refusal("500 tbps leeks") ==
        "unit.unknown @ pot.toml:4:15: unknown unit \"tbps\"; understood so far: 500 "
        "(nearest: tbsp, tsp, lb)");
  CHECK(refusal("4 G flour") ==
        "unit.doubtful @ pot.toml:4:13: \"G\" can mean g or gal (write the unit out)");
  CHECK(
      refusal("2 gallons milk") ==
      "unit.which_measures @ pot.toml:4:13: metric measures have no gal (there are: us 3785.4 mL, "
      "imperial 4546.1 mL)");
  CHECK(
      refusal("1 dessertspoon milk", Measures::us) ==
      "unit.which_measures @ pot.toml:4:13: us measures have no dsp (there are: imperial 10.0 mL, "
      "metric 10.0 mL)");
  CHECK(refusal("2 c 3 tbsp flour", Measures::unstated) ==
        "unit.which_measures @ pot.toml:4:15: how many tbsp make a cup is not the same in all "
        "measures, and none are stated (measures = one of: metric, us, imperial, au)");
}

TEST_CASE("line errors: numbers") {
  CHECK(
      refusal("1,5 kg leeks") ==
      "number.comma @ pot.toml:4:12: a comma stands inside a number (write 1000 for a thousand and "
      "1.5 for one and a half)");
  CHECK(refusal("1/0 kg leeks") ==
        "number.zero_denominator @ pot.toml:4:13: the denominator of a fraction is zero");
  CHECK(refusal("3-2 leeks") ==
        "amount.doubtful @ pot.toml:4:12: \"-2\" is neither the rest of a mixed number nor the end "
        "of a range (write 1 1/2, or 1 to 2)");
  CHECK(refusal("1 lb 2 kg leeks") ==
        "amount.doubtful @ pot.toml:4:16: \"2 kg\" does not go on with a smaller unit of the same "
        "kind as lb");
}

TEST_CASE("line errors: a name of two foods is told where it stands") {
  Catalog catalog = pantry();
  catalog.add(FoodName{"squash", "squashes", "UK", "courgette", true});
  catalog.add(FoodName{"squash", "squashes", "US", "apple", true});
  CHECK(told_by([&] { return line_of(input_of("2 large squashes"), Measures::metric, catalog); }) ==
        "food.ambiguous @ pot.toml:4:19: \"squashes\" means more than one food (write one of: "
        "courgettes (UK), apples (US); or choose in the recipe: region = \"UK\", "
        "or names = { squashes = \"courgette\" })");
}

TEST_CASE("line errors: rules") {
  CHECK(refusal("4 eggs | each") ==
        "rule.unreadable @ pot.toml:4:20: \"each\" is no rule (the rules: in proportion, fixed, "
        "whole, one per portion, one per 4 portions, 25 g per portion, one per load, tapered (2, "
        "1.5), (4, 2), to taste, 15 % taken up, taken out)");
  CHECK(refusal("4 eggs | whole | fixed")
            .starts_with("rule.unreadable @ pot.toml:4:20: \"whole | fixed\" is no rule"));
  CHECK(refusal("4 eggs | 25 g per portion") ==
        "rule.unit @ pot.toml:4:20: the rule counts in g, the line in piece");
  CHECK(refusal("500 g leeks | whole") ==
        "rule.unit @ pot.toml:4:17: only a count can be held to whole pieces, and the line is "
        "measured in g");
}

TEST_CASE("line errors: what a table adds has places of its own") {
  LineInput input = input_of("4 eggs | whole");
  input.rule = placed("fixed", 9, 30);
  CHECK(refusal(input) ==
        "line.rule @ pot.toml:9:30: the line has a rule in its text and another beside it");
  input.line = placed("4 eggs");
  input.rule = placed("sometimes", 9, 30);
  CHECK(refusal(input).starts_with("rule.unreadable @ pot.toml:9:30: \"sometimes\" is no rule"));
  input.rule = {};
  input.stage = placed("raw", 9, 50);
  CHECK(refusal(input) ==
        "line.stage @ pot.toml:9:50: \"raw\" is no stage (stage is one of AP, EP, cooked, drained, "
        "served)");
}

}  // namespace
}  // namespace scalepan
