// Values of cells as text.
#pragma once

#include <string>

#include "sheet/content.hpp"

namespace scalepan {

/// For people: exact, with the rounded figure before it where that is easier to read.
[[nodiscard]] std::string figure_of(const CellValue& value);

}  // namespace scalepan
