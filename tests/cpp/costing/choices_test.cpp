// Other packs, other lines, makes and spends. Prices invented.
#include "costing/basket_why.hpp"
#include "costing/make_or_buy.hpp"
#include "costing/pack_prices.hpp"
#include "costing/pot.hpp"
#include "costing/swaps.hpp"
#include "costing/targets.hpp"
#include "recipe/dishes.hpp"

namespace scalepan {
namespace {

using Texts = std::vector<std::string>;

Shelf shelf(const char* item, const char* pack, const char* price) {
  return {item, "AP", pack, price, "no", "GBP"};
}

// 300 g: two of 150 g are 0.60, so one of 400 g is worth 0.60, and each of 150 g half of its 0.80.
TEST_CASE("choices: each pack of an item is worth what it replaces") {
  const Costing costing = costing_of(
      {"300 g leeks"}, {shelf("leeks", "150 g", "0.30"), shelf("leeks", "400 g", "0.80")});
  const std::vector<PackPrice> prices = pack_prices(costing.provisions(), "leeks");
  REQUIRE(prices.size() == 2);
  CHECK(prices[0].worth == q("0.40 GBP"));
  CHECK(prices[0].by_size == q("0.30 GBP"));
  CHECK(prices[0].taken);
  CHECK(prices[1].worth == q("0.60 GBP"));
  CHECK_FALSE(prices[1].taken_at_worth);
  CHECK(told_by([&] {
          return pack_prices(costing.provisions(), "lemons").size();
        }).starts_with("cost.item @ no item or line is called \"lemons\""));
}

TEST_CASE("choices: the least spend, and how far the same till goes") {
  const Costing costing = costing_of({"100 g leeks"}, {shelf("leeks", "250 g", "1.00")});
  const LeastSpend least = least_spend(costing, 6);  // 25 g a portion
  CHECK(least.till == q("1 GBP"));
  CHECK(least.most == Rational(10));
  CHECK(least.till_next == q("2 GBP"));
}

TEST_CASE("choices: a swap is costed in full, and what it brings of allergens told") {
  const Costing costing = costing_of({"300 g leeks", "100 g milk"},
                                     {shelf("leeks", "300 g", "0.90"),
                                      shelf("milk", "100 g", "0.40"), shelf("eggs", "1", "0.20")});
  const std::vector<Swap> found =
      swaps(costing, {{"milk", {{"150 g leeks", {}}}}, {"milk", {{"1 egg", {}}}}}, "till");
  REQUIRE(found.size() == 2);
  CHECK(found[0].lines[0].id == "egg");
  CHECK(found[0].saved.till == Rational(20, 100));
  CHECK(found[0].allergens_gained == Texts{"eggs (EU, US)"});
  CHECK(found[1].saved.till == Rational(-50, 100));  // a second pack of leeks, no milk
}

TEST_CASE("choices: a base made beside an item bought ready") {
  const auto stew =
      dish({"400 g white sauce", "300 g leeks"}, 4, {}, {{"white_sauce", white_sauce()}});
  const auto prices = prices_of({shelf("zest", "100 g", "1.00"), shelf("broth", "900 g", "1.80"),
                                 shelf("leeks", "300 g", "0.90"), shelf("gravy", "500 g", "2.50")});
  const Costing costing(*stew, prices);
  const MakeOrBuy found = make_or_buy(costing, "white_sauce", "gravy");
  CHECK(found.amount == q("400 g"));
  CHECK(found.made.till == Rational(280, 100));
  CHECK(found.bought.till == Rational(250, 100));
  CHECK(found.dish_made.till == Rational(370, 100));
  CHECK(found.dish_bought.till == Rational(340, 100));
  CHECK(found.lines == Texts{"white_sauce.zest", "white_sauce.broth"});
}

TEST_CASE("choices: every figure of a basket has its why") {
  const auto prices = prices_of({shelf("leeks", "1 kg", "2.00")});
  const Basket basket({{{"Pie", {}}, recipe_of({"600 g leeks"})},
                       {{"Broth", {}}, recipe_of({"200 g leeks", "9 g zest"})}},
                      prices);
  for (const std::string& cell : cell_names(basket)) CHECK(explain(basket, cell).name == cell);
  CHECK(explain(basket, "broth.till").figure == "at least 0.50 GBP");
  CHECK(told_by([&] { return explain(basket, "broth.zest.till").name; }) ==
        "why.unpriced @ broth.zest.till has no figure: the line is not priced (no price row is for "
        "zest)");
}

}  // namespace
}  // namespace scalepan
