// Rows: a block of cells with one value or one formula a column.
//
// The cell of row `leeks` in column `need` is called `leeks.need`. A column's formula is compiled
// once; its inputs are cells of the sheet, or other columns, which then mean the cell of the same
// row.
#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/content.hpp"

namespace scalepan {

/// An input of a column's formula that is the column with this number less `first_column`.
inline constexpr Cell first_column = 0xF0000000;

inline constexpr std::size_t most_columns = 1024;
inline constexpr std::size_t most_blocks = 10'000;

struct Column {
  std::string name;
  ValueType type;
  std::optional<Formula> formula;  // none: each row is given a value
  Cell total = no_cell;            // the cell of its sum, where one was asked for
};

struct Row {
  std::string name;
  std::vector<Cell> cells;  // one a column
};

struct RowBlock {
  std::string name;
  std::vector<Column> columns;
  std::vector<Row> rows;

  /// Its place among the columns, or `columns.size()`.
  [[nodiscard]] std::size_t column(std::string_view called) const;
  /// Its place among the rows, or `rows.size()`.
  [[nodiscard]] std::size_t row(std::string_view called) const;
};

/// The inputs of a column's formula in one row.
[[nodiscard]] std::vector<Cell> inputs_in_row(const Formula& formula, const Row& row);

/// The column that a cell belongs to.
struct Home {
  std::uint32_t block = 0;
  std::uint32_t column = 0;
};

/// The blocks of a sheet, by number; a dropped one leaves its number free.
class RowBlocks {
 public:
  explicit RowBlocks(CellRecords& cells) : cells_(cells) {}

  [[nodiscard]] std::size_t size() const { return blocks_.size(); }
  [[nodiscard]] bool has(std::size_t block) const { return blocks_[block].has_value(); }
  [[nodiscard]] RowBlock& at(std::size_t block) { return *blocks_[block]; }
  [[nodiscard]] const RowBlock& at(std::size_t block) const { return *blocks_[block]; }
  /// Its number, or `size()`.
  [[nodiscard]] std::size_t find(std::string_view name) const;
  /// Of `lines.price`: nothing unless there are such rows with such a column.
  [[nodiscard]] std::optional<Home> find_column(std::string_view dotted) const;

  [[nodiscard]] std::optional<Home> home(Cell cell) const {
    if (cells_[cell].home == 0) return std::nullopt;
    const std::uint32_t code = cells_[cell].home - 1;
    return Home{code >> column_bits, code & ((1U << column_bits) - 1)};
  }
  void put_home(Cell cell, Home home) {
    cells_[cell].home = ((home.block << column_bits) | home.column) + 1;
  }
  void clear_home(Cell cell) { cells_[cell].home = 0; }

  /// At a number that is free, or the next new one.
  void put(std::size_t block, RowBlock rows);
  void rename(std::size_t block, const std::string& name);
  RowBlock drop(std::size_t block);
  [[nodiscard]] std::size_t free_number() const;

 private:
  static constexpr unsigned column_bits = 10;
  static_assert(most_columns == std::size_t{1} << column_bits);
  static_assert(most_blocks < std::size_t{1} << (32 - column_bits));

  std::vector<std::optional<RowBlock>> blocks_;
  std::map<std::string, std::size_t, std::less<>> numbers_;  // by name
  CellRecords& cells_;  // a home is block and column, and one; 0 for none
};

}  // namespace scalepan
