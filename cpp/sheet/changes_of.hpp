// A sheet as the changes that make it.
#pragma once

#include <vector>

#include "sheet/change.hpp"
#include "sheet/state.hpp"

namespace scalepan {

/// In an order in which they can be made, else by name; so they are the same for all sheets that
/// hold the same, however these came about. Made in an empty sheet they give a sheet whose changes
/// are the same, in the same order.
[[nodiscard]] std::vector<Change> changes_of(const SheetState& state);

/// Each after those it builds on, otherwise as they come. Throws `sheet.cycle` where some build on
/// each other.
[[nodiscard]] std::vector<Change> in_buildable_order(std::vector<Change> changes);

}  // namespace scalepan
