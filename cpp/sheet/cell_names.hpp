// Names of cells.
//
//   name = word { "." word }
//   word = lower-case letter or "_" { lower-case letter | digit | "_" }
//
// A word of the formulas or a name of a unit is no name of a cell, so that no formula can be read
// in two ways; `portions` alone is both.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sheet/cell.hpp"
#include "sheet/functions.hpp"

namespace scalepan {

/// Throws `sheet.name` for a text that is no name, or means something else in formulas.
void expect_cell_name(std::string_view name, const FunctionTable& functions);

/// All names in one run of letters and a table of cell numbers, so that a name costs little more
/// than its letters.
class CellNames {
 public:
  CellNames() : table_(16, no_cell) {}

  /// `no_cell` where no cell is called so.
  [[nodiscard]] Cell find(std::string_view name) const;
  /// The name must be free, and the cell without one.
  void put(Cell cell, std::string_view name);
  /// Room for so many cells.
  void reserve(std::size_t cells);
  void drop(Cell cell);
  [[nodiscard]] std::string_view name(Cell cell) const {
    return std::string_view(letters_).substr(starts_[cell], lengths_[cell]);
  }
  [[nodiscard]] std::vector<std::string> nearest(std::string_view name) const;
  /// Bytes held.
  [[nodiscard]] std::size_t bytes() const;

 private:
  [[nodiscard]] std::size_t home(std::string_view name) const;
  /// Where it stands in the table, or where it would.
  [[nodiscard]] std::size_t place(std::string_view name) const;
  /// Where a name that is free would stand.
  [[nodiscard]] std::size_t free_place(std::string_view name) const;
  void resize_table(std::size_t size);
  void squeeze_letters();

  std::string letters_;
  std::vector<std::uint32_t> starts_;  // by cell
  std::vector<std::uint8_t> lengths_;  // by cell; 0 without a name
  std::vector<Cell> table_;            // a power of two of places, probed one after another
  std::size_t count_ = 0;
  std::size_t dropped_letters_ = 0;
};

}  // namespace scalepan
