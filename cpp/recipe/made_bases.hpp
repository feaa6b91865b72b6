// The bases of a recipe, each made once for all its uses, and what all of it takes.
#pragma once

#include <vector>

#include "recipe/recipe.hpp"

namespace scalepan {

/// All bases below the recipe at its present size, in the order they are made. A base that falls
/// short of its uses where it is scaled in proportion is made larger. Throws `base.name_clash` for
/// two bases of one name, and `size.unreachable`.
[[nodiscard]] std::vector<MadeBase> made_bases_of(const Recipe& recipe);

/// The recipe's own lines of foods and those of its made bases, whose ids begin with the base's
/// name.
[[nodiscard]] std::vector<Line> food_lines_of(const Recipe& recipe);
/// The same of the lines that take from a base.
[[nodiscard]] std::vector<Line> base_lines_of(const Recipe& recipe);

}  // namespace scalepan
