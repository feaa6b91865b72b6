// Cells that are due, from low to high.
#pragma once

#include <vector>

#include "sheet/cell_names.hpp"

namespace scalepan {

/// One list a height. Each cell is due once at most.
class DueCells {
 public:
  void resize(std::size_t cells);
  [[nodiscard]] bool empty() const { return count_ == 0; }
  /// No lower than the last one taken.
  void add(Cell cell, std::uint32_t height);
  /// The lowest; of one height the last added. Only where not empty.
  Cell take();

 private:
  std::vector<Cell> first_;  // by height
  std::vector<Cell> next_;   // by cell
  std::vector<bool> due_;
  std::size_t lowest_ = 0;
  std::size_t count_ = 0;
};

}  // namespace scalepan
