#include "sheet/cell_names.hpp"

#include <algorithm>
#include <functional>
#include <utility>

#include "exact/error.hpp"
#include "exact/text.hpp"
#include "measure/nearest.hpp"
#include "sheet/token.hpp"

namespace scalepan {

namespace {

constexpr std::size_t longest_name = 200;
// What every recipe is sized by. Behind a number the word is a unit all the same.
constexpr std::string_view number_of_portions = "portions";

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

/// Three in four places at most are taken, so that few names are looked at to find one.
bool is_full(std::size_t names, std::size_t places) { return 4 * names > 3 * places; }

/// What a formula would read the name as, or empty.
std::string_view other_meaning(std::string_view name, const FunctionTable& functions) {
  // Neither has a point or a digit.
  if (name.find('.') != std::string_view::npos || has_digit(name)) return {};
  if (is_keyword(name)) return "a word of formulas";
  if (functions.named(name) != nullptr) return "a function";
  if (name != number_of_portions && names_unit(name)) return "a unit";
  return {};
}

}  // namespace

void expect_cell_name(std::string_view name, const FunctionTable& functions) {
  if (name.size() > longest_name || !is_name(name)) {
    fail("sheet.name", "\"" + excerpt(name) + "\" cannot be the name of a cell",
         "small letters, digits and \"_\", parted by points: leeks.need");
  }
  const std::string_view meaning = other_meaning(name, functions);
  if (meaning.empty()) return;
  fail("sheet.name",
       "\"" + std::string(name) + "\" cannot be the name of a cell: it is " + std::string(meaning),
       "take a longer name");
}

std::size_t CellNames::home(std::string_view name) const {
  return std::hash<std::string_view>{}(name) & (table_.size() - 1);
}

std::size_t CellNames::place(std::string_view name) const {
  std::size_t at = home(name);
  while (table_[at] != no_cell && this->name(table_[at]) != name) {
    at = (at + 1) & (table_.size() - 1);
  }
  return at;
}

Cell CellNames::find(std::string_view name) const { return table_[place(name)]; }

std::size_t CellNames::free_place(std::string_view name) const {
  std::size_t at = home(name);
  while (table_[at] != no_cell) at = (at + 1) & (table_.size() - 1);
  return at;
}

void CellNames::put(Cell cell, std::string_view name) {
  if (is_full(count_ + 1, table_.size())) resize_table(2 * table_.size());
  if (cell >= starts_.size()) {
    starts_.resize(cell + 1);
    lengths_.resize(cell + 1);
  }
  table_[free_place(name)] = cell;
  starts_[cell] = static_cast<std::uint32_t>(letters_.size());
  lengths_[cell] = static_cast<std::uint8_t>(name.size());
  letters_ += name;
  ++count_;
}

void CellNames::reserve(std::size_t cells) {
  std::size_t size = table_.size();
  while (is_full(cells, size)) size *= 2;
  if (size > table_.size()) resize_table(size);
  starts_.reserve(cells);
  lengths_.reserve(cells);
}

/// What follows without a gap moves up, unless it stands at or before its own home then.
void CellNames::drop(Cell cell) {
  const std::size_t mask = table_.size() - 1;
  std::size_t gap = place(name(cell));
  for (std::size_t at = (gap + 1) & mask; table_[at] != no_cell; at = (at + 1) & mask) {
    const std::size_t own = home(name(table_[at]));
    if (((at - own) & mask) < ((at - gap) & mask)) continue;
    table_[gap] = table_[at];
    gap = at;
  }
  table_[gap] = no_cell;
  --count_;
  dropped_letters_ += lengths_[cell];
  lengths_[cell] = 0;
  if (dropped_letters_ > letters_.size() / 2) squeeze_letters();
}

void CellNames::resize_table(std::size_t size) {
  const std::vector<Cell> before = std::exchange(table_, std::vector<Cell>(size, no_cell));
  for (const Cell cell : before) {
    if (cell != no_cell) table_[free_place(name(cell))] = cell;
  }
}

void CellNames::squeeze_letters() {
  std::string kept;
  for (Cell cell = 0; cell < starts_.size(); ++cell) {
    const std::string_view own = name(cell);
    starts_[cell] = static_cast<std::uint32_t>(kept.size());
    kept += own;
  }
  letters_ = std::move(kept);
  dropped_letters_ = 0;
}

std::vector<std::string> CellNames::nearest(std::string_view name) const {
  std::vector<std::string_view> known;
  known.reserve(count_);
  for (const Cell cell : table_) {
    if (cell != no_cell && this->name(cell).back() != ')') known.push_back(this->name(cell));
  }
  std::ranges::sort(known);
  return nearest_names(name, known);
}

std::size_t CellNames::bytes() const {
  return letters_.capacity() + starts_.capacity() * sizeof(std::uint32_t) + lengths_.capacity() +
         table_.capacity() * sizeof(Cell);
}

}  // namespace scalepan
