#include "recipe/bakers_percent.hpp"

#include "recipe/dishes.hpp"

namespace scalepan {
namespace {

RecipeInput dough_input(const std::vector<std::string>& lines, const char* flour = "10 kg") {
  RecipeInput input = recipe_input(lines, 40);
  input.flour = placed(flour, 30, 9);
  return input;
}

Recipe dough(const std::vector<std::string>& lines, const char* flour = "10 kg") {
  return {dough_input(lines, flour), shared_pantry()};
}

TEST_CASE("baker's percent: each line as so much of the flours together") {
  const Recipe bread =
      dough({"90 % flour", "10 % rye flour", "58 % water", "1.75% salt | fixed", "4 eggs"});
  CHECK(bread.lines()[0].amount == q("9 kg AP"));
  CHECK(bread.lines()[2].amount == q("5.8 kg AP"));
  CHECK(bread.lines()[2].text == "58 % water");
  CHECK(bread.lines()[3].amount == q("175 g AP"));
  CHECK(bread.scaled(80).lines()[3].amount == q("175 g AP"));
  CHECK(bread.lines()[4].amount == q("4 piece AP"));
}

TEST_CASE("baker's percent: in and out again is exact") {
  const Recipe bread = dough({"100 % flour", "58 % water", "1 3/4 % salt", "3/8 % yeast"}, "40 lb");
  const auto percents = bakers_percents(bread.scaled(Rational(123, 7)), {"flour"});
  REQUIRE(percents.size() == 4);
  CHECK(percents[0].percent == Rational(100));
  CHECK(percents[1].percent == Rational(58));
  CHECK(percents[2].percent == Rational(7, 4));
  CHECK(percents[3].percent == Rational(3, 8));
}

TEST_CASE("baker's percent: errors") {
  const auto refused = [](const Recipe& recipe, const std::vector<std::string>& flours) {
    return told_by([&] { return bakers_percents(recipe, flours).size(); });
  };
  CHECK(told_by([] { return dough({"58 % water"}, "10 L").name(); }) ==
        "recipe.flour @ pot.toml:30:9: \"10 L\" is no weight of flour (write the weight of all "
        "flours together: flour = \"10 kg\")");
  CHECK(told_by([] {
          return dough({"58 % water"}, "0 kg").name();
        }).starts_with("recipe.flour @ pot.toml:30:9: \"0 kg\" is no weight of flour"));
  const auto bread = dish({"1 kg flour", "600 g water", "salt, to taste"}, 4);
  CHECK(refused(*bread, {}) ==
        "recipe.flour @ it is not said which lines are flour (name them: "
        "flours=[\"bread_flour\"])");
  CHECK(refused(*bread, {"rye"}) == "recipe.flour @ no line of the recipe is rye");
  CHECK(refused(*bread, {"salt"}) ==
        "recipe.flour @ the lines named as flour weigh nothing (name lines with a weight)");
  CHECK(refused(*dish({"1 kg flour", "3 stars"}, 4), {"flour"}) ==
        "batch.unknown @ pot.toml:6:11: no fact gives the weight of stars (write it by weight, or "
        "add a fact of your own)");
}

TEST_CASE("baker's percent: of a base, it is not told which whole is meant") {
  RecipeInput input = dough_input({"100 % flour", "20 % starter"});
  input.bases.push_back({"starter", white_sauce(), Place{"pot.toml", 24, 11, {}}});
  CHECK(
      told_by([&] { return Recipe(input, shared_pantry()).name(); }) ==
      "base.percent @ pot.toml:6:11: 20 % could be of the flour or of the starter (write \"20 % of "
      "the starter\", or its weight: 2 kg starter)");
  input.lines[1].line.text = "20 % of the starter";
  CHECK(Recipe(input, shared_pantry()).lines()[1].amount == q("160 g"));
}

}  // namespace
}  // namespace scalepan
