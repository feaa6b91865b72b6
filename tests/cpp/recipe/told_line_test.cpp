// Lines told to a cook, at the written size and at others.
#include "recipe/reading.hpp"

namespace scalepan {
namespace {

std::string told_at(const char* text, const Rational& portions) {
  const Recipe recipe = recipe_of({text}).scaled(portions);
  return told(recipe.lines().front(), recipe.catalog());
}

TEST_CASE("told lines: weights and volumes in the handy unit") {
  CHECK(told_at("500 g leeks, trimmed", 4) == "500 g leeks, trimmed");
  CHECK(told_at("500 g leeks, trimmed", 40) == "5 kg leeks, trimmed");
  CHECK(told_at("2 kg flour", 1) == "500 g flour");
  CHECK(told_at("1 cup milk", 6) == "1 1/2 cups milk");
  CHECK(told_at("1 cup milk", 1) == "1/4 cup milk");
  CHECK(told_at("1 kg flour", 7) == "1.75 kg flour");
  CHECK(told_at("500 g flour", Rational(32, 7)) == "≈ 571.4 g flour");
}

TEST_CASE("told lines: a count takes the singular or the plural that the catalogue has") {
  CHECK(told_at("4 eggs", 4) == "4 eggs");
  CHECK(told_at("4 eggs", 1) == "1 egg");
  CHECK(told_at("4 eggs", 2) == "2 eggs");
  CHECK(told_at("1 onion, chopped", 8) == "2 onions, chopped");
  CHECK(told_at("2 onions", 1) == "1/2 onion");
  CHECK(told_at("1 zucchini", 8) == "2 zucchini");
  CHECK(told_at("2 red onions", 2) == "1 red onion");
  CHECK(told_at("1 samphire", 8) == "2 samphire");
  CHECK(told_at("2 eggs", 7) == "3 1/2 eggs");
  CHECK(told_at("2 large eggs", 2) == "1 large egg");
}

TEST_CASE("told lines: parts of a food are counted by their own word") {
  CHECK(told_at("2 cloves garlic, crushed", 4) == "2 cloves garlic, crushed");
  CHECK(told_at("2 cloves garlic, crushed", 2) == "1 clove garlic, crushed");
  CHECK(told_at("1 leaf basil", 8) == "2 leaves basil");
}

TEST_CASE("told lines: dozens stay dozens") {
  CHECK(told_at("1 dozen eggs", 4) == "1 dozen eggs");
  CHECK(told_at("1 dozen eggs", 8) == "2 dozen eggs");
  CHECK(told_at("1 dozen eggs", 2) == "1/2 dozen eggs");
}

TEST_CASE("told lines: whole containers are told beside the weight") {
  CHECK(told_at("2 x 400 g tins chickpeas", 4) == "800 g chickpeas (2 x 400 g tins)");
  CHECK(told_at("2 x 400 g tins chickpeas", 10) == "2 kg chickpeas (5 x 400 g tins)");
  CHECK(told_at("2 x 400 g tins chickpeas", 2) == "400 g chickpeas (1 x 400 g tin)");
  CHECK(told_at("2 x 400 g tins chickpeas", 3) == "600 g chickpeas (1 1/2 x 400 g tins)");
}

TEST_CASE("told lines: what is drained later is told by its containers alone") {
  const char* const written = "2 x 400 g tins chickpeas, drained";
  CHECK(told_at(written, 4) == written);
  CHECK(told_at(written, 5) == "2 1/2 x 400 g tins chickpeas, drained");
  CHECK(told_at(written, 2) == "1 x 400 g tin chickpeas, drained");
  CHECK(told_at(written, 1) == "1/2 x 400 g tin chickpeas, drained");
  CHECK(told_at("800 g chickpeas, drained", 5) == "1 kg chickpeas, drained");
}

TEST_CASE("told lines: containers without a weight are counted by their own word") {
  CHECK(told_at("2 tins chickpeas, drained", 4) == "2 tins chickpeas, drained");
  CHECK(told_at("2 tins chickpeas, drained", 2) == "1 tin chickpeas, drained");
}

TEST_CASE("told lines: ranges, notes and optional lines") {
  CHECK(told_at("2-3 leeks, sliced", 4) == "2 to 3 leeks, sliced");
  CHECK(told_at("2-3 leeks, sliced", 8) == "4 to 6 leeks, sliced");
  CHECK(told_at("400-500 g leeks", 4) == "400 g to 500 g leeks");
  CHECK(told_at("500 g leeks (white part)", 4) == "500 g leeks (white part)");
  CHECK(told_at("2 eggs (optional)", 4) == "2 eggs (optional)");
}

TEST_CASE("told lines: the rule decides the amount") {
  CHECK(told_at("1 onion | whole", 9) == "3 onions");
  CHECK(told_at("1 onion | fixed", 40) == "1 onion");
  CHECK(told_at("4 eggs | one per portion", Rational(13, 2)) == "7 eggs");
}

}  // namespace
}  // namespace scalepan
