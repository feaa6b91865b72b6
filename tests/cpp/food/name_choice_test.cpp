// Names with several meanings, settled by a region or by a choice.
#include "food/pantry.hpp"

namespace scalepan {
namespace {

/// `corn flour` is a starch in one region and a meal in another; `maize` is said everywhere, and
/// in one region of another food.
Catalog shelves() {
  Catalog catalog = pantry();
  add_with_names(catalog, food("corn_starch", "corn starch", "corn starch"));
  add_with_names(catalog, food("corn_meal", "corn meal", "corn meal"));
  catalog.add(FoodName{"corn flour", "corn flour", "GB", "corn_starch", false});
  catalog.add(FoodName{"corn flour", "corn flour", "US", "corn_meal", false});
  catalog.add(FoodName{"maize", "maize", "", "corn_meal", false});
  catalog.add(FoodName{"maize", "maize", "AU", "corn_starch", false});
  return catalog;
}

std::string id_of(std::string_view name, const NameChoices& choices) {
  return shelves().find(name, choices)->food->id;
}

TEST_CASE("name choice: a region settles a name that it has") {
  CHECK(id_of("corn flour", {"GB"}) == "corn_starch");
  CHECK(id_of("Corn Flour", {"US"}) == "corn_meal");
  CHECK(id_of("maize", {"AU"}) == "corn_starch");
  CHECK(shelves().find("corn flour", "US")->food->id == "corn_meal");
}

TEST_CASE("name choice: a region without a name of its own takes the one good everywhere") {
  CHECK(id_of("maize", {"GB"}) == "corn_meal");
  CHECK(id_of("leek", {"GB"}) == "leek");
  CHECK(id_of("zucchini", {"GB"}) == "courgette");
}

TEST_CASE("name choice: without a region, or where it settles nothing, the name stays open") {
  const Catalog catalog = shelves();
  const Thrown open{"food.ambiguous", "\"corn flour\" means more than one food",
                    "write one of: corn starch (GB), corn meal (US); or choose in the recipe: "
                    "region = \"GB\", or names = { \"corn flour\" = \"corn_starch\" }"};
  CHECK(thrown_by([&] { return catalog.find("corn flour"); }) == open);
  CHECK(thrown_by([&] { return catalog.find("corn flour", "AU"); }) == open);
}

TEST_CASE("name choice: a choice goes before the region and may be an id or a name") {
  CHECK(id_of("corn flour", {"US", {{"corn flour", "corn_starch"}}}) == "corn_starch");
  CHECK(id_of("corn flour", {"", {{"corn flour", "Corn Meal"}}}) == "corn_meal");
  CHECK(id_of("leek", {"", {{"leek", "onion"}}}) == "onion");
  CHECK(id_of("Leeks", {"", {{"leek", "onion"}}}) == "onion");
  CHECK(id_of("leek", {"", {{"leeks", "onion"}}}) == "onion");
}

TEST_CASE("name choice: a choice of an unknown food is refused") {
  const Catalog catalog = shelves();
  CHECK(thrown_by([&] { return catalog.find("leek", NameChoices{"", {{"leek", "onoin"}}}); }) ==
        Thrown{"food.unknown", "no food is called \"onoin\"", "nearest: onion, onions"});
}

TEST_CASE("name choice: a region that no name has is refused with those there are") {
  const Catalog catalog = shelves();
  CHECK(thrown_by([&] { return catalog.find("leek", "UK"); }) ==
        Thrown{"food.region", "no food has a name of the region \"UK\"", "there are: AU, GB, US"});
}

TEST_CASE("name choice: choices laid over a catalogue settle every name found in it") {
  Catalog catalog = shelves();
  catalog.choose({"US", {{"leek", "onion"}}});
  CHECK(catalog.find("corn flour")->food->id == "corn_meal");
  CHECK(catalog.find("leeks")->food->id == "onion");
  CHECK(catalog.known("corn flour").id == "corn_meal");
  CHECK(catalog.find("corn flour", "GB")->food->id == "corn_starch");
}

TEST_CASE("name choice: choices are looked at when they are laid") {
  Catalog catalog = shelves();
  const auto refusal = [&](const NameChoices& choices) {
    return thrown_by([&] {
      catalog.choose(choices);
      return 0;
    });
  };
  CHECK(refusal({"UK"}).code == "food.region");
  CHECK(refusal({"", {{"leek", "onoin"}}}) ==
        Thrown{"food.unknown", "no food is called \"onoin\"", "nearest: onion, onions"});
}

TEST_CASE("name choice: a chosen food keeps the name it was written by") {
  const Catalog catalog = shelves();
  const auto flour = catalog.find("corn flour", NameChoices{"", {{"corn flour", "corn_meal"}}});
  REQUIRE(flour->name != nullptr);
  CHECK(flour->name->plural == "corn flour");
  CHECK(catalog.find("leek", NameChoices{"", {{"leek", "onion"}}})->name == nullptr);
}

TEST_CASE("name choice: one food named so in two regions is no choice") {
  Catalog catalog = shelves();
  catalog.add(FoodName{"zucchini", "zucchini", "AU", "courgette", false});
  CHECK(catalog.find("zucchini")->food->id == "courgette");
  CHECK(catalog.find("zucchini", "AU")->name->region == "AU");
}

}  // namespace
}  // namespace scalepan
