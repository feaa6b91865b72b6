// Two published figures on one thing.
#include "food/pantry.hpp"

namespace scalepan {
namespace {

Catalog two_figures() {
  Catalog catalog = pantry();
  catalog.add(fact("leek.edible.cards", "leek", FactKind::edible, "0.5 EP/AP"));
  return catalog;
}

std::vector<std::string> ids_beside(const Catalog& catalog, std::string_view id) {
  std::vector<std::string> ids;
  for (const Fact* one : catalog.facts("leek")) {
    if (one->id != id) continue;
    for (const Fact* other : catalog.beside(*one)) ids.push_back(other->id);
  }
  return ids;
}

TEST_CASE("beside: a second figure stands beside the first and moves nothing") {
  const Catalog catalog = two_figures();
  CHECK(ids_beside(catalog, "leek.edible") == std::vector<std::string>{"leek.edible.cards"});
  CHECK(ids_beside(catalog, "leek.edible.cards") == std::vector<std::string>{"leek.edible"});
  const Quantity edible = convert(catalog, *catalog.food("leek"), q("1 kg AP"), u("g EP")).amount;
  CHECK(edible == q("440 g EP"));
}

TEST_CASE("beside: figures on other states, kinds and foods do not count") {
  Catalog catalog = two_figures();
  catalog.add(fact("leek.edible.peeled", "leek", FactKind::edible, "0.4 EP/AP", "peeled"));
  CHECK(ids_beside(catalog, "leek.edible") == std::vector<std::string>{"leek.edible.cards"});
  CHECK(ids_beside(catalog, "leek.cooked").empty());
}

TEST_CASE("beside: a preferred fact is used, also on a way with others") {
  Catalog catalog = two_figures();
  const std::size_t facts = catalog.fact_count();
  catalog.prefer("leek.edible.cards");
  CHECK(catalog.fact_count() == facts);
  const Food& leek = *catalog.food("leek");
  CHECK(convert(catalog, leek, q("1 kg AP"), u("g EP")).amount == q("500 g EP"));
  CHECK(convert(catalog, leek, q("1 kg AP"), u("g cooked")).amount == q("400 g cooked"));
  CHECK(ids_beside(catalog, "leek.edible.cards") == std::vector<std::string>{"leek.edible"});
}

TEST_CASE("beside: a fact to prefer must be there, and once for one thing") {
  Catalog catalog = two_figures();
  CHECK(thrown_by([&] {
          catalog.prefer("leek.edibel");
          return 0;
        }) == Thrown{"fact.unknown", "no fact is called \"leek.edibel\"", "nearest: leek.edible"});
  catalog.prefer("leek.edible");
  CHECK(thrown_by([&] {
          catalog.prefer("leek.edible.cards");
          return 0;
        }) == Thrown{"fact.duplicate",
                     "the facts leek.edible and leek.edible.cards say the same thing",
                     "leave one of them out"});
}

}  // namespace
}  // namespace scalepan
