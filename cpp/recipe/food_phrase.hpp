// Finding a food by what a line or a price row calls it.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "food/catalog.hpp"

namespace scalepan {

/// What a phrase names: a food, and the preparations written in front of it.
struct FoodPhrase {
  std::string_view food;  // the phrase without `leading`
  std::string leading;    // `chopped` of `chopped onions`
  std::optional<FoundFood> found;

  /// What is bought under one key: the food, except that a close relative goes by its own name,
  /// and a food the catalogue does not have by what it is called.
  [[nodiscard]] std::string key() const;
};

/// Takes preparations off the front until the rest is a known food; where none is, `food` is what
/// is left of them all. `tinned` prefers the food's tinned form. Throws `food.ambiguous`.
[[nodiscard]] FoodPhrase read_food_phrase(const Catalog& catalog, std::string_view phrase,
                                          bool tinned);

/// Whether the catalogue knows the name, also as one of several foods.
[[nodiscard]] bool knows_food(const Catalog& catalog, std::string_view name);

}  // namespace scalepan
