#include "sheet/uses.hpp"

#include <algorithm>
#include <functional>
#include <queue>
#include <unordered_map>
#include <utility>

namespace scalepan {

std::size_t Uses::input_count(Cell cell) const {
  if (cells_[cell].first_input == no_entry) return 0;
  Entry end = cells_[cell].first_input;
  while (end < readers_.size() && readers_[end] == cell) ++end;
  return end - cells_[cell].first_input;
}

std::vector<Cell> Uses::readers_of(Cell cell) const {
  std::vector<Cell> readers;
  for (Entry at = cells_[cell].first_reader; at != no_entry; at = next_[at]) {
    readers.push_back(readers_[at]);
  }
  return readers;
}

std::vector<Cell> Uses::cycle(Cell cell, std::span<const Cell> inputs) const {
  if (std::ranges::find(inputs, cell) != inputs.end()) return {cell, cell};
  if (!is_read(cell) || inputs.empty()) return {};
  std::uint32_t highest = 0;
  for (const Cell input : inputs) highest = std::max(highest, cells_[input].height);
  std::unordered_map<Cell, Cell> came_from{{cell, no_cell}};
  std::vector<Cell> open{cell};
  while (!open.empty()) {
    const Cell at = open.back();
    open.pop_back();
    for (Entry entry = cells_[at].first_reader; entry != no_entry; entry = next_[entry]) {
      const Cell reader = readers_[entry];
      if (cells_[reader].height > highest || !came_from.emplace(reader, at).second) continue;
      open.push_back(reader);
      if (std::ranges::find(inputs, reader) == inputs.end()) continue;
      std::vector<Cell> chain{cell};
      for (Cell step = reader; step != no_cell; step = came_from[step]) chain.push_back(step);
      return chain;
    }
  }
  return {};
}

Uses::Entry Uses::take_entries(std::size_t count) {
  if (count < free_.size() && !free_[count].empty()) {
    const Entry first = free_[count].back();
    free_[count].pop_back();
    return first;
  }
  const auto first = static_cast<Entry>(inputs_.size());
  inputs_.resize(first + count, no_cell);
  readers_.resize(first + count, no_cell);
  next_.resize(first + count, no_entry);
  previous_.resize(first + count, no_entry);
  return first;
}

void Uses::give_entries(Entry first, std::size_t count) {
  for (std::size_t i = 0; i < count; ++i) readers_[first + i] = no_cell;
  if (count >= free_.size()) free_.resize(count + 1);
  free_[count].push_back(first);
}

void Uses::link(Entry entry, Cell input, Cell reader) {
  inputs_[entry] = input;
  readers_[entry] = reader;
  previous_[entry] = no_entry;
  next_[entry] = cells_[input].first_reader;
  if (next_[entry] != no_entry) previous_[next_[entry]] = entry;
  cells_[input].first_reader = entry;
}

void Uses::unlink(Entry entry) {
  if (next_[entry] != no_entry) previous_[next_[entry]] = previous_[entry];
  if (previous_[entry] != no_entry) {
    next_[previous_[entry]] = next_[entry];
  } else {
    cells_[inputs_[entry]].first_reader = next_[entry];
  }
}

void Uses::read(Cell cell, std::span<const Cell> inputs) {
  const std::size_t before = input_count(cell);
  for (std::size_t i = 0; i < before; ++i) unlink(cells_[cell].first_input + static_cast<Entry>(i));
  if (before > 0) give_entries(cells_[cell].first_input, before);
  cells_[cell].first_input = inputs.empty() ? no_entry : take_entries(inputs.size());
  std::uint32_t height = 0;
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    link(cells_[cell].first_input + static_cast<Entry>(i), inputs[i], cell);
    height = std::max(height, cells_[inputs[i]].height + 1);
  }
  if (height > cells_[cell].height) {
    raise(cell, height);
  } else {
    cells_[cell].height = height;
  }
}

void Uses::read_more(Cell total, Cell input) {
  link(take_entries(1), input, total);
  if (cells_[input].height >= cells_[total].height) raise(total, cells_[input].height + 1);
}

void Uses::read_less(Cell total, Cell input) {
  Entry entry = cells_[input].first_reader;
  while (readers_[entry] != total) entry = next_[entry];
  unlink(entry);
  give_entries(entry, 1);
}

/// Lowest first, so that each reader is raised once, to where it stays.
void Uses::raise(Cell cell, std::uint32_t height) {
  cells_[cell].height = height;
  if (!is_read(cell)) return;
  using Raised = std::pair<std::uint32_t, Cell>;
  std::priority_queue<Raised, std::vector<Raised>, std::greater<>> raised;
  raised.emplace(height, cell);
  while (!raised.empty()) {
    const auto [low, at] = raised.top();
    raised.pop();
    if (cells_[at].height != low) continue;  // raised again since
    for (Entry entry = cells_[at].first_reader; entry != no_entry; entry = next_[entry]) {
      const Cell reader = readers_[entry];
      if (cells_[reader].height > low) continue;
      cells_[reader].height = low + 1;
      raised.emplace(low + 1, reader);
    }
  }
}

std::size_t Uses::bytes() const {
  return (inputs_.capacity() + readers_.capacity() + next_.capacity() + previous_.capacity()) *
         sizeof(Entry);
}

}  // namespace scalepan
