// Why a line needs what it needs: its written amount, its rule and the size of the recipe.
#pragma once

#include "costing/why.hpp"

namespace scalepan {

/// What stands in the file.
[[nodiscard]] Why why_written(const Line& line);

/// The amount at the dish's size. `line` is one of its own or of its bases, under its full id.
[[nodiscard]] Why why_need(const Recipe& dish, const Line& line);

/// The rule in words, with the loads and the source of its taper.
[[nodiscard]] std::string told_rule(const Recipe& recipe, const Line& line);

/// How many batches of a base are made, and why so many.
[[nodiscard]] std::string told_batches(const MadeBase& made);
/// What takes from it.
[[nodiscard]] std::vector<Why> why_uses(const MadeBase& made);

}  // namespace scalepan
