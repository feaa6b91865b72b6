#include "recipe/made_bases.hpp"

#include "recipe/dishes.hpp"

namespace scalepan {
namespace {

const MadeBase& made(const Recipe& recipe, const std::string& name) {
  for (const MadeBase& base : recipe.made_bases()) {
    if (base.name == name) return base;
  }
  FAIL("no base " << name);
  return recipe.made_bases().front();
}

/// Two dishes that share a sauce, and a menu of both: three parts of the sauce's batch of 800 g.
std::shared_ptr<const Recipe> menu() {
  const auto sauce = white_sauce();
  const auto gratin =
      dish({"3/5 of the white sauce", "1 kg leeks, trimmed"}, 4, {}, {{"white_sauce", sauce}});
  const auto pie =
      dish({"rest of the white sauce", "500 g leeks, trimmed"}, 6, {}, {{"white_sauce", sauce}});
  return dish({"4 portions of gratin", "6 portions of pie"}, 10, {},
              {{"gratin", gratin}, {"pie", pie}});
}

TEST_CASE("made bases: one batch for all uses, and its lines with their base's name") {
  const auto recipe = menu();
  const MadeBase& sauce = made(*recipe, "white_sauce");
  CHECK(sauce.batches == Rational(8, 5));
  REQUIRE(sauce.uses.size() == 2);
  std::vector<std::string> users;
  for (const BaseUse& use : sauce.uses) users.push_back(use.line);
  std::ranges::sort(users);
  CHECK(users == std::vector<std::string>{"gratin.white_sauce", "pie.rest_of_white_sauce"});
  CHECK(line_called(recipe->food_lines(), "white_sauce.zest").amount == q("160 g AP"));
  CHECK(line_called(recipe->food_lines(), "white_sauce.broth").amount == q("1440 g AP"));
  CHECK(line_called(recipe->food_lines(), "gratin.leeks").amount == q("1 kg EP"));
  CHECK(line_called(recipe->food_lines(), "pie.leeks").made_in == "pie");
}

TEST_CASE("made bases: at two factors, users stand behind what they use") {
  const Recipe twice = menu()->scaled(20);
  CHECK(made(twice, "white_sauce").batches == Rational(16, 5));
  CHECK(made(twice, "gratin").batches == Rational(2));
  CHECK(twice.made_bases().front().name == "white_sauce");
  CHECK(line_called(twice.food_lines(), "white_sauce.zest").amount == q("320 g AP"));
}

TEST_CASE("made bases: one made larger where a line that is fixed leaves it short") {
  // 200 g fixed and 800 g to scale: two batches in proportion come to 1800 g of the 2000 g.
  const auto base = dish({"200 g zest | fixed", "800 g broth"}, 4);
  const Recipe two = dish({"all of the stock"}, 4, {}, {{"stock", base}})->scaled(8);
  const MadeBase& stock = made(two, "stock");
  CHECK(stock.batches == Rational(2));
  CHECK(stock.recipe->size().factor == Rational(9, 4));
  CHECK(line_called(two.food_lines(), "stock.broth").amount == q("1800 g AP"));
  CHECK(line_called(two.food_lines(), "stock.zest").amount == q("200 g AP"));
  // At half the size it makes more than is used, and stays so.
  const Recipe half = dish({"all of the stock"}, 4, {}, {{"stock", base}})->scaled(2);
  CHECK(made(half, "stock").recipe->size().factor == Rational(1, 2));
}

TEST_CASE("made bases: where steps jump over what is wanted, the next whole portions are made") {
  // For 7 portions of the dish 7/4 of 480 g, 840 g: 7 of the base come to 700 + 100 + 30 = 830 g.
  const auto base =
      dish({"400 g broth", "50 g zest | 50 g per 4 portions", "30 g peel | fixed"}, 4);
  const auto pot = dish({"all of the stock"}, 4, {}, {{"stock", base}});
  CHECK(made(pot->scaled(7), "stock").recipe->size().portions == Rational(71, 10));
  // 1.99 batches of 480 g are 955.2 g: 8 portions come to 930 g, any more to more than 980 g.
  const Recipe jumped = pot->scaled(Rational(199, 25));
  CHECK(made(jumped, "stock").batches == Rational(199, 100));
  CHECK(made(jumped, "stock").recipe->size().portions == Rational(9));
  CHECK(made(jumped, "stock").recipe->batch().weight(made(jumped, "stock").recipe->size()) ==
        q("1080 g"));
}

TEST_CASE("made bases: portions asked for are so many portions, whatever they weigh") {
  // 10 of 4 portions with a fixed line weigh less than 2 1/2 times the 1 kg as written.
  const auto base = dish({"200 g zest | fixed", "800 g broth"}, 4);
  const Recipe menu = dish({"4 portions of the stock"}, 4, {}, {{"stock", base}})->scaled(10);
  CHECK(made(menu, "stock").recipe->size().portions == Rational(10));
  CHECK(line_called(menu.food_lines(), "stock.broth").amount == q("2000 g AP"));
}

TEST_CASE("made bases: of a base no line takes from, nothing is made") {
  const auto pot = dish({"500 g leeks, trimmed"}, 4, {}, {{"stock", white_sauce()}});
  CHECK(pot->made_bases().empty());
  CHECK(pot->food_lines().size() == 1);
}

TEST_CASE("made bases: two of one name are refused") {
  const auto pie = dish({"300 g sauce"}, 4, {}, {{"sauce", white_sauce()}});
  const auto other = std::make_shared<const Recipe>(
      [] {
        RecipeInput input = recipe_input({"1 kg tomatoes"});
        input.name = placed("Tomato sauce", 1, 8);
        return input;
      }(),
      shared_pantry());
  CHECK(
      refused_dish({"4 portions of pie", "300 g sauce"}, 4, {}, {{"pie", pie}, {"sauce", other}}) ==
      "base.name_clash @ pot.toml:24:11: two bases are called sauce: Tomato sauce and Leek and "
      "barley pot (give one of them another name)");
}

}  // namespace
}  // namespace scalepan
