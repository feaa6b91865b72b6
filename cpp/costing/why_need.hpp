// Why a line needs what it needs: its written amount, its rule and the size of the recipe.
#pragma once

#include "costing/why.hpp"

namespace scalepan {

/// What stands in the file.
[[nodiscard]] Why why_written(const Line& line);

/// The amount at the dish's size. `line` is one of its own or of its bases, under its full id.
[[nodiscard]] Why why_need(const Recipe& dish, const Line& line);

}  // namespace scalepan
