// Changes of a sheet, as data: what verbs do, what a variant consists of, what a file holds.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "sheet/content.hpp"

namespace scalepan {

/// Gives a value. A new cell takes its dimension from it and keeps it.
struct Set {
  std::string name;
  CellValue value;
  std::string source{};     // where the value comes from
  bool other_kind = false;  // the value may be of another dimension than the cell had
};

/// Gives a formula, to a cell, to a column of rows, or to one row's cell of a column that is given.
struct Define {
  std::string name;
  std::string formula;
};

/// Puts a measured value in the place of a cell's own, until it is released.
struct PutOverride {
  std::string name;
  Override with;
};

struct Release {
  std::string name;
};

/// Takes away a cell, or a block of rows.
struct Remove {
  std::string name;
};

/// Of a cell, a block of rows, a row (`leeks`) or a column (`lines.need`); formulas go on reading
/// it.
struct Rename {
  std::string name;
  std::string to;
};

/// One column of new rows: given row by row, or by a formula.
struct NewColumn {
  std::string name;
  std::optional<ValueType> given;
  std::string formula{};
};

/// A block of rows, without rows as yet.
struct AddBlock {
  std::string name;
  std::vector<NewColumn> columns;
};

/// A value for one row, or a formula of its own, which names cells in full.
struct GivenInRow {
  std::string column;
  std::optional<CellValue> value{};  // none: nothing, until a formula is there
  std::string source{};              // where the value comes from
  std::string formula{};
};

/// A row, with one of these for each column that is given.
struct AddRow {
  std::string block;
  std::string row;
  std::vector<GivenInRow> given;
  std::string before{};  // a row; empty: at the end
};

struct RemoveRow {
  std::string block;
  std::string row;
};

struct MoveRow {
  std::string block;
  std::string row;
  std::string before{};  // a row; empty: to the end
};

using Change = std::variant<Set, Define, PutOverride, Release, Remove, Rename, AddBlock, AddRow,
                            RemoveRow, MoveRow>;

}  // namespace scalepan
