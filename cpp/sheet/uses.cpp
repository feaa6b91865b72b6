#include "sheet/uses.hpp"

#include <algorithm>
#include <functional>
#include <queue>
#include <unordered_map>
#include <utility>

namespace scalepan {

void Uses::resize(std::size_t cells) {
  inputs_.resize(cells);
  readers_.resize(cells);
  heights_.resize(cells);
}

std::vector<Cell> Uses::cycle(Cell cell, const std::vector<Cell>& inputs) const {
  if (std::ranges::find(inputs, cell) != inputs.end()) return {cell, cell};
  if (readers_[cell].empty() || inputs.empty()) return {};
  std::uint32_t highest = 0;
  for (const Cell input : inputs) highest = std::max(highest, heights_[input]);
  std::unordered_map<Cell, Cell> came_from{{cell, no_cell}};
  std::vector<Cell> open{cell};
  while (!open.empty()) {
    const Cell at = open.back();
    open.pop_back();
    for (const Cell reader : readers_[at]) {
      if (heights_[reader] > highest || !came_from.emplace(reader, at).second) continue;
      open.push_back(reader);
      if (std::ranges::find(inputs, reader) == inputs.end()) continue;
      std::vector<Cell> chain{cell};
      for (Cell link = reader; link != no_cell; link = came_from[link]) chain.push_back(link);
      return chain;
    }
  }
  return {};
}

void Uses::read(Cell cell, const std::vector<Cell>& inputs) {
  for (const Cell input : inputs_[cell]) std::erase(readers_[input], cell);
  inputs_[cell] = inputs;
  std::uint32_t height = 0;
  for (const Cell input : inputs) {
    readers_[input].push_back(cell);
    height = std::max(height, heights_[input] + 1);
  }
  const bool higher = height > heights_[cell];
  heights_[cell] = height;
  if (higher) raise_readers(cell);
}

/// Lowest first, so that each reader is raised once, to where it stays.
void Uses::raise_readers(Cell cell) {
  using Raised = std::pair<std::uint32_t, Cell>;
  std::priority_queue<Raised, std::vector<Raised>, std::greater<>> raised;
  raised.emplace(heights_[cell], cell);
  while (!raised.empty()) {
    const auto [height, at] = raised.top();
    raised.pop();
    if (heights_[at] != height) continue;  // raised again since
    for (const Cell reader : readers_[at]) {
      if (heights_[reader] > height) continue;
      heights_[reader] = height + 1;
      raised.emplace(height + 1, reader);
    }
  }
}

}  // namespace scalepan
