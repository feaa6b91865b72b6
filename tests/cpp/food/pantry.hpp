// A small catalogue for the tests. Figures from USDA SR28 where marked, else made up.
#pragma once

#include <string>
#include <utility>

#include "food/catalog.hpp"
#include "food/convert.hpp"
#include "measure/measuring.hpp"

namespace scalepan {

/// A fact by its shortest description; stages come from the kind and the unit of the value.
inline Fact fact(std::string id, std::string food, FactKind kind, std::string_view value,
                 std::string detail = {}, FactLayer layer = FactLayer::bundled) {
  Fact made;
  made.id = std::move(id);
  made.food = std::move(food);
  made.kind = kind;
  made.value = q(value);
  made.layer = layer;
  made.source = "the source of " + made.id;
  (kind == FactKind::piece ? made.size : made.state) = std::move(detail);
  for (const auto& [base, power] : made.value.dimension().factors()) {
    if (base.stage() != Stage::none) (power > 0 ? made.to : made.from) = base.stage();
  }
  return made;
}

/// The same fact from one stage to the same stage, which the unit of its value cannot show.
inline Fact at(Stage stage, Fact made) {
  made.from = made.to = stage;
  return made;
}

inline Food food(std::string id, std::string name, std::string plural, std::string state = {},
                 std::string size = {}) {
  Food made;
  made.id = std::move(id);
  made.name = std::move(name);
  made.plural = std::move(plural);
  made.default_state = std::move(state);
  made.default_size = std::move(size);
  return made;
}

inline void add_with_names(Catalog& catalog, const Food& made) {
  catalog.add(made);
  catalog.add(FoodName{made.name, made.plural, "", made.id, false});
}

inline Catalog pantry() {
  Catalog catalog;
  add_with_names(catalog, food("leek", "leek", "leeks"));
  add_with_names(catalog, food("onion", "onion", "onions", "chopped", "medium"));
  add_with_names(catalog, food("courgette", "courgette", "courgettes"));
  add_with_names(catalog, food("pearl_barley", "pearl barley", "pearl barley"));
  add_with_names(catalog, food("garlic", "garlic", "garlic", "", "clove"));
  add_with_names(catalog, food("flour", "flour", "flour", "spooned"));
  add_with_names(catalog, food("chickpea", "chickpea", "chickpeas"));
  add_with_names(catalog, food("apple", "apple", "apples"));
  add_with_names(catalog, food("milk", "milk", "milk"));
  Food egg = food("egg", "egg", "eggs", "", "large");
  egg.allergens_eu = {"eggs"};
  egg.allergens_us = {"eggs"};
  egg.cautions = {"egg"};
  add_with_names(catalog, egg);
  catalog.add(FoodName{"zucchini", "zucchini", "US", "courgette", false});
  catalog.add(FoodName{"red onion", "red onions", "", "onion", true});

  // SR28: leeks refuse 56 %; onions refuse 10 %, medium 110 g, cup chopped 160 g; egg refuse
  // 12 %, large 50 g; garlic clove 3 g, refuse 13 %; apples refuse 10 %.
  catalog.add(fact("leek.edible", "leek", FactKind::edible, "0.44 EP/AP"));
  catalog.add(fact("onion.edible", "onion", FactKind::edible, "0.90 EP/AP"));
  catalog.add(fact("onion.piece", "onion", FactKind::piece, "110 g EP/(piece AP)", "medium"));
  catalog.add(
      at(Stage::edible, fact("onion.cup", "onion", FactKind::density, "160 g/cup_us", "chopped")));
  catalog.add(fact("egg.edible", "egg", FactKind::edible, "0.88 EP/AP"));
  catalog.add(fact("egg.piece", "egg", FactKind::piece, "50 g EP/(piece AP)", "large"));
  catalog.add(fact("garlic.clove", "garlic", FactKind::piece, "3 g EP/(piece AP)", "clove"));
  catalog.add(fact("garlic.edible", "garlic", FactKind::edible, "0.87 EP/AP"));
  catalog.add(fact("apple.edible", "apple", FactKind::edible, "0.90 EP/AP"));
  // Made up.
  catalog.add(fact("apple.peeled", "apple", FactKind::edible, "0.75 EP/AP", "peeled"));
  catalog.add(fact("leek.cooked", "leek", FactKind::cooked, "0.8 cooked/EP"));
  catalog.add(fact("chickpea.drained", "chickpea", FactKind::drained, "0.65 drained/AP"));
  catalog.add(fact("flour.spooned", "flour", FactKind::density, "125 g/cup_us", "spooned"));
  catalog.add(fact("flour.sifted", "flour", FactKind::density, "100 g/cup_us", "sifted"));
  catalog.add(fact("milk.density", "milk", FactKind::density, "1.03 g/mL"));
  return catalog;
}

}  // namespace scalepan
