// Cautions: the usual words where food can hurt someone, with figures and their sources.
// They defer to local food law and qualified advice, and never say that a dish is safe.
#pragma once

#include <string>
#include <vector>

#include "recipe/recipe.hpp"

namespace scalepan {

struct Caution {
  std::string text;
  std::string source;
  std::vector<std::string>
      lines;  // ids of the lines or names of the bases it is about; empty: the whole
};

/// For undercooking, and for cooling a batch larger than was tested, in that order.
[[nodiscard]] std::vector<Caution> safety_cautions(const Recipe& recipe);

/// Those, and the allergens behind them.
[[nodiscard]] std::vector<Caution> cautions_for(const Recipe& recipe);

/// What stands below every list of cautions.
[[nodiscard]] std::string_view caution_footing();

}  // namespace scalepan
