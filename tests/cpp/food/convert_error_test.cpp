// Conversions that no fact allows, or whose stage must be stated: the whole error.
#include "food/pantry.hpp"

namespace scalepan {
namespace {

Thrown refusal(std::string_view amount, const char* food, std::string_view unit,
               const std::string& detail = {}) {
  const Catalog catalog = pantry();
  return thrown_by([&] {
    return convert(catalog, *catalog.food(food), q(amount), u(unit), {detail, detail}).amount;
  });
}

Thrown no_fact(const std::string& message, const std::string& known, const std::string& row) {
  return {"convert.no_fact", "no fact leads from " + message + " is missing",
          "known: " + known + "; add a fact of your own: food " + row};
}

Thrown stage(const std::string& way, const std::string& unit) {
  return {"convert.stage", "the way from " + way + " crosses stages, and " + unit + " states none",
          "write " + unit + " AP (as purchased) or " + unit + " EP (edible portion)"};
}

TEST_CASE("conversion errors: the missing fact is named, with those that are known") {
  CHECK(refusal("1 cup_us AP", "leek", "g AP") ==
        no_fact("volume AP to weight AP of leek: a density", "leek.cooked, leek.edible",
                "leek, kind density, value in g/mL"));
  CHECK(refusal("1 cup_us", "flour", "g", "packed") ==
        no_fact("volume (packed) AP to weight AP of flour: a density (packed)",
                "flour.sifted, flour.spooned", "flour, kind density, state packed, value in g/mL"));
  CHECK(refusal("2 piece", "courgette", "g EP") ==
        no_fact("count AP to weight EP of courgette: a piece weight", "none",
                "courgette, kind piece, value in g AP/(piece AP)"));
  CHECK(refusal("1 kg EP", "onion", "piece", "jumbo") ==
        no_fact("weight EP to count (jumbo) AP of onion: a piece weight (jumbo)",
                "onion.cup, onion.edible, onion.piece",
                "onion, kind piece, size jumbo, value in g AP/(piece AP)"));
  CHECK(refusal("1 kg EP", "courgette", "g AP") ==
        no_fact("weight EP to weight AP of courgette: an edible share", "none",
                "courgette, kind edible, value in EP/AP"));
  CHECK(refusal("1 kg EP", "onion", "g cooked") ==
        no_fact("weight EP to weight cooked of onion: a cooked share",
                "onion.cup, onion.edible, onion.piece", "onion, kind cooked, value in cooked/EP"));
  CHECK(refusal("1 kg AP", "leek", "g drained") ==
        no_fact("weight AP to weight drained of leek: a drained share", "leek.cooked, leek.edible",
                "leek, kind drained, value in drained/AP"));
}

TEST_CASE("conversion errors: a way across stages must have both ends stated") {
  CHECK(refusal("3 piece", "onion", "g") == stage("3 piece to g of onion", "g"));
  CHECK(refusal("1 kg", "onion", "piece") == stage("1 kg to piece of onion", "kg"));
  CHECK(refusal("1 cup_us", "onion", "g AP") == stage("1 cup_us to g AP of onion", "cup_us"));
  CHECK(refusal("1 kg AP", "onion", "cup_us") == stage("1 kg AP to cup_us of onion", "cup_us"));
}

TEST_CASE("conversion errors: only weights, volumes and counts are amounts of a food") {
  const Thrown plain{"convert.kind",
                     "a food is measured by weight, volume or count, not in plain numbers"};
  CHECK(refusal("3", "onion", "g") == plain);
  CHECK(refusal("3 cm", "onion", "g") ==
        Thrown{"convert.kind", "a food is measured by weight, volume or count, not in length"});
  CHECK(
      refusal("3 kg", "onion", "GBP") ==
      Thrown{"convert.kind", "a food is measured by weight, volume or count, not in money in GBP"});
}

TEST_CASE("conversion errors: find_conversion answers with nothing instead") {
  const Catalog catalog = pantry();
  const Food& leek = *catalog.food("leek");
  const Form weight{Kind::mass, Stage::as_purchased, {}};
  CHECK_FALSE(find_conversion(catalog, leek, {Kind::volume, Stage::as_purchased, {}}, weight));
  CHECK(find_conversion(catalog, leek, {Kind::mass, Stage::edible, {}}, weight));
  CHECK(name_of(Kind::mass) == "weight");
  CHECK(name_of(Kind::volume) == "volume");
  CHECK(name_of(Kind::count) == "count");
}

}  // namespace
}  // namespace scalepan
