// Label text: ingredients by falling weight as they go in, and the allergens among them. A draft
// for whoever answers for the label.
//
// The order is that of Regulation (EU) 1169/2011 Art. 18, the emphasis that of Art. 21 (both from
// memory); the lists are Annex II of it and the nine major allergens of the US FDA.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "recipe/recipe.hpp"

namespace scalepan {

/// One ingredient: all lines of one food, or of one base with its own ingredients, together.
struct LabelItem {
  std::string name;
  std::optional<Rational> grams;  // edible, as it goes in; nothing where no fact gives it
  bool weighed = true;            // false: of a line of it, or of all, no fact gives the weight
  std::vector<std::string> allergens;  // of either list
  bool check_pack = false;             // its allergens are not known, or depend on the maker
  bool optional = false;
  std::vector<LabelItem> parts;  // of a base
};

struct Label {
  std::vector<LabelItem> items;  // falling; equal weights as in the recipe; without a weight last
  std::vector<std::string> allergens_eu;  // sorted, through bases
  std::vector<std::string> allergens_us;
  std::vector<std::string> unknown;  // names of what to check the pack of
  std::string text;                  // one statement a line
};

/// At the recipe's size.
[[nodiscard]] Label label_of(const Recipe& recipe);

}  // namespace scalepan
