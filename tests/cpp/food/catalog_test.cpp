#include "food/catalog.hpp"

#include "food/pantry.hpp"

namespace scalepan {
namespace {

std::string found_id(const Catalog& catalog, std::string_view name) {
  const auto found = catalog.find(name);
  return found ? found->food->id : "none";
}

TEST_CASE("catalogue: names in singular and plural, in any case and spacing") {
  const Catalog catalog = pantry();
  for (const char* name : {"leek", "leeks", "Leeks", "LEEK", "  leeks "}) {
    INFO(name);
    CHECK(found_id(catalog, name) == "leek");
  }
  CHECK(found_id(catalog, "pearl   Barley") == "pearl_barley");
  CHECK(found_id(catalog, "pearl_barley") == "pearl_barley");
  CHECK(found_id(catalog, "pearl") == "none");
  CHECK(found_id(catalog, "") == "none");
}

TEST_CASE("catalogue: regional names find the same food") {
  const Catalog catalog = pantry();
  CHECK(found_id(catalog, "zucchini") == "courgette");
  CHECK(found_id(catalog, "courgettes") == "courgette");
  CHECK(catalog.find("zucchini")->name->region == "US");
  CHECK_FALSE(catalog.find("zucchini")->near());
}

TEST_CASE("catalogue: a close relative is marked as one") {
  const Catalog catalog = pantry();
  CHECK(found_id(catalog, "red onions") == "onion");
  CHECK(catalog.find("red onions")->near());
  CHECK_FALSE(catalog.find("onions")->near());
  CHECK_FALSE(catalog.find("pearl_barley")->near());
  CHECK(catalog.find("pearl_barley")->name == nullptr);
}

TEST_CASE("catalogue: a name of two foods is refused with the choices") {
  Catalog catalog = pantry();
  catalog.add(FoodName{"squash", "squashes", "UK", "courgette", true});
  catalog.add(FoodName{"squash", "squash", "", "apple", true});
  CHECK(thrown_by([&] { return catalog.find("Squash"); }) ==
        Thrown{"food.ambiguous", "\"Squash\" means more than one food",
               "write one of: courgettes (UK), apples; or choose in the recipe: region = "
               "\"UK\", or names = { squash = \"courgette\" }"});
  CHECK(found_id(catalog, "squashes") == "courgette");
}

TEST_CASE("catalogue: one food under one name twice stays unambiguous") {
  Catalog catalog = pantry();
  catalog.add(FoodName{"leek", "leeks", "UK", "leek", false});
  CHECK(found_id(catalog, "leek") == "leek");
}

TEST_CASE("catalogue: the nearest names to a misspelt one") {
  const Catalog catalog = pantry();
  CHECK(catalog.nearest("Leks") == std::vector<std::string>{"leeks", "leek"});
  CHECK(catalog.nearest("courgete") == std::vector<std::string>{"courgette", "courgettes"});
  CHECK(catalog.nearest("bouillabaisse").empty());
}

TEST_CASE("catalogue: what is there twice or belongs to nothing is refused") {
  Catalog catalog = pantry();
  const auto refused = [&](auto added) {
    return thrown_by([&] {
      catalog.add(added);
      return 0;
    });
  };
  CHECK(refused(food("leek", "leek", "leeks")) ==
        Thrown{"food.duplicate", "the food leek is there twice"});
  const std::string own =
      "a food of your own needs a table with a column food: --foods FILE, or foods=";
  CHECK(refused(FoodName{"porree", "porree", "", "lek", false}) ==
        Thrown{"food.unknown", "the name \"porree\" belongs to an unknown food lek",
               "nearest: leek, leeks; " + own});
  CHECK(refused(fact("lek.edible", "lek", FactKind::edible, "0.5 EP/AP")) ==
        Thrown{"food.unknown", "the fact lek.edible is about an unknown food lek",
               "nearest: leek, leeks; " + own});
  CHECK(refused(fact("own.kohlrabi", "kohlrabi", FactKind::edible, "0.5 EP/AP")) ==
        Thrown{"food.unknown", "the fact own.kohlrabi is about an unknown food kohlrabi", own});
  CHECK(refused(fact("leek.edible", "leek", FactKind::edible, "0.5 EP/AP")) ==
        Thrown{"fact.duplicate", "the fact leek.edible is there twice"});
  CHECK(refused(fact("leek.bad", "leek", FactKind::edible, "0 EP/AP")) ==
        Thrown{"fact.value", "fact leek.bad: the value must be above zero"});
}

TEST_CASE("catalogue: a refused fact leaves nothing behind") {
  Catalog catalog = pantry();
  const std::size_t before = catalog.fact_count();
  CHECK_THROWS_AS(catalog.add(fact("leek.bad", "leek", FactKind::edible, "0 EP/AP")), Error);
  CHECK(catalog.fact_count() == before);
  CHECK(catalog.facts("leek").size() == 2);
}

TEST_CASE("catalogue: facts come by layer, then by id") {
  Catalog catalog;
  catalog.add(food("leek", "leek", "leeks"));
  for (const auto& [id, layer] : {std::pair{"c", FactLayer::dataset},
                                  {"b", FactLayer::bundled},
                                  {"d", FactLayer::own},
                                  {"a", FactLayer::bundled}}) {
    catalog.add(fact(id, "leek", FactKind::edible, "0.5 EP/AP", "", layer));
  }
  std::string order;
  for (const Fact* known : catalog.facts("leek")) order += known->id;
  CHECK(order == "dabc");
  CHECK(catalog.fact_count() == 4);
  CHECK(catalog.food_count() == 1);
  CHECK(catalog.facts("onion").empty());
}

TEST_CASE("catalogue: names are compared in lower case with single spaces") {
  CHECK(plain_name("  Pearl \t Barley ") == "pearl barley");
  CHECK(plain_name("") == "");
  CHECK(plain_name("   ") == "");
  CHECK(plain_name("Crème") == "crème");
}

}  // namespace
}  // namespace scalepan
