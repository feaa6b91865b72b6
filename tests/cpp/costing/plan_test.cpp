// Which packs meet which lines, and what is said of it. Prices invented.
#include "costing/pot.hpp"
#include "costing/shopping.hpp"

namespace scalepan {
namespace {

using Taken = std::vector<std::pair<Rational, std::string>>;
using Notes = std::vector<std::string>;

Shelf shelf(const char* item, const char* pack, const char* price, const char* sold_as = "AP") {
  return {item, sold_as, pack, price, "yes", "GBP"};
}

RecipeInput two_leek_lines() {
  RecipeInput input = recipe_input({"600 g leeks", "132 g leek, trimmed"});
  input.lines[1].id = placed("leek_tops");
  return input;
}

// 600 g AP and 132 / 0.44 = 300 g AP: 900 g, one pack of 1 kg. Alone they would take one each.
TEST_CASE("plan: lines of one food are pooled before packs are chosen") {
  const Costing costing(Recipe(two_leek_lines(), shared_pantry()),
                        prices_of({shelf("leeks", "1 kg", "2.00")}));
  const std::vector<ShoppingRow> rows = shopping_list(costing.provisions());
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].packs == Taken{{1, "1 kg"}});
  CHECK(rows[0].lines == std::vector<std::string>{"leeks", "leek_tops"});
  CHECK(rows[0].need == q("900 g AP"));
  CHECK(costing.cost("till") == q("2.00 GBP"));
  CHECK(costing.cost("used") == q("1.80 GBP"));
  // Two thirds and one third by use.
  CHECK(costing.items()[0].lines[0].costs.used == Rational(120, 100));
  CHECK(costing.items()[0].lines[1].costs.used == Rational(60, 100));
  CHECK(costing.items()[0].lines[0].costs.till == Rational(4, 3));
}

TEST_CASE("plan: rows and lines by different names of one food meet") {
  const Costing costing = costing_of({"500 g courgettes"}, {shelf("Zucchini", "250 g", "0.80")});
  CHECK(costing.cost("till") == q("1.60 GBP"));
}

TEST_CASE("plan: a food outside the catalogue is met by its name") {
  const Costing costing = costing_of({"200 g samphire"}, {shelf("Samphire", "100 g", "1.25")});
  CHECK(costing.cost("till") == q("2.50 GBP"));
  CHECK(costing.to_check() ==
        Notes{"samphire: the catalogue has no food \"samphire\", so it has no facts, allergens or "
              "cautions"});
}

TEST_CASE("plan: an unknown edible share is taken as one and said so") {
  const Costing costing =
      costing_of({"500 g courgettes, trimmed"}, {shelf("courgettes", "500 g", "1.00")});
  CHECK(costing.cost("till") == q("1.00 GBP"));
  CHECK(costing.items()[0].group->assumes());
  CHECK(costing.to_check() ==
        Notes{"courgettes: no edible share (EP/AP) is known, so all of it is taken as edible"});
}

TEST_CASE("plan: strictly, an unknown edible share is an error that names both stages") {
  CHECK(
      told_by([] {
        return costing_of({"500 g courgettes, trimmed"}, {shelf("courgettes", "500 g", "1.00")},
                          {true})
            .unpriced();
      }) ==
      "cost.stage @ pot.toml:5:11: courgettes is needed at EP (edible portion) but sold at AP (as "
      "purchased), and no edible share links the two (add the share as a fact of your own)");
  CHECK(costing_of({"500 g leeks, trimmed"}, {shelf("leeks", "1 kg", "2.00")}, {true})
            .unpriced()
            .empty());
}

TEST_CASE("plan: a line without a price is listed with the reason and costs nothing") {
  const Costing costing =
      costing_of({"500 g leeks", "200 g samphire", "salt and pepper, to taste"},
                 {shelf("leeks", "1 kg", "2.00"), shelf("salt", "1 kg", "0.30")});
  CHECK(costing.unpriced() == Notes{"samphire"});
  CHECK(costing.cost("till") == q("2.00 GBP"));
  CHECK(shopping_list(costing.provisions()).size() == 1);
  CHECK(costing.to_check() ==
        Notes{"samphire: the catalogue has no food \"samphire\", so it has no facts, allergens or "
              "cautions",
              "salt_and_pepper: no amount is stated, so it is not costed",
              "samphire: not priced: no price row is for samphire"});
}

TEST_CASE("plan: a food the catalogue does not have must be sold as it is needed") {
  const Costing costing = costing_of({"200 g samphire"}, {shelf("samphire", "1", "1.25")});
  CHECK(costing.unpriced() == Notes{"samphire"});
  CHECK(costing.items()[0].plan->problem ==
        "samphire is needed by weight AP but sold by count AP, and nothing is known of this food "
        "(use a name the catalogue has, or price it as it is needed)");
}

TEST_CASE("plan: a drained weight is never taken as the whole") {
  const Costing costing =
      costing_of({"240 g courgettes, drained"}, {shelf("courgettes", "400 g", "0.60")});
  CHECK(costing.unpriced() == Notes{"courgettes"});
  CHECK(
      costing.to_check() ==
      Notes{"courgettes: not priced: no fact leads from weight drained to weight AP of courgette: "
            "a drained share is missing (known: none; add a fact of your own: food courgette, kind "
            "drained, value in drained/AP)"});
}

TEST_CASE("plan: of tins of unlike sizes the cheapest is bought, and that is told") {
  const std::vector<Shelf> shelves{
      shelf("chickpeas", "400 g tin (240 g drained)", "0.60", "drained"),
      shelf("chickpeas", "200 g tin (120 g drained)", "0.40", "drained")};
  const std::string told =
      "chickpeas: what is counted is sold in unlike sizes, and the cheapest is bought (400 g tin "
      "(240 g drained), 200 g tin (120 g drained)): say which is meant, as 2 x 400 g tins";
  const Costing counted = costing_of({"2 tins chickpeas, drained"}, shelves);
  CHECK(counted.cost("till") == q("0.80 GBP"));
  CHECK(counted.to_check() == Notes{told});
  CHECK(costing_of({"2 x 400 g tins chickpeas, drained"}, shelves).to_check().empty());
}

// The catalogue's share is 65 %: 400 g would hold 260 g drained. The tin says 240 g.
TEST_CASE("plan: what a pack states goes before a share from the catalogue") {
  const std::vector<std::string> lines{"250 g chickpeas, drained"};
  const Costing stated =
      costing_of(lines, {shelf("chickpeas", "400 g tin (240 g drained)", "0.60")});
  CHECK(shopping_list(stated.provisions())[0].packs == Taken{{2, "400 g tin (240 g drained)"}});
  CHECK(shopping_list(stated.provisions())[0].need == q("250 g drained"));
  const Costing by_share = costing_of(lines, {shelf("chickpeas", "400 g tin", "0.60")});
  CHECK(shopping_list(by_share.provisions())[0].packs == Taken{{1, "400 g tin"}});
  CHECK(shopping_list(by_share.provisions())[0].need.coherent() == 250 / Rational(65, 100));
}

TEST_CASE("plan: packs sold by weight and by piece, whichever is cheaper") {
  // Three onions are 330 g EP or 1100/3 g AP.
  const auto taken = [](const char* piece_price) {
    const Costing costing = costing_of(
        {"3 onions"}, {shelf("onions", "1 kg", "0.90"), shelf("onions", "1", piece_price)});
    return shopping_list(costing.provisions())[0].packs;
  };
  CHECK(taken("0.29") == Taken{{3, "1"}});
  CHECK(taken("0.31") == Taken{{1, "1 kg"}});
  CHECK(taken("0.30") == Taken{{1, "1 kg"}});
}

TEST_CASE("plan: prices in two currencies are refused where the second stands") {
  Shelf eggs = shelf("eggs", "6", "1.50");
  eggs.currency = "EUR";
  CHECK(told_by([&] {
          return costing_of({"500 g leeks", "4 eggs"}, {shelf("leeks", "1 kg", "2.00"), eggs})
              .unpriced();
        }) ==
        "cost.currencies @ prices.csv:3:1: prices in GBP (leeks) and in EUR (eggs) meet in one "
        "costing (use one currency)");
  CHECK(costing_of({"500 g leeks"}, {shelf("leeks", "1 kg", "2.00"), eggs}).cost("till") ==
        q("2.00 GBP"));
}

TEST_CASE("plan: leftovers keep only where every pack bought keeps, for the shortest time") {
  const auto keeping = [](const char* first, const char* second) {
    Shelf large = shelf("leeks", "1 kg", "2.00");
    Shelf small = shelf("leeks", "500 g", "1.10");
    large.keeps = first;
    small.keeps = second;
    return costing_of({"1400 g leeks"}, {large, small}).items()[0].keeping;
  };
  CHECK(keeping("yes", "yes") == Keeping{true, std::nullopt});
  CHECK(keeping("yes", "no") == Keeping{false, std::nullopt});
  CHECK(keeping("2 days", "no") == Keeping{false, std::nullopt});
  CHECK(keeping("5 days", "2 days") == Keeping{true, 2});
  CHECK(keeping("yes", "2 days") == Keeping{true, 2});
}

TEST_CASE("plan: days, ranges, optional lines and close relatives are to be looked at") {
  Shelf leeks = shelf("leeks", "1 kg", "2.00");
  leeks.keeps = "3 days";
  const Costing costing =
      costing_of({"1-2 onions", "600 g leeks (optional)"}, {shelf("onions", "1", "0.20"), leeks});
  CHECK(costing.to_check() == Notes{"onions: a range is bought at its high end",
                                    "leeks: is optional, and costed",
                                    "leeks: what is left keeps 3 days and is counted as kept"});
  CHECK(costing_of({"1 red onion"}, {shelf("red onions", "1", "0.20")}).to_check() ==
        Notes{"red_onion: the facts are those of onion, the nearest food with facts to red onion"});
}

TEST_CASE("plan: a dozen eggs is twelve eggs") {
  const Costing costing = costing_of({"1 dozen eggs, beaten"}, {shelf("eggs", "6", "1.50")});
  CHECK(costing.cost("till") == q("3.00 GBP"));
  CHECK(costing.to_check().empty());
}

}  // namespace
}  // namespace scalepan
