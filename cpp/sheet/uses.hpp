// Which formulas read which cells, both ways, and how high each cell stands.
//
// A cell stands higher than every cell its formula reads, so that running what is due from low to
// high runs each formula once, after all it reads.
//
// One entry an input, in arrays side by side: what a formula reads stands in a row, so that its
// programme can walk over it; who reads a cell is a list through the same entries.
#pragma once

#include <span>
#include <vector>

#include "sheet/cell.hpp"

namespace scalepan {

class Uses {
 public:
  using Entry = std::uint32_t;
  static constexpr Entry no_entry = static_cast<Entry>(-1);

  explicit Uses(CellRecords& cells) : cells_(cells) {}

  [[nodiscard]] std::span<const Cell> read_by(Cell cell) const {
    return {inputs_of(cell), input_count(cell)};
  }
  [[nodiscard]] const Cell* inputs_of(Cell cell) const {
    return inputs_.data() + cells_[cell].first_input;
  }
  /// The first entry of who reads the cell.
  [[nodiscard]] Entry first_reader(Cell cell) const { return cells_[cell].first_reader; }
  [[nodiscard]] Entry next_reader(Entry entry) const { return next_[entry]; }
  [[nodiscard]] Cell reader(Entry entry) const { return readers_[entry]; }
  [[nodiscard]] bool is_read(Cell cell) const { return first_reader(cell) != no_entry; }
  [[nodiscard]] std::vector<Cell> readers_of(Cell cell) const;
  [[nodiscard]] std::uint32_t height(Cell cell) const { return cells_[cell].height; }

  /// The chain from the cell up to one of the inputs, both named, where the cell would then read
  /// itself; empty where it would not.
  [[nodiscard]] std::vector<Cell> cycle(Cell cell, std::span<const Cell> inputs) const;
  /// The cell reads these from now on, each named once; there must be no cycle.
  void read(Cell cell, std::span<const Cell> inputs);

  /// A total reads one more cell, or one less. There must be no cycle.
  void read_more(Cell total, Cell input);
  void read_less(Cell total, Cell input);

  /// Bytes held.
  [[nodiscard]] std::size_t bytes() const;

 private:
  [[nodiscard]] std::size_t input_count(Cell cell) const;
  Entry take_entries(std::size_t count);
  void give_entries(Entry first, std::size_t count);
  void link(Entry entry, Cell input, Cell reader);
  void unlink(Entry entry);
  void raise(Cell cell, std::uint32_t height);

  std::vector<Cell> inputs_;              // by entry: what is read
  std::vector<Cell> readers_;             // by entry: by whom
  std::vector<Entry> next_;               // by entry: who else reads the same
  std::vector<Entry> previous_;           // by entry
  std::vector<std::vector<Entry>> free_;  // by the number of entries in a row
  CellRecords& cells_;
};

}  // namespace scalepan
