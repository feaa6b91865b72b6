// Costings of the tests: recipes over the pantry, price books of made-up prices.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "costing/costing.hpp"
#include "packs/shelf.hpp"
#include "recipe/reading.hpp"

namespace scalepan {

inline std::shared_ptr<const PriceBook> prices_of(const std::vector<Shelf>& shelves) {
  std::vector<Offer> offers;
  for (const Shelf& shelf : shelves) {
    offers.push_back(offer_of(shelf, static_cast<int>(offers.size()) + 2));
  }
  return std::make_shared<const PriceBook>(std::move(offers));
}

inline Costing costing_of(const std::vector<std::string>& lines, const std::vector<Shelf>& shelves,
                          CostOptions options = {}) {
  return {recipe_of(lines), prices_of(shelves), options};
}

/// The leek and barley pot of the design, its prices invented. Tested at four portions.
inline Recipe pot() {
  RecipeInput input = recipe_input({"500 g leeks, trimmed", "220 g pearl barley",
                                    "4 eggs | one per portion", "240 g chickpeas, drained"});
  input.tested_at = {4};
  return {input, shared_pantry()};
}

inline std::vector<Shelf> pot_shelves() {
  return {
      {"leeks", "AP", "1 kg", "2.10", "no"},
      {"leeks", "AP", "500 g", "1.20", "no"},
      {"pearl barley", "AP", "500 g", "0.95", "yes"},
      {"eggs", "AP", "6", "1.50", "yes"},
      {"eggs", "AP", "10", "2.30", "yes"},
      {"chickpeas", "drained", "400 g tin (240 g drained)", "0.60", "no"},
  };
}

inline Costing pot_costing(const Rational& portions) {
  return {pot().scaled(portions), prices_of(pot_shelves())};
}

}  // namespace scalepan
