// Labels: falling weight, bases in brackets, allergens of both lists, what to check.
#include "costing/label.hpp"

#include <memory>

#include "recipe/reading.hpp"

namespace scalepan {
namespace {

Catalog labelled_pantry() {
  Catalog catalog = pantry();
  Food butter = food("butter", "butter", "butter");
  butter.allergens_eu = butter.allergens_us = {"milk"};
  add_with_names(catalog, butter);
  Food wheat = food("wheat_flour", "wheat flour", "wheat flour");
  wheat.allergens_eu = {"gluten"};
  wheat.allergens_us = {"wheat"};
  add_with_names(catalog, wheat);
  Food walnut = food("walnut", "walnuts", "walnuts");
  walnut.allergens_eu = {"nuts"};
  walnut.allergens_us = {"tree nuts"};
  add_with_names(catalog, walnut);
  Food stock = food("stock_powder", "stock powder", "stock powder");
  stock.allergens_eu = {"celery", "check the pack"};
  add_with_names(catalog, stock);
  return catalog;
}

std::shared_ptr<const Catalog> catalog() {
  static const auto shared = std::make_shared<const Catalog>(labelled_pantry());
  return shared;
}

Label label_of_lines(const std::vector<std::string>& lines) {
  return label_of(Recipe(recipe_input(lines), catalog()));
}

std::vector<std::string> names_of(const Label& label) {
  std::vector<std::string> names;
  for (const LabelItem& item : label.items) names.push_back(item.name);
  return names;
}

// 4 eggs AP at 50 g EP each (SR28) are 200 g; 3 onions at 110 g EP (SR28) are 330 g.
TEST_CASE("label: by falling weight, counts through their piece weights") {
  const Label label =
      label_of_lines({"250 g wheat flour", "4 eggs", "3 onions", "20 g butter", "210 g leeks"});
  CHECK(names_of(label) ==
        std::vector<std::string>{"onions", "wheat flour", "eggs", "leeks", "butter"});
  REQUIRE(label.items[0].grams);
  CHECK(*label.items[0].grams == Rational(330));
  REQUIRE(label.items[3].grams);
  CHECK(*label.items[3].grams == Rational(924, 10));  // SR28: leeks refuse 56 % of 210 g
}

TEST_CASE("label: equal weights keep the order of the recipe, none known comes last") {
  const Label label = label_of_lines(
      {"salt, to taste", "100 g leeks, trimmed", "100 g butter", "1 apple", "100 g flour"});
  CHECK(names_of(label) == std::vector<std::string>{"leeks", "butter", "flour", "salt", "apple"});
  CHECK(label.text.find("\nWeight not known, so perhaps too far down: salt, apple.\n") !=
        std::string::npos);
}

TEST_CASE("label: lines of one food are one ingredient, with their sum") {
  RecipeInput input = recipe_input({"60 g butter", "100 g leeks, trimmed", "70 g butter, melted"});
  input.lines[2].id = placed("topping");
  const Label label = label_of(Recipe(input, catalog()));
  CHECK(names_of(label) == std::vector<std::string>{"butter", "leeks"});
  CHECK(*label.items[0].grams == Rational(130));
}

TEST_CASE("label: the whole text") {
  const Label label =
      label_of_lines({"250 g wheat flour", "4 eggs", "20 g butter", "30 g walnuts (optional)",
                      "5 g stock powder", "2 g sea tangle"});
  CHECK(label.text ==
        "Ingredients by falling weight as they go in: WHEAT flour (GLUTEN), EGGS, walnuts (TREE "
        "NUTS, optional), butter (MILK), stock powder (CELERY, check the pack), sea tangle (check "
        "the pack).\n"
        "Allergens, EU list: celery, eggs, gluten, milk, nuts; US list: eggs, milk, tree nuts, "
        "wheat.\n"
        "Check the pack of: stock powder, sea tangle.\n"
        "A draft: whoever answers for the label follows local food law. Order after Regulation "
        "(EU) 1169/2011 Art. 18, capitals after Art. 21.");
  CHECK(label.unknown == std::vector<std::string>{"stock powder", "sea tangle"});
}

TEST_CASE("label: nothing on either list is said so") {
  const Label label = label_of_lines({"100 g leeks, trimmed"});
  CHECK(label.text.find("\nAllergens, EU list: none known; US list: none known.\n") !=
        std::string::npos);
  CHECK(label.text.find("Check the pack") == std::string::npos);
}

TEST_CASE("label: what stands in for a close relative is checked on the pack") {
  const Label label = label_of_lines({"2 red onions"});
  CHECK(label.items.front().check_pack);
}

TEST_CASE("label: two lines of one base are one ingredient") {
  RecipeInput sauce = recipe_input({"30 g butter", "300 g milk"});
  RecipeInput dish =
      recipe_input({"300 g leeks, trimmed", "1/3 of the sauce", "rest of the sauce"});
  dish.bases.push_back({"sauce", std::make_shared<const Recipe>(sauce, catalog()), {}});
  const Label label = label_of(Recipe(dish, catalog()));
  CHECK(names_of(label) == std::vector<std::string>{"sauce", "leeks"});
  CHECK(*label.items[0].grams == Rational(330));
}

TEST_CASE("label: what is taken out again weighs nothing, whatever it weighed before") {
  const Label label = label_of_lines({"1 apple | 0 % taken up", "100 g butter"});
  CHECK(names_of(label) == std::vector<std::string>{"butter", "apple"});
  CHECK(label.items[1].weighed);
}

// The sauce: 300 g milk, 30 g butter, 30 g wheat flour, 360 g; half of it is 180 g.
TEST_CASE("label: a base stands in brackets with its own ingredients, at its own place") {
  RecipeInput sauce = recipe_input({"30 g butter", "300 g milk", "30 g wheat flour"});
  RecipeInput dish = recipe_input(
      {"170 g leeks, trimmed", "1/2 of the white sauce", "190 g pearl barley", "10 g butter"});
  dish.bases.push_back({"white_sauce", std::make_shared<const Recipe>(sauce, catalog()), {}});
  const Label label = label_of(Recipe(dish, catalog()));
  CHECK(names_of(label) ==
        std::vector<std::string>{"pearl barley", "white sauce", "leeks", "butter"});
  CHECK(*label.items[1].grams == Rational(180));
  CHECK(label.text.starts_with(
      "Ingredients by falling weight as they go in: pearl barley, white sauce [milk, butter "
      "(MILK), WHEAT flour (GLUTEN)], leeks, butter (MILK).\n"));
  CHECK(label.allergens_eu == std::vector<std::string>{"gluten", "milk"});
  CHECK(label.allergens_us == std::vector<std::string>{"milk", "wheat"});
}

}  // namespace
}  // namespace scalepan
