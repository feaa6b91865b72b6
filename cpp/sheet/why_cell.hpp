// How a figure of a sheet comes about.
#pragma once

#include "sheet/state.hpp"
#include "sheet/why_tree.hpp"

namespace scalepan {

/// The most cells one derivation tells, and how far down it goes.
inline constexpr std::size_t most_told = 2000;
inline constexpr std::size_t deepest_told = 60;

/// A cell that was told before is not told again in full, and what is too deep or too much is left
/// out and said to be.
[[nodiscard]] Why why_cell(const SheetState& state, Cell cell);

}  // namespace scalepan
