// Dishes bought together. Prices invented.
#include "costing/basket.hpp"

#include "costing/pot.hpp"

namespace scalepan {
namespace {

Shelf shelf(const char* item, const char* pack, const char* price, const char* keeps = "no") {
  return {item, "AP", pack, price, keeps, "GBP"};
}

Dish dish(const char* name, const std::vector<std::string>& lines) {
  return {{name, {}}, recipe_of(lines)};
}

TEST_CASE("basket: needs are pooled before packs are chosen, and shared out by use") {
  const auto prices = prices_of({shelf("leeks", "1 kg", "2.00")});
  const Basket basket({dish("Pie", {"600 g leeks"}), dish("Broth", {"200 g leeks"})}, prices);
  CHECK(basket.costs().till == Rational(2));
  CHECK(basket.apart().till == Rational(4));
  CHECK(basket.dishes()[0].costs.till == Rational(3, 2));
  CHECK(basket.dishes()[0].costs.used == Rational(6, 5));
  CHECK(basket.dishes()[0].costs.thrown == Rational(3, 10));
  CHECK(basket.dishes()[1].costs.borne() == Rational(1, 2));
  const std::vector<BasketRow> rows = shopping_list(basket);
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].lines == std::vector<std::string>{"pie.leeks", "broth.leeks"});
  REQUIRE(rows[0].dishes.size() == 2);
  CHECK(rows[0].dishes[1].dish == "Broth");
  CHECK(rows[0].dishes[1].need == q("200 g AP"));
}

TEST_CASE("basket: several lines of a dish are one need of it") {
  const auto prices = prices_of({shelf("leeks", "1 kg", "2.00")});
  RecipeInput input = recipe_input({"100 g leeks", "200 g leeks"});
  input.lines[1].id = placed("tops");
  const Basket basket({{{"Pie", {}}, Recipe(input, shared_pantry())}}, prices);
  const std::vector<BasketRow> rows = shopping_list(basket);
  REQUIRE(rows[0].dishes.size() == 1);
  CHECK(rows[0].dishes[0].need == q("300 g AP"));
}

// Apart two eggs are 0.60 loose and five are a box of 1.50; together seven are a box and one loose.
TEST_CASE("basket: packs of one kind are mixed for all dishes") {
  const auto prices = prices_of({shelf("eggs", "6", "1.50"), shelf("eggs", "1", "0.30")});
  const Basket basket({dish("Pie", {"2 eggs"}), dish("Cake", {"5 eggs"})}, prices);
  CHECK(basket.costs().till == Rational(180, 100));
  CHECK(basket.apart().till == Rational(210, 100));
}

// Alone, one egg is 0.30 by the piece and 1 kg is a pack of 1.00. In one lot, by weight, both would
// take two packs, and by the piece some twenty eggs.
TEST_CASE("basket: it is never dearer than its dishes apart, since lots may stay apart") {
  const auto prices = prices_of({shelf("eggs", "1", "0.30"), shelf("eggs", "1 kg", "1.00")});
  const Basket basket({dish("Crust", {"1 egg"}), dish("Cake", {"1 kg eggs"})}, prices);
  CHECK(basket.apart().till == Rational(130, 100));
  CHECK(basket.costs().till == basket.apart().till);
  CHECK(shopping_list(basket).size() == 2);
}

TEST_CASE("basket: names that cannot be told apart") {
  const auto prices = prices_of({shelf("leeks", "1 kg", "2.00")});
  CHECK(told_by([&] {
          return Basket({dish("Pie", {"1 kg leeks"}), dish("pie", {"1 kg leeks"})}, prices)
              .dishes()
              .size();
        }) ==
        "basket.name @ two dishes have the id pie: \"Pie\" and \"pie\" (give one of them another "
        "name)");
  CHECK(told_by([&] { return Basket({}, prices).dishes().size(); }) ==
        "basket.no_dishes @ the basket has no dishes (name at least one)");
}

}  // namespace
}  // namespace scalepan
