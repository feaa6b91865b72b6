// Bounds of a costing's figures, which a slip of the pen would leave: 75 for 75 %.
#pragma once

#include <string_view>

#include "sheet/cell_names.hpp"
#include "sheet/content.hpp"

namespace scalepan {

/// Throws `cost.impossible` for a share of the whole that is not above 0 and at most 1, for other
/// facts and sizes that are not above 0, and for amounts below 0; `sheet.unknown` for a price given
/// to a line, which no figure would go by.
void expect_possible(std::string_view cell, const CellValue& value, const CellNames& names);

}  // namespace scalepan
