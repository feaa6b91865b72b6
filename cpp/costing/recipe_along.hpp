// What a recipe tells for a number of portions that goes with one input.
#pragma once

#include <span>

#include "sheet/functions.hpp"

namespace scalepan {

/// Of a function that is given a recipe first and portions last. Throws `NoForm` where a base does
/// not grow in proportion, and where the portions fall.
[[nodiscard]] Along recipe_along(const Function& function, std::span<const Along> arguments,
                                 Reach& reach);

}  // namespace scalepan
