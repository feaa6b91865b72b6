// Cells that are due, from low to high.
#pragma once

#include <algorithm>
#include <bit>
#include <cstddef>
#include <utility>
#include <vector>

#include "sheet/cell.hpp"

namespace scalepan {

/// One list a height, and one bit that says whether it is empty, so that heights without a due cell
/// cost next to nothing. Each cell is due once at most.
class DueCells {
 public:
  explicit DueCells(CellRecords& cells) : cells_(cells) {}

  [[nodiscard]] bool empty() const { return count_ == 0; }

  void add(Cell cell, std::uint32_t height) {
    Cell& next = cells_[cell].next_due;
    if (next != not_due) return;
    if (height >= first_.size()) make_room(height);
    next = first_[height];
    first_[height] = cell;
    filled_[height / bits] |= std::uint64_t{1} << (height % bits);
    lowest_word_ = std::min<std::size_t>(lowest_word_, height / bits);
    ++count_;
  }

  /// The lowest; of one height the last added. Only where not empty.
  Cell take() {
    while (filled_[lowest_word_] == 0) ++lowest_word_;
    std::uint64_t& word = filled_[lowest_word_];
    const std::size_t height =
        lowest_word_ * bits + static_cast<std::size_t>(std::countr_zero(word));
    const Cell cell = first_[height];
    first_[height] = std::exchange(cells_[cell].next_due, not_due);
    if (first_[height] == no_cell) word &= word - 1;
    --count_;
    return cell;
  }

  /// Bytes held.
  [[nodiscard]] std::size_t bytes() const {
    return first_.capacity() * sizeof(Cell) + filled_.capacity() * sizeof(std::uint64_t);
  }

 private:
  static constexpr Cell not_due = no_cell - 1;
  static constexpr std::size_t bits = 64;

  void make_room(std::size_t height) {
    const std::size_t words = std::max(height / bits + 1, 2 * filled_.size());
    filled_.resize(words);
    first_.resize(words * bits, no_cell);
  }

  std::vector<Cell> first_;            // by height
  std::vector<std::uint64_t> filled_;  // by height, one bit
  CellRecords& cells_;
  std::size_t lowest_word_ = 0;
  std::size_t count_ = 0;
};

}  // namespace scalepan
