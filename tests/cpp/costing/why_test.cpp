// Why: each figure as a tree down to facts and prices.
#include "costing/why.hpp"

#include <algorithm>

#include "costing/pot.hpp"

namespace scalepan {
namespace {

std::string why(const Costing& costing, std::string_view cell) {
  return text_of(explain(costing, cell));
}

TEST_CASE("why: the weight to buy, down to the line and the fact") {
  CHECK(why(pot_costing(40), "leeks.buy") ==
        "leeks.buy = ≈ 11.36 kg  (exactly 11 4/11 kg AP)\n"
        "  = need / edible\n"
        "├─ leeks.need = 5 kg EP\n"
        "│    = written * portions / serves\n"
        "│  ├─ leeks.written = 500 g EP   [\"500 g leeks, trimmed\", pot.toml:5:11]\n"
        "│  ├─ portions = 40   [the size asked for]\n"
        "│  └─ serves = 4   [the size written for]\n"
        "└─ leeks.edible = 0.44 EP/AP   [the source of leek.edible]\n");
}

TEST_CASE("why: another published figure on the same thing stands beside the one used") {
  auto catalog = std::make_shared<Catalog>(pantry());
  catalog->add(fact("leek.edible.cards", "leek", FactKind::edible, "105/128 EP/AP"));
  const Recipe recipe{recipe_input({"500 g leeks, trimmed"}), catalog};
  const Costing costing{recipe, prices_of(pot_shelves())};
  CHECK(why(costing, "leeks.edible") ==
        "leeks.edible = 0.44 EP/AP   [the source of leek.edible]\n"
        "└─ beside it = ≈ 0.8203 EP/AP  (exactly 105/128 EP/AP)   [the source of "
        "leek.edible.cards]\n");
}

TEST_CASE("why: the packs, with every pack on offer and its place") {
  const Why packs = explain(pot_costing(40), "eggs.packs");
  CHECK(packs.figure == "4 x 10");
  CHECK(packs.how == "cheapest whole packs of at least what is to buy");
  REQUIRE(packs.parts.size() == 3);
  CHECK(packs.parts[0].name == "eggs.buy");
  CHECK(packs.parts[0].figure == "40 piece AP");
  CHECK(packs.parts[0].how == "need");
  CHECK(packs.parts[1].name == "pack 6");
  CHECK(packs.parts[1].figure == "1.50");
  CHECK(packs.parts[1].source == "prices.csv:5:1");
  CHECK(packs.parts[2].name == "pack 10");
  CHECK(packs.parts[2].figure == "2.30");
}

TEST_CASE("why: shop and date stand beside the price") {
  const Costing costing = costing_of(
      {"4 eggs"}, {{"eggs", "AP", "6", "1.50", "yes", "GBP", "Hill Farm", "2026-11-24"}});
  CHECK(explain(costing, "eggs.packs").parts[1].source == "prices.csv:2:1, Hill Farm, 2026-11-24");
  CHECK(explain(costing, "eggs.packs").parts[1].figure == "1.50 GBP");
}

// 24.30 * 250/253 is 24.0118...; thrown is the rest, 0.2881...
TEST_CASE("why: used, thrown and borne of a line") {
  const Costing costing = pot_costing(40);
  const Why borne = explain(costing, "leeks.borne");
  CHECK(borne.figure == "24.30");
  CHECK(borne.how == "used + thrown");
  REQUIRE(borne.parts.size() == 2);
  CHECK(borne.parts[0].name == "leeks.used");
  CHECK(borne.parts[0].figure == "24.01  (exactly 24 3/253 XXX)");
  CHECK(borne.parts[0].how == "till * buy / bought");
  CHECK(borne.parts[1].name == "leeks.thrown");
  CHECK(borne.parts[1].how == "till * left over / bought: what is left will not keep");
  REQUIRE(borne.parts[0].parts.size() == 3);
  CHECK(borne.parts[0].parts[0].name == "leeks.till");
  CHECK(borne.parts[0].parts[0].figure == "24.30");
  CHECK(borne.parts[0].parts[0].how == "sum of pack prices");
  CHECK(borne.parts[0].parts[1].name == "leeks.buy");
  CHECK(borne.parts[0].parts[2].name == "bought");
  CHECK(borne.parts[0].parts[2].figure == "11.5 kg AP");
  CHECK(borne.parts[0].parts[2].how == "11 x 1 kg + 1 x 500 g");
  CHECK(explain(costing, "pearl_barley.thrown").figure == "0.00");
  CHECK(explain(costing, "pearl_barley.thrown").how == "nothing: what is left keeps");
  CHECK(explain(costing, "pearl_barley.leftover").figure == "300 g AP");
  CHECK(explain(costing, "pearl_barley.leftover").how == "bought - buy, of the whole item");
}

TEST_CASE("why: a cost of the dish is the sum over its lines") {
  const Why till = explain(pot_costing(40), "till");
  CHECK(till.figure == "44.25");
  CHECK(till.how == "sum over the lines");
  REQUIRE(till.parts.size() == 4);
  CHECK(till.parts[0].name == "leeks.till");
  CHECK(till.parts[0].figure == "24.30");
  CHECK(till.parts[3].name == "chickpeas.till");
  CHECK(till.parts[3].figure == "6.00");
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
  const Why packs = explain(costing, "tops.packs");
  CHECK(packs.parts[0].name == "leeks in all");
  CHECK(packs.parts[0].figure == "900 g AP");
  REQUIRE(packs.parts[0].parts.size() == 2);
  CHECK(packs.parts[0].parts[1].name == "tops.buy");
  CHECK(explain(costing, "tops.used").how == "used of the whole item * this line's share by use");
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
        "written * portions / serves = 2.5 piece AP, rounded up to whole pieces");
  CHECK(explain(costing, "onions.piece_weight").figure == "90 g EP/(piece AP)");
  CHECK(explain(costing, "onions.piece_weight").source == "own: the source of my.onion [small]");
  CHECK(explain(costing, "onions.buy").how == "need * piece_weight");
  CHECK(explain(costing, "onions.buy").figure == "270 g EP");
  CHECK(explain(costing, "courgettes.buy").how == "need, all of it taken as edible");
  CHECK(explain(costing, "courgettes.buy").parts.back().source ==
        "assumed: no edible share is known");
  CHECK(explain(costing, "eggs.need").how == "1 per portion, a started one counting whole");
  CHECK(explain(costing, "leek.need").how == "written, fixed at every size");
}

TEST_CASE("why: the cells there are") {
  const std::vector<std::string> names = cell_names(
      costing_of({"500 g leeks, trimmed", "200 g samphire"}, {{"leeks", "AP", "1 kg", "2.00"}}));
  CHECK(names == std::vector<std::string>{
                     "till", "used", "thrown", "borne", "leeks.written", "leeks.need", "leeks.buy",
                     "leeks.packs", "leeks.till", "leeks.used", "leeks.thrown", "leeks.borne",
                     "leeks.leftover", "leeks.edible", "samphire.written", "samphire.need"});
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
