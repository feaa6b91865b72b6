#include "sheet/row_block.hpp"

#include <algorithm>
#include <utility>

namespace scalepan {

std::size_t RowBlock::column(std::string_view called) const {
  const auto found = std::ranges::find(columns, called, &Column::name);
  return static_cast<std::size_t>(found - columns.begin());
}

std::size_t RowBlock::row(std::string_view called) const {
  const auto found = std::ranges::find(rows, called, &Row::name);
  return static_cast<std::size_t>(found - rows.begin());
}

std::vector<Cell> inputs_in_row(const Formula& formula, const Row& row) {
  std::vector<Cell> inputs = formula.inputs;
  for (Cell& input : inputs) {
    if (input >= first_column) input = row.cells[input - first_column];
  }
  return inputs;
}

std::size_t RowBlocks::find(std::string_view name) const {
  const auto found = numbers_.find(name);
  return found == numbers_.end() ? blocks_.size() : found->second;
}

std::optional<Home> RowBlocks::find_column(std::string_view dotted) const {
  const std::size_t point = dotted.rfind('.');
  if (point == std::string_view::npos) return std::nullopt;
  const std::size_t block = find(dotted.substr(0, point));
  if (block == size()) return std::nullopt;
  const std::size_t column = at(block).column(dotted.substr(point + 1));
  if (column == at(block).columns.size()) return std::nullopt;
  return Home{static_cast<std::uint32_t>(block), static_cast<std::uint32_t>(column)};
}

void RowBlocks::put(std::size_t block, RowBlock rows) {
  if (block == blocks_.size()) blocks_.emplace_back();
  numbers_.emplace(rows.name, block);
  blocks_[block] = std::move(rows);
}

RowBlock RowBlocks::drop(std::size_t block) {
  RowBlock rows = std::move(*blocks_[block]);
  blocks_[block].reset();
  numbers_.erase(rows.name);
  return rows;
}

void RowBlocks::rename(std::size_t block, const std::string& name) {
  RowBlock rows = drop(block);
  rows.name = name;
  put(block, std::move(rows));
}

std::size_t RowBlocks::free_number() const {
  for (std::size_t i = 0; i < blocks_.size(); ++i) {
    if (!blocks_[i]) return i;
  }
  return blocks_.size();
}

}  // namespace scalepan
