// Swaps: lines of a dish in place of one of its own, each costed in full.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "costing/costing.hpp"

namespace scalepan {

/// Lines with amounts for the written size of the dish, or of the base that the line belongs to.
struct SwapAsked {
  std::string line;  // id
  std::vector<PlacedText> lines;
};

/// The dish with a swap, the rest of it unchanged, bought in whole packs.
struct Swap {
  std::string line;
  std::vector<Line> lines;  // in place of it, at the size of the dish
  Costs costs;              // of the whole dish
  Costs saved;              // the dish as it is, less this; below zero where it costs more
  std::vector<std::string> unpriced;  // of the new lines: the saving is less by what they cost
  /// `milk (EU, US)`: by which list the food has it. Foods outside the catalogue have none known.
  std::vector<std::string> allergens_gained;
  std::vector<std::string> allergens_lost;
  std::vector<std::string> allergens_unknown;  // foods
};

/// Those that save most of a named cost first, those with unpriced lines last. Throws `swap.line`
/// where a line is unknown or no lines are given for it, what `Recipe::line_at_size` throws, and
/// `cost.which`.
[[nodiscard]] std::vector<Swap> swaps(const Costing& costing, const std::vector<SwapAsked>& asked,
                                      std::string_view which);

}  // namespace scalepan
