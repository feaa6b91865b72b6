// Cells by number.
#pragma once

#include <cstdint>

namespace scalepan {

using Cell = std::uint32_t;
inline constexpr Cell no_cell = static_cast<Cell>(-1);

}  // namespace scalepan
