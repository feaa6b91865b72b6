#include "sheet/due.hpp"

#include <algorithm>

namespace scalepan {

void DueCells::resize(std::size_t cells) {
  next_.resize(cells, no_cell);
  due_.resize(cells);
}

void DueCells::add(Cell cell, std::uint32_t height) {
  if (due_[cell]) return;
  due_[cell] = true;
  if (height >= first_.size()) first_.resize(height + 1, no_cell);
  next_[cell] = first_[height];
  first_[height] = cell;
  lowest_ = count_ == 0 ? height : std::min<std::size_t>(lowest_, height);
  ++count_;
}

Cell DueCells::take() {
  while (first_[lowest_] == no_cell) ++lowest_;
  const Cell cell = first_[lowest_];
  first_[lowest_] = next_[cell];
  due_[cell] = false;
  --count_;
  return cell;
}

}  // namespace scalepan
