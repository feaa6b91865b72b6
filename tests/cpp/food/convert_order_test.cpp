// Which way is taken where there are several: best weakest layer, fewest facts, fact ids.
#include <algorithm>
#include <string>
#include <vector>

#include "food/pantry.hpp"

namespace scalepan {
namespace {

Catalog bare_leek() {
  Catalog catalog;
  add_with_names(catalog, food("leek", "leek", "leeks"));
  return catalog;
}

/// What a leek weighs untrimmed.
Fact whole_piece(std::string id, std::string_view value, FactLayer layer = FactLayer::bundled,
                 const std::string& size = "") {
  return at(Stage::as_purchased, fact(std::move(id), "leek", FactKind::piece, value, size, layer));
}

std::string way(const Catalog& catalog, std::string_view from, std::string_view to) {
  const Converted converted = convert(catalog, *catalog.food("leek"), q(from), u(to));
  std::string ids;
  for (const Step& step : converted.how.steps) ids += (ids.empty() ? "" : " ") + step.fact->id;
  return ids;
}

TEST_CASE("ways: own before bundled before dataset, whatever the ids") {
  Catalog catalog = bare_leek();
  catalog.add(fact("a", "leek", FactKind::edible, "0.4 EP/AP", "", FactLayer::dataset));
  CHECK(way(catalog, "1 g AP", "g EP") == "a");
  catalog.add(fact("b", "leek", FactKind::edible, "0.5 EP/AP", "", FactLayer::bundled));
  CHECK(way(catalog, "1 g AP", "g EP") == "b");
  catalog.add(fact("c", "leek", FactKind::edible, "0.6 EP/AP", "", FactLayer::own));
  CHECK(way(catalog, "1 g AP", "g EP") == "c");
  CHECK(convert(catalog, *catalog.food("leek"), q("1 kg AP"), u("g EP")).amount == q("600 g EP"));
}

TEST_CASE("ways: a longer one of better facts goes before a short one of worse") {
  Catalog catalog = bare_leek();
  catalog.add(whole_piece("a.short", "100 g/piece", FactLayer::dataset));
  catalog.add(fact("b.piece", "leek", FactKind::piece, "60 g EP/(piece AP)", ""));
  catalog.add(fact("c.edible", "leek", FactKind::edible, "0.5 EP/AP"));
  CHECK(way(catalog, "1 piece AP", "g AP") == "b.piece c.edible");
}

TEST_CASE("ways: the weakest fact decides, so one dataset fact spoils a way of own ones") {
  Catalog catalog = bare_leek();
  catalog.add(fact("own.piece", "leek", FactKind::piece, "60 g EP/(piece AP)", "", FactLayer::own));
  catalog.add(fact("data.edible", "leek", FactKind::edible, "0.5 EP/AP", "", FactLayer::dataset));
  catalog.add(whole_piece("bundled.piece", "100 g/piece"));
  CHECK(way(catalog, "1 piece AP", "g AP") == "bundled.piece");
}

TEST_CASE("ways: a whole piece of one's own goes before a peeled one of a later layer") {
  Catalog catalog = bare_leek();
  catalog.add(fact("a.peeled", "leek", FactKind::piece, "60 g EP/(piece AP)"));
  catalog.add(whole_piece("own.whole", "100 g/piece", FactLayer::own));
  CHECK(way(catalog, "1 piece AP", "g EP") == "a.peeled");  // no share lies between
  catalog.add(fact("b.edible", "leek", FactKind::edible, "0.5 EP/AP"));
  CHECK(way(catalog, "1 piece AP", "g EP") == "own.whole b.edible");
  CHECK(way(catalog, "1 g EP", "piece AP") == "b.edible own.whole");
  catalog.add(whole_piece("own.large", "150 g/piece", FactLayer::own, "large"));
  CHECK(way(catalog, "1 piece AP", "g EP") == "own.whole b.edible");
}

TEST_CASE("ways: a piece of one size says nothing of another size") {
  Catalog catalog = bare_leek();
  catalog.add(fact("a.peeled", "leek", FactKind::piece, "60 g EP/(piece AP)"));
  catalog.add(fact("b.edible", "leek", FactKind::edible, "0.5 EP/AP"));
  catalog.add(whole_piece("own.large", "150 g/piece", FactLayer::own, "large"));
  CHECK(way(catalog, "1 piece AP", "g EP") == "a.peeled");
}

TEST_CASE("ways: in one layer the one with fewest facts, then by ids") {
  Catalog catalog = bare_leek();
  catalog.add(fact("a.piece", "leek", FactKind::piece, "60 g EP/(piece AP)"));
  catalog.add(fact("b.edible", "leek", FactKind::edible, "0.5 EP/AP"));
  catalog.add(whole_piece("z.piece", "100 g/piece"));
  CHECK(way(catalog, "1 piece AP", "g AP") == "z.piece");
  catalog.add(whole_piece("y.piece", "110 g/piece"));
  CHECK(way(catalog, "1 piece AP", "g AP") == "y.piece");
  catalog.add(fact("a.edible", "leek", FactKind::edible, "0.6 EP/AP"));
  CHECK(way(catalog, "1 g AP", "g EP") == "a.edible");
}

TEST_CASE("ways: the order in which facts were added does not matter") {
  const std::vector<Fact> facts{
      fact("a.piece", "leek", FactKind::piece, "60 g EP/(piece AP)"),
      fact("b.edible", "leek", FactKind::edible, "0.5 EP/AP"),
      fact("c.edible", "leek", FactKind::edible, "0.6 EP/AP"),
      at(Stage::edible, fact("d.density", "leek", FactKind::density, "0.4 g/mL")),
  };
  std::vector<std::size_t> order{0, 1, 2, 3};
  do {
    Catalog catalog = bare_leek();
    for (const std::size_t i : order) catalog.add(facts[i]);
    CHECK(way(catalog, "1 mL EP", "g AP") == "d.density b.edible");
    CHECK(way(catalog, "1 piece AP", "mL EP") == "a.piece d.density");
  } while (std::next_permutation(order.begin(), order.end()));
}

TEST_CASE("ways: an unrelated fact moves nothing") {
  Catalog catalog = bare_leek();
  catalog.add(fact("m.piece", "leek", FactKind::piece, "60 g EP/(piece AP)"));
  catalog.add(fact("n.edible", "leek", FactKind::edible, "0.5 EP/AP"));
  const auto all = [&] {
    return way(catalog, "1 piece AP", "g AP") + "; " + way(catalog, "1 g AP", "g EP") + "; " +
           way(catalog, "1 g EP", "piece AP");
  };
  const std::string before = all();
  CHECK(before == "m.piece n.edible; n.edible; m.piece");
  for (const Fact& more : {
           fact("a.density", "leek", FactKind::density, "0.4 g/mL", "", FactLayer::own),
           fact("a.cooked", "leek", FactKind::cooked, "0.8 cooked/EP", "", FactLayer::own),
           fact("a.drained", "leek", FactKind::drained, "0.8 drained/AP", "", FactLayer::own),
           fact("a.small", "leek", FactKind::piece, "30 g EP/(piece AP)", "small", FactLayer::own),
           fact("z.edible", "leek", FactKind::edible, "0.9 EP/AP"),
           fact("a.peeled", "leek", FactKind::edible, "0.3 EP/AP", "peeled", FactLayer::own),
           fact("a.data", "leek", FactKind::edible, "0.3 EP/AP", "", FactLayer::dataset),
       }) {
    INFO(more.id);
    catalog.add(more);
    CHECK(all() == before);
  }
}

}  // namespace
}  // namespace scalepan
