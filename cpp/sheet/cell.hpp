// Cells by number, and what a sheet keeps of every one.
#pragma once

#include <cstdint>
#include <vector>

namespace scalepan {

using Cell = std::uint32_t;
inline constexpr Cell no_cell = static_cast<Cell>(-1);

/// What is read together when a cell is worked out stands together in memory. Each part belongs to
/// the class it is named beside, which alone writes it.
struct CellRecord {
  std::uint32_t detail = 0;                                     // Contents: which one of its kind
  std::uint32_t first_input = static_cast<std::uint32_t>(-1);   // Uses: an entry
  std::uint32_t first_reader = static_cast<std::uint32_t>(-1);  // Uses: an entry
  std::uint32_t height = 0;                                     // Uses
  Cell next_due = no_cell - 1;                                  // DueCells
  std::uint32_t home = 0;                                       // RowBlocks: block and column
  std::uint8_t kind = 0;                                        // Contents
};

using CellRecords = std::vector<CellRecord>;

}  // namespace scalepan
