#include "recipe/recipe.hpp"

#include <array>

#include "recipe/reading.hpp"

namespace scalepan {
namespace {

const std::vector<std::string> pot_lines{"500 g leeks, trimmed",     "220 g pearl barley",
                                         "4 eggs | one per portion", "1 onion | whole",
                                         "1-2 courgettes",           "3 cloves garlic | fixed"};

Quantity amount(const Recipe& recipe, const char* id) {
  for (const Line& line : recipe.lines()) {
    if (line.id == id) return line.amount;
  }
  FAIL("no line " << id);
  return {};
}

TEST_CASE("recipes: the written size is the one they serve") {
  const Recipe pot = recipe_of(pot_lines);
  CHECK(pot.name() == "Leek and barley pot");
  CHECK(pot.serves() == Rational(4));
  CHECK(pot.portions() == Rational(4));
  CHECK(pot.measures() == Measures::metric);
  CHECK(pot.lines().size() == 6);
}

TEST_CASE("recipes: each line follows its rule to another size") {
  const Recipe ten = recipe_of(pot_lines).scaled(10);
  CHECK(ten.portions() == Rational(10));
  CHECK(ten.serves() == Rational(4));
  CHECK(amount(ten, "leeks") == q("1250 g EP"));
  CHECK(amount(ten, "pearl_barley") == q("550 g AP"));
  CHECK(amount(ten, "eggs") == q("10 piece AP"));
  CHECK(amount(ten, "onion") == q("3 piece AP"));
  CHECK(amount(ten, "courgettes") == q("5 piece AP"));
  CHECK(amount(ten, "garlic") == q("3 piece AP"));
}

TEST_CASE("recipes: a line held to whole pieces keeps its exact amount beside") {
  const Line onion = recipe_of(pot_lines).scaled(10).lines()[3];
  CHECK(onion.exact == q("5/2 piece AP"));
  CHECK(onion.amount == q("3 piece AP"));
  CHECK(onion.written == q("1 piece AP"));
}

TEST_CASE("recipes: whole pieces are whole at the written size too") {
  const Recipe pot = recipe_of({"1 1/2 onions | whole"});
  CHECK(pot.lines()[0].amount == q("2 piece AP"));
  CHECK(pot.lines()[0].exact == q("3/2 piece AP"));
  CHECK(pot.scaled(4).lines()[0].amount == q("2 piece AP"));
}

TEST_CASE("recipes: a range is scaled at both ends") {
  const Line courgettes = recipe_of(pot_lines).scaled(6).lines()[4];
  CHECK(courgettes.amount_low == q("3/2 piece AP"));
  CHECK(courgettes.amount == q("3 piece AP"));
}

TEST_CASE("recipes: by f and then by g is by f times g, exactly") {
  const Recipe pot = recipe_of(pot_lines);
  const std::array<Rational, 6> factors{Rational(1, 7), Rational(2),    Rational(9, 4),
                                        Rational(10),   Rational(1, 3), Rational(123457, 1000)};
  for (const Rational& f : factors) {
    for (const Rational& g : factors) {
      const Recipe once = pot.scaled(pot.portions() * f);
      const Recipe twice = once.scaled(once.portions() * g);
      const Recipe direct = pot.scaled(4 * f * g);
      CHECK(twice.portions() == direct.portions());
      for (std::size_t i = 0; i < pot.lines().size(); ++i) {
        CHECK(twice.lines()[i].amount == direct.lines()[i].amount);
        CHECK(twice.lines()[i].amount_low == direct.lines()[i].amount_low);
        CHECK(twice.lines()[i].exact == direct.lines()[i].exact);
      }
      CHECK(direct.lines()[0].amount == q("500 g EP") * (f * g));
    }
  }
  CHECK(pot.scaled(40).scaled(4).lines()[0].amount == pot.lines()[0].amount);
}

TEST_CASE("recipes: the tested sizes are told beside the size computed") {
  RecipeInput input = recipe_input({"4 eggs"});
  CHECK(Recipe(input, shared_pantry()).tested_text() == "no tested size is stated; 4 is computed");
  input.tested_at = {4, 12};
  const Recipe pot(input, shared_pantry());
  CHECK(pot.tested_text() == "tested at 4, 12");
  CHECK(pot.scaled(12).tested_text() == "tested at 4, 12");
  CHECK(pot.scaled(40).tested_text() == "tested at 4, 12; 40 is computed");
  CHECK(pot.scaled(Rational(13, 2)).tested_text() == "tested at 4, 12; 6 1/2 is computed");
}

}  // namespace
}  // namespace scalepan
