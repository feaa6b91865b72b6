// Why: each figure as a tree down to facts and prices.
#include <algorithm>

#include "costing/costing_why.hpp"
#include "costing/pot.hpp"

namespace scalepan {
namespace {

std::string why(const Costing& costing, std::string_view cell) {
  return text_of(explain(costing, cell));
}

TEST_CASE("why: the weight to buy, down to the line and the fact") {
  CHECK(why(pot_costing(40), "leeks.buy") ==
        "leeks.buy = ≈ 11.36 kg  (exactly 11 4/11 kg AP)\n"
        "  = leeks.need / leeks.edible\n"
        "├─ leeks.need = 5 kg EP\n"
        "│    = leeks.written * portions / serves\n"
        "│  ├─ leeks.written = 500 g EP   [\"500 g leeks, trimmed\", pot.toml:5:11]\n"
        "│  ├─ portions = 40   [the size asked for]\n"
        "│  └─ serves = 4   [the size written for]\n"
        "└─ leeks.edible = 0.44 EP/AP\n"
        "     = edible_share(leeks.food)   [the source of leek.edible]\n"
        "   └─ leeks.food = leek   [\"leeks\" in the catalogue]\n");
}

TEST_CASE("why: another published figure on the same thing stands beside the one used") {
  auto catalog = std::make_shared<Catalog>(pantry());
  catalog->add(fact("leek.edible.cards", "leek", FactKind::edible, "105/128 EP/AP"));
  const Recipe recipe{recipe_input({"500 g leeks, trimmed"}), catalog};
  const Costing costing{recipe, prices_of(pot_shelves())};
  CHECK(why(costing, "leeks.edible") ==
        "leeks.edible = 0.44 EP/AP\n"
        "  = edible_share(leeks.food)   [the source of leek.edible]\n"
        "├─ leeks.food = leek   [\"leeks\" in the catalogue]\n"
        "└─ beside it = ≈ 0.8203 EP/AP  (exactly 105/128 EP/AP)   [the source of "
        "leek.edible.cards]\n");
}

TEST_CASE("why: the packs, with every pack on offer and its place") {
  const Why packs = explain(pot_costing(40), "eggs.packs");
  CHECK(packs.figure == "4 x 10");
  CHECK(packs.how == "cheapest_packs(eggs.offers, eggs.buy)");
  REQUIRE(packs.parts.size() == 3);
  const Why& offers = packs.parts[0];
  CHECK(offers.name == "eggs.offers");
  CHECK(offers.figure == "6, 10");
  REQUIRE(offers.parts.size() == 2);
  CHECK(offers.parts[0].name == "pack 6");
  CHECK(offers.parts[0].figure == "1.50");
  CHECK(offers.parts[0].source == "prices.csv:5:1");
  CHECK(offers.parts[1].name == "pack 10");
  CHECK(offers.parts[1].figure == "2.30");
  CHECK(packs.parts[1].name == "eggs.buy");
  CHECK(packs.parts[1].figure == "40 piece AP");
  CHECK(packs.parts[1].how == "eggs.need");
  CHECK(packs.parts[2].name == "bought");
  CHECK(packs.parts[2].figure == "40 piece AP");
}

TEST_CASE("why: shop and date stand beside the price") {
  const Costing costing = costing_of(
      {"4 eggs"}, {{"eggs", "AP", "6", "1.50", "yes", "GBP", "Hill Farm", "2026-11-24"}});
  const Why offers = explain(costing, "eggs.offers");
  CHECK(offers.parts[0].source == "prices.csv:2:1, Hill Farm, 2026-11-24");
  CHECK(offers.parts[0].figure == "1.50 GBP");
}

// 24.30 * 250/253 is 24.0118...; thrown is the rest, 0.2881...
TEST_CASE("why: used, thrown and borne of a line") {
  const Costing costing = pot_costing(40);
  const Why borne = explain(costing, "leeks.borne");
  CHECK(borne.figure == "24.30");
  CHECK(borne.how == "leeks.used + leeks.thrown");
  REQUIRE(borne.parts.size() == 2);
  const Why& used = borne.parts[0];
  CHECK(used.name == "leeks.used");
  CHECK(used.figure == "24.01  (exactly 24 3/253 XXX)");
  CHECK(used.how == "leeks.till * used_share(leeks.packs)");
  REQUIRE(used.parts.size() == 3);
  CHECK(used.parts[0].name == "leeks.till");
  CHECK(used.parts[0].figure == "24.30");
  CHECK(used.parts[0].how == "price_of(leeks.packs)");
  CHECK(used.parts[1].name == "leeks.packs");
  CHECK(used.parts[1].figure == "11 x 1 kg + 1 x 500 g");
  CHECK(used.parts[0].parts[0].parts.back().name == "bought");
  CHECK(used.parts[0].parts[0].parts.back().figure == "11.5 kg AP");
  CHECK(used.parts[2].name == "used share");
  CHECK(used.parts[2].figure == "≈ 0.9881  (exactly 250/253)");
  CHECK(used.parts[2].how == "what is to buy / bought");
  const Why& thrown = borne.parts[1];
  CHECK(thrown.name == "leeks.thrown");
  CHECK(thrown.how ==
        "if keeps(leeks.packs) then 0 else leeks.till * (1 - used_share(leeks.packs))");
  CHECK(thrown.source == "what is left will not keep");
  CHECK(explain(costing, "pearl_barley.thrown").figure == "0.00");
  CHECK(explain(costing, "pearl_barley.thrown").source == "what is left keeps");
  CHECK(explain(costing, "pearl_barley.leftover").figure == "300 g AP");
  CHECK(explain(costing, "pearl_barley.leftover").how == "left_of(pearl_barley.packs)");
}

TEST_CASE("why: a cost of the dish is the sum over its lines") {
  const Why till = explain(pot_costing(40), "till");
  CHECK(till.figure == "44.25");
  CHECK(till.how == "sum(lines.till)");
  REQUIRE(till.parts.size() == 1);
  const Why& sum = till.parts[0];
  CHECK(sum.how == "sum of 4 rows");
  REQUIRE(sum.parts.size() == 4);
  CHECK(sum.parts[0].name == "leeks.till");
  CHECK(sum.parts[0].figure == "24.30");
  CHECK(sum.parts[3].name == "chickpeas.till");
  CHECK(sum.parts[3].figure == "6.00");
}

TEST_CASE("why: a total over unpriced lines says at least") {
  const std::vector<Shelf> eggs{{"eggs", "AP", "6", "1.50"}};
  CHECK(explain(costing_of({"4 eggs", "1 leek"}, eggs), "till").figure ==
        "at least 1.50, 1 line unpriced");
  CHECK(explain(costing_of({"4 eggs", "1 leek", "1 onion"}, eggs), "till").figure ==
        "at least 1.50, 2 lines unpriced");
}

TEST_CASE("why: lines that share packs tell the need of them all and their share") {
  RecipeInput input = recipe_input({"600 g leeks", "300 g leeks"});
  input.lines[1].id = placed("tops");
  const Costing costing(Recipe(input, shared_pantry()),
                        prices_of({{"leeks", "AP", "1 kg", "2.00", "no"}}));
  const Why packs = explain(costing, "leeks.packs");
  CHECK(packs.how == "cheapest_packs(leeks.offers, leeks.in_all)");
  const Why& in_all = packs.parts[1];
  CHECK(in_all.figure == "900 g AP");
  CHECK(in_all.how == "leeks.buy + tops.buy");
  CHECK(explain(costing, "tops.packs").how == "leeks.packs");
  CHECK(explain(costing, "tops.share").figure == "1/3");
  CHECK(explain(costing, "tops.share").how ==
        "if leeks.in_all = 0 then 0 else tops.buy / leeks.in_all");
  CHECK(explain(costing, "tops.till").how == "price_of(leeks.packs) * tops.share");
  CHECK(explain(costing, "tops.used").how == "tops.till * used_share(leeks.packs)");
  CHECK(explain(costing, "tops.used").figure == "0.60");
}

TEST_CASE("why: rules, assumed shares, own facts and their details") {
  Catalog catalog = pantry();
  catalog.add(
      fact("my.onion", "onion", FactKind::piece, "90 g EP/(piece AP)", "small", FactLayer::own));
  const Costing costing(Recipe(recipe_input({"2 small onions | whole", "200 g courgettes, diced",
                                             "4 eggs | one per portion", "1 leek | fixed"}),
                               std::make_shared<const Catalog>(catalog))
                            .scaled(5),
                        prices_of({{"onions", "EP", "1 kg", "1.00"},
                                   {"courgettes", "AP", "1 kg", "1.00"},
                                   {"eggs", "AP", "6", "1.50"},
                                   {"leeks", "AP", "1", "0.40"}}));
  CHECK(explain(costing, "onions.need").how ==
        "up_to_multiple(onions.written * portions / serves, 1 piece AP)");
  CHECK(explain(costing, "onions.piece_weight").figure == "90 g EP/(piece AP)");
  CHECK(explain(costing, "onions.piece_weight").source == "own: the source of my.onion [small]");
  CHECK(explain(costing, "onions.buy").how == "onions.need * onions.piece_weight");
  CHECK(explain(costing, "onions.buy").figure == "270 g EP");
  CHECK(explain(costing, "courgettes.buy").how == "courgettes.need / courgettes.edible");
  CHECK(explain(costing, "courgettes.edible").figure == "1 EP/AP");
  CHECK(explain(costing, "courgettes.edible").source == "assumed: no edible share is known");
  CHECK(explain(costing, "eggs.need").how == "eggs.each * up_to_multiple(portions, 1)");
  CHECK(explain(costing, "eggs.each").figure == "1 piece AP");
  CHECK(explain(costing, "eggs.each").source == "1 per portion");
  CHECK(explain(costing, "leek.need").how == "leek.written");
  CHECK(explain(costing, "leek.written").source == "\"1 leek | fixed\", pot.toml:8:11; fixed");
}

TEST_CASE("why: the cells there are") {
  const std::vector<std::string> names = cell_names(
      costing_of({"500 g leeks, trimmed", "200 g samphire"}, {{"leeks", "AP", "1 kg", "2.00"}}));
  // Of the line without a price all that follows from its packs has no figure.
  CHECK(names == std::vector<std::string>{
                     "portions",         "serves",        "leeks.written",      "leeks.need",
                     "samphire.written", "samphire.need", "leeks.food",         "leeks.edible",
                     "leeks.buy",        "leeks.offers",  "leeks.packs",        "leeks.leftover",
                     "leeks.till",       "leeks.used",    "leeks.thrown",       "leeks.borne",
                     "samphire.offers",  "till",          "per_portion.till",   "used",
                     "per_portion.used", "thrown",        "per_portion.thrown", "borne",
                     "per_portion.borne"});
}

TEST_CASE("why: every cell there is can be explained under its own name") {
  const Costing costing = pot_costing(40);
  for (const std::string& name : cell_names(costing)) {
    INFO(name);
    CHECK(explain(costing, name).name == name);
    CHECK_FALSE(explain(costing, name).figure.empty());
  }
}

TEST_CASE("why: an unknown cell is told with the nearest") {
  const Costing costing = pot_costing(40);
  const auto refusal = [&](std::string_view cell) {
    return thrown_by([&] { return explain(costing, cell).name; });
  };
  CHECK(refusal("leeks.by") ==
        Thrown{"why.unknown_cell", "no figure is called \"leeks.by\"", "nearest: leeks.buy"});
  CHECK(refusal("tll") ==
        Thrown{"why.unknown_cell", "no figure is called \"tll\"", "nearest: till"});
  CHECK(refusal("") == Thrown{"why.unknown_cell", "no figure is called \"\"",
                              "figures: till, used, thrown, borne, and those of each line: "
                              "leeks.buy, pearl_barley.buy, eggs.buy, chickpeas.buy"});
  CHECK(refusal("eggs.edible").code == "why.unknown_cell");
}

TEST_CASE("why: a figure of an unpriced line does not exist, and the reason is told") {
  const Costing costing = costing_of({"200 g samphire"}, {});
  CHECK(thrown_by([&] { return explain(costing, "samphire.buy").name; }) ==
        Thrown{"why.unpriced", "samphire.buy has no figure: the line is not priced",
               "no price row is for samphire"});
  CHECK(explain(costing, "samphire.need").figure == "200 g AP");
}

}  // namespace
}  // namespace scalepan
