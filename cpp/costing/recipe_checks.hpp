// What of a recipe alone its reader must look at.
#pragma once

#include <string>
#include <vector>

#include "recipe/recipe.hpp"

namespace scalepan {

/// Unknown foods, near names, ranges, optional lines; amounts that rounding moves by more than the
/// share the recipe allows; tapers and amounts to taste; bases that are not used up or made larger
/// than their uses; lines that no step of the method uses up.
[[nodiscard]] std::vector<std::string> lines_to_check(const Recipe& recipe);

}  // namespace scalepan
