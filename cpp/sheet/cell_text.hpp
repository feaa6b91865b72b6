// Values of cells as text.
#pragma once

#include <string>

#include "sheet/content.hpp"

namespace scalepan {

/// Exact, and reads back: `125000/11 g AP`, `400 g to 450 g`, `at least 31.2 GBP`, `yes`.
[[nodiscard]] std::string text_of(const CellValue& value);
/// For people: exact, with the rounded figure before it where that is easier to read.
[[nodiscard]] std::string figure_of(const CellValue& value);

}  // namespace scalepan
