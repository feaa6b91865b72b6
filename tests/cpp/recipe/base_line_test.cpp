#include "recipe/base_line.hpp"

#include "recipe/dishes.hpp"

namespace scalepan {
namespace {

const Bases sauces() { return {{"white_sauce", white_sauce()}}; }

std::shared_ptr<const Recipe> gratin(const std::vector<std::string>& lines) {
  return dish(lines, 4, {}, sauces());
}

std::string refusal(const std::vector<std::string>& lines) {
  return refused_dish(lines, 4, {}, sauces());
}

TEST_CASE("base lines: by amount, share, rest and portions") {
  const auto shares = gratin({"3/5 of the white sauce", "rest of the white sauce"});
  CHECK(shares->lines()[0].amount == q("480 g"));
  CHECK(shares->lines()[0].note == "3/5 of each batch");
  CHECK(shares->lines()[0].id == "white_sauce");
  CHECK(shares->lines()[1].amount == q("320 g"));
  CHECK(shares->lines()[1].note == "the rest, 2/5 of each batch");
  CHECK(shares->lines()[1].id == "rest_of_white_sauce");
  CHECK(gratin({"300 g white sauce"})->lines()[0].amount == q("300 g"));
  CHECK(gratin({"300 g White Sauce, warm"})->lines()[0].preparation == "warm");
  CHECK(gratin({"2 portions of white_sauce"})->lines()[0].amount == q("2 portion"));
  CHECK(gratin({"50 % of the white sauce, warm"})->lines()[0].preparation == "warm");
  CHECK(gratin({"1/2 of the white sauce (warm)"})->lines()[0].preparation == "warm");
  CHECK(gratin({"1/2 of the white sauce (warm), strained"})->lines()[0].preparation ==
        "warm, strained");
  CHECK(gratin({"1/2 of the white sauce, optional"})->lines()[0].optional);
  CHECK(gratin({"1/2 of the white sauce, optional"})->lines()[0].preparation.empty());
}

TEST_CASE("base lines: the recipe's own name will do, and another food stays a food") {
  const auto pot = dish({"300 g Leek and barley pot", "200 g milk"}, 4, {}, sauces());
  CHECK(pot->lines()[0].base == std::size_t{0});
  CHECK_FALSE(pot->lines()[0].several);
  CHECK_FALSE(pot->lines()[1].base);
}

TEST_CASE("base lines: the name the dish gives goes before the recipe's own") {
  const auto pot = dish({"300 g leek and barley pot"}, 4, {},
                        {{"stock", white_sauce()}, {"leek_and_barley_pot", white_sauce()}});
  CHECK(pot->lines()[0].base == std::size_t{1});
}

TEST_CASE("base lines: a share is of one batch as written and goes with the dish") {
  const Recipe ten = gratin({"3/5 of the white sauce", "200 g zest"})->scaled(10);
  CHECK(ten.lines()[0].amount == q("1200 g"));
  CHECK(ten.lines()[0].note == "3/5 of each batch");
}

TEST_CASE("base lines: amounts go by rules of their own") {
  const Recipe ten = gratin({"200 g white sauce | 50 g per portion"})->scaled(Rational(19, 2));
  CHECK(ten.lines()[0].amount == q("500 g"));
  CHECK(gratin({"200 g white sauce | fixed"})->scaled(10).lines()[0].amount == q("200 g"));
}

TEST_CASE("base lines: an amount counts against shares of the same base") {
  // 600 g are 3/4 of 800 g.
  const auto mixed = gratin({"600 g white sauce", "rest of the white sauce"});
  CHECK(mixed->lines()[1].amount == q("200 g"));
  const auto portions = gratin({"1 portion of white sauce", "the rest of the white sauce"});
  CHECK(portions->lines()[1].amount == q("600 g"));
}

TEST_CASE("base line errors: shares") {
  CHECK(refused_dish({"3/5 of the white sauce", "1/2 of the white_sauce, cold"}, 4, {}, sauces())
            .starts_with("recipe.duplicate_id @ pot.toml:6:11: two lines have the id white_sauce"));
  RecipeInput over =
      dish_input({"3/5 of the white sauce", "1/2 of the white sauce"}, 4, {}, sauces());
  over.lines[1].id = placed("topping");
  CHECK(told_by([&] { return Recipe(over, shared_pantry()).name(); }) ==
        "share.over @ pot.toml:6:11: the uses of white_sauce come to 3/5 + 1/2 = 1 1/10, more than "
        "the whole (make the shares smaller, or let one take the rest)");
  RecipeInput rests =
      dish_input({"rest of the white sauce", "rest of the white sauce"}, 4, {}, sauces());
  rests.lines[1].id = placed("topping");
  CHECK(told_by([&] { return Recipe(rests, shared_pantry()).name(); }) ==
        "share.two_rests @ pot.toml:6:11: two of the uses of white_sauce take the rest of it (give "
        "one of them a share)");
  CHECK(refusal({"all of the white sauce", "rest of the white sauce"}) ==
        "share.no_rest @ pot.toml:6:11: nothing of white_sauce is left for the rest: the other "
        "uses come to 1");
  CHECK(refusal({"900 g white sauce", "rest of the white sauce"}) ==
        "share.over @ pot.toml:6:11: the uses of white_sauce come to 1 1/8, more than the whole "
        "(make the shares smaller, or let one take the rest)");
}

TEST_CASE("base line errors: a base that is not there, or is measured otherwise") {
  CHECK(refusal({"rest of the white sause"}) ==
        "base.unknown @ pot.toml:5:23: no base is called \"white sause\" (nearest: "
        "white sauce)");
  CHECK(refusal({"1/2 of the whtie sauce"}) ==
        "base.unknown @ pot.toml:5:22: no base is called \"whtie sauce\" (nearest: "
        "white sauce)");
  CHECK(refused_dish({"rest of the stock"}, 4) ==
        "base.unknown @ pot.toml:5:23: no base is called \"stock\" (name its recipe: bases = { "
        "sauce = \"sauce.toml\" })");
  CHECK(refusal({"2 L white sauce"}) ==
        "base.measure @ pot.toml:5:13: the line takes 2 L of white_sauce, but its recipe does not "
        "say how much it makes in volume (state it there: makes = \"...\", or take a share: 1/2 of "
        "the white sauce)");
}

TEST_CASE("base line errors: rules and extras that cannot go with it") {
  CHECK(refusal({"3/5 of the white sauce | fixed"}) ==
        "base.rule @ pot.toml:5:34: a share of a base scales with the dish, by no other rule "
        "(write an amount where it must scale otherwise)");
  RecipeInput beside = dish_input({"3/5 of the white sauce"}, 4, {}, sauces());
  beside.lines[0].rule = placed("fixed", 5, 60);
  CHECK(told_by([&] { return Recipe(beside, shared_pantry()).name(); }) ==
        "base.rule @ pot.toml:5:60: a share of a base scales with the dish, by no other rule "
        "(write an amount where it must scale otherwise)");
  RecipeInput twice = dish_input({"2 portions of white sauce | fixed"}, 4, {}, sauces());
  twice.lines[0].rule = placed("fixed", 5, 60);
  CHECK(told_by([&] { return Recipe(twice, shared_pantry()).name(); }) ==
        "line.rule @ pot.toml:5:60: the line has a rule in its text and another beside it");
  RecipeInput staged = dish_input({"300 g white sauce"}, 4, {}, sauces());
  staged.lines[0].stage = placed("EP", 5, 60);
  CHECK(told_by([&] { return Recipe(staged, shared_pantry()).name(); }) ==
        "base.extras @ pot.toml:5:60: \"EP\" is said of white_sauce, which is a base and has no "
        "stage or state");
}

TEST_CASE("base line errors: an amount left to the cook makes no base") {
  CHECK(refusal({"500 g leeks, trimmed", "white sauce, to taste"}) ==
        "line.no_amount @ pot.toml:6:11: it is not written how much the line takes of the base "
        "white_sauce (write an amount, or take a share: 1/2 of the white sauce)");
}

}  // namespace
}  // namespace scalepan
