// Recipes that cannot be: code, place, message and hint.
#include "recipe/reading.hpp"

namespace scalepan {
namespace {

std::string refusal(const RecipeInput& input) {
  return told_by([&] { return Recipe(input, shared_pantry()).name(); });
}

TEST_CASE("recipe errors: name, serves, tested sizes, lines") {
  RecipeInput input = recipe_input({"4 eggs"});
  input.name.text.clear();
  CHECK(refusal(input) == "recipe.name @ pot.toml:1:8: the recipe has no name");
  input.name.text = "Pot\n";
  CHECK(refusal(input) ==
        "recipe.name @ pot.toml:1:8: the name of the recipe holds a control character");
  CHECK(refusal(recipe_input({"4 eggs"}, 0)) ==
        "recipe.serves @ pot.toml:2:10: serves is 0, but must be above zero (write the number of "
        "portions the amounts are for)");
  CHECK(refusal(recipe_input({"4 eggs"}, Rational(-1, 3)))
            .starts_with("recipe.serves @ pot.toml:2:10: serves is -1/3, but must be above zero"));
  input = recipe_input({"4 eggs"});
  input.tested_at = {4, 0};
  CHECK(refusal(input) ==
        "recipe.tested_at @ pot.toml:3:13: tested_at holds 0, but must be above zero");
  CHECK(refusal(recipe_input({})) == "recipe.no_lines @ pot.toml:4:9: the recipe has no lines");
}

TEST_CASE("recipe errors: two lines of one id, with the place of the first") {
  CHECK(
      refusal(recipe_input({"4 eggs", "500 g leeks", "2 eggs, boiled"})) ==
      "recipe.duplicate_id @ pot.toml:7:11: two lines have the id eggs, this one and the one at "
      "pot.toml:5:11 (give one an id of its own: { id = \"eggs_2\", line = \"2 eggs, boiled\" })");
  RecipeInput input = recipe_input({"4 eggs", "2 eggs, boiled"});
  for (LineInput& line : input.lines) line.line.place = {};
  CHECK(
      refusal(input) ==
      "recipe.duplicate_id @ two lines have the id eggs, this one and the one at \"4 eggs\" (give "
      "one an id of its own: { id = \"eggs_2\", line = \"2 eggs, boiled\" })");
  input.lines[1].id = placed("eggs_2");
  CHECK(refusal(input) == "no error was thrown");
}

TEST_CASE("recipe errors: a rule that contradicts the written amount") {
  CHECK(
      refusal(recipe_input({"3 eggs | one per portion"})) ==
      "rule.contradiction @ pot.toml:5:11: the line has 3 piece AP for 4 portions, but its rule (1 "
      "per portion) gives 4 piece AP (change the amount or the rule)");
  CHECK(
      refusal(recipe_input({"50 g flour | 20 g per 3 portions"})) ==
      "rule.contradiction @ pot.toml:5:11: the line has 50 g AP for 4 portions, but its rule (20 g "
      "per 3 portions) gives 40 g AP (change the amount or the rule)");
  CHECK(refusal(recipe_input({"40 g flour | 20 g per 3 portions"})) == "no error was thrown");
}

TEST_CASE("recipe errors: a size must be above zero") {
  const Recipe pot = recipe_of({"4 eggs"});
  CHECK(thrown_by([&] { return pot.scaled(0).portions(); }) ==
        Thrown{"recipe.portions", "a recipe cannot be made for 0 portions",
               "the number of portions must be above zero"});
  CHECK(thrown_by([&] { return pot.scaled(Rational(-5, 2)).portions(); }) ==
        Thrown{"recipe.portions", "a recipe cannot be made for -2.5 portions",
               "the number of portions must be above zero"});
}

TEST_CASE("recipe errors: an error in a line comes with the line's place") {
  CHECK(refusal(recipe_input({"4 eggs", "1/0 kg leeks"})) ==
        "number.zero_denominator @ pot.toml:6:13: the denominator of a fraction is zero");
}

}  // namespace
}  // namespace scalepan
