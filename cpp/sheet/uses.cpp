#include "sheet/uses.hpp"

#include <algorithm>
#include <functional>
#include <queue>
#include <unordered_map>
#include <utility>

namespace scalepan {

void Uses::resize(std::size_t cells) {
  first_input_.resize(cells, no_entry);
  first_reader_.resize(cells, no_entry);
  heights_.resize(cells);
}

void Uses::reserve(std::size_t cells) {
  first_input_.reserve(cells);
  first_reader_.reserve(cells);
  heights_.reserve(cells);
}

std::size_t Uses::input_count(Cell cell) const {
  if (first_input_[cell] == no_entry) return 0;
  Entry end = first_input_[cell];
  while (end < readers_.size() && readers_[end] == cell) ++end;
  return end - first_input_[cell];
}

std::vector<Cell> Uses::readers_of(Cell cell) const {
  std::vector<Cell> readers;
  for (Entry at = first_reader_[cell]; at != no_entry; at = next_[at]) {
    readers.push_back(readers_[at]);
  }
  return readers;
}

std::vector<Cell> Uses::cycle(Cell cell, std::span<const Cell> inputs) const {
  if (std::ranges::find(inputs, cell) != inputs.end()) return {cell, cell};
  if (!is_read(cell) || inputs.empty()) return {};
  std::uint32_t highest = 0;
  for (const Cell input : inputs) highest = std::max(highest, heights_[input]);
  std::unordered_map<Cell, Cell> came_from{{cell, no_cell}};
  std::vector<Cell> open{cell};
  while (!open.empty()) {
    const Cell at = open.back();
    open.pop_back();
    for (Entry entry = first_reader_[at]; entry != no_entry; entry = next_[entry]) {
      const Cell reader = readers_[entry];
      if (heights_[reader] > highest || !came_from.emplace(reader, at).second) continue;
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
  next_[entry] = first_reader_[input];
  if (next_[entry] != no_entry) previous_[next_[entry]] = entry;
  first_reader_[input] = entry;
}

void Uses::unlink(Entry entry) {
  if (next_[entry] != no_entry) previous_[next_[entry]] = previous_[entry];
  if (previous_[entry] != no_entry) {
    next_[previous_[entry]] = next_[entry];
  } else {
    first_reader_[inputs_[entry]] = next_[entry];
  }
}

void Uses::read(Cell cell, std::span<const Cell> inputs) {
  const std::size_t before = input_count(cell);
  for (std::size_t i = 0; i < before; ++i) unlink(first_input_[cell] + static_cast<Entry>(i));
  if (before > 0) give_entries(first_input_[cell], before);
  first_input_[cell] = inputs.empty() ? no_entry : take_entries(inputs.size());
  std::uint32_t height = 0;
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    link(first_input_[cell] + static_cast<Entry>(i), inputs[i], cell);
    height = std::max(height, heights_[inputs[i]] + 1);
  }
  if (height > heights_[cell]) {
    raise(cell, height);
  } else {
    heights_[cell] = height;
  }
}

void Uses::read_more(Cell total, Cell input) {
  link(take_entries(1), input, total);
  if (heights_[input] >= heights_[total]) raise(total, heights_[input] + 1);
}

void Uses::read_less(Cell total, Cell input) {
  Entry entry = first_reader_[input];
  while (readers_[entry] != total) entry = next_[entry];
  unlink(entry);
  give_entries(entry, 1);
}

/// Lowest first, so that each reader is raised once, to where it stays.
void Uses::raise(Cell cell, std::uint32_t height) {
  heights_[cell] = height;
  if (!is_read(cell)) return;
  using Raised = std::pair<std::uint32_t, Cell>;
  std::priority_queue<Raised, std::vector<Raised>, std::greater<>> raised;
  raised.emplace(height, cell);
  while (!raised.empty()) {
    const auto [low, at] = raised.top();
    raised.pop();
    if (heights_[at] != low) continue;  // raised again since
    for (Entry entry = first_reader_[at]; entry != no_entry; entry = next_[entry]) {
      const Cell reader = readers_[entry];
      if (heights_[reader] > low) continue;
      heights_[reader] = low + 1;
      raised.emplace(low + 1, reader);
    }
  }
}

std::size_t Uses::bytes() const {
  const std::size_t words = inputs_.capacity() + readers_.capacity() + next_.capacity() +
                            previous_.capacity() + first_input_.capacity() +
                            first_reader_.capacity() + heights_.capacity();
  return words * sizeof(std::uint32_t);
}

}  // namespace scalepan
