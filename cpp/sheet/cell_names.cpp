#include "sheet/cell_names.hpp"

#include <algorithm>

#include "exact/error.hpp"
#include "exact/text.hpp"
#include "measure/nearest.hpp"
#include "measure/unit_table.hpp"
#include "sheet/functions.hpp"
#include "sheet/token.hpp"

namespace scalepan {

namespace {

constexpr std::size_t longest_name = 200;

bool in_word(char c) { return (c >= 'a' && c <= 'z') || is_digit(c) || c == '_'; }

bool is_name(std::string_view text) {
  bool starts = true;
  for (const char c : text) {
    if (c == '.') {
      if (starts) return false;
      starts = true;
      continue;
    }
    if (!in_word(c) || (starts && is_digit(c))) return false;
    starts = false;
  }
  return !starts;
}

/// What a formula would read the name as, or empty.
std::string_view other_meaning(std::string_view name) {
  if (is_keyword(name)) return "a word of formulas";
  if (function_named(name) != nullptr) return "a function";
  if (names_unit(name)) return "a unit";
  return {};
}

}  // namespace

void expect_cell_name(std::string_view name) {
  if (name.size() > longest_name || !is_name(name)) {
    fail("sheet.name", "\"" + excerpt(name) + "\" cannot be the name of a cell",
         "small letters, digits and \"_\", parted by points: leeks.need");
  }
  const std::string_view meaning = other_meaning(name);
  if (meaning.empty()) return;
  fail("sheet.name",
       "\"" + std::string(name) + "\" cannot be the name of a cell: it is " + std::string(meaning),
       "take a longer name");
}

Cell CellNames::find(std::string_view name) const {
  const auto found = cells_.find(name);
  return found == cells_.end() ? no_cell : found->second;
}

Cell CellNames::add(std::string_view name) {
  Cell cell = 0;
  if (free_.empty()) {
    cell = static_cast<Cell>(names_.size());
    names_.emplace_back(name);
  } else {
    cell = free_.back();
    free_.pop_back();
    names_[cell] = name;
  }
  cells_.emplace(name, cell);
  return cell;
}

void CellNames::remove(Cell cell) {
  cells_.erase(names_[cell]);
  names_[cell].clear();
  free_.push_back(cell);
}

void CellNames::rename(Cell cell, std::string_view name) {
  cells_.erase(names_[cell]);
  names_[cell] = name;
  cells_.emplace(name, cell);
}

std::vector<std::string> CellNames::nearest(std::string_view name) const {
  std::vector<std::string_view> known;
  known.reserve(cells_.size());
  for (const auto& [other, cell] : cells_) known.push_back(other);
  std::ranges::sort(known);
  return nearest_names(name, known);
}

}  // namespace scalepan
