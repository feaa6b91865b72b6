// Which formulas read which cells, both ways, and how high each cell stands.
//
// A cell stands higher than every cell its formula reads, so that running what is due from low to
// high runs each formula once, after all it reads.
#pragma once

#include <vector>

#include "sheet/cell_names.hpp"

namespace scalepan {

class Uses {
 public:
  /// Room for so many cells.
  void resize(std::size_t cells);

  [[nodiscard]] const std::vector<Cell>& read_by(Cell cell) const { return inputs_[cell]; }
  [[nodiscard]] const std::vector<Cell>& readers_of(Cell cell) const { return readers_[cell]; }
  [[nodiscard]] std::uint32_t height(Cell cell) const { return heights_[cell]; }

  /// The chain from the cell up to one of the inputs, both named, where the cell would then read
  /// itself; empty where it would not.
  [[nodiscard]] std::vector<Cell> cycle(Cell cell, const std::vector<Cell>& inputs) const;
  /// The cell reads these from now on, each named once; there must be no cycle.
  void read(Cell cell, const std::vector<Cell>& inputs);

 private:
  void raise_readers(Cell cell);

  std::vector<std::vector<Cell>> inputs_;
  std::vector<std::vector<Cell>> readers_;
  std::vector<std::uint32_t> heights_;
};

}  // namespace scalepan
