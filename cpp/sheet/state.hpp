// All that a sheet holds, and the few steps by which it changes.
//
// Each step records the step that takes it back, so that a refused change, an undo and a redo are
// all the same: steps played in turn. Figures change only when the sheet settles, after a change is
// accepted whole; a change taken back before leaves no trace in them.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "sheet/cell_names.hpp"
#include "sheet/compile.hpp"
#include "sheet/content.hpp"
#include "sheet/due.hpp"
#include "sheet/figures.hpp"
#include "sheet/row_block.hpp"
#include "sheet/total.hpp"
#include "sheet/uses.hpp"

namespace scalepan {

/// From the last to the first.
struct ForgetCells {
  std::vector<Cell> cells;
};
/// In place of the value that a cell is given, of the same type.
struct SwapGiven {
  Cell cell = no_cell;
  std::unique_ptr<GivenValue> given;
};
struct RecallCell {
  Cell cell = no_cell;
  std::string name;
  std::unique_ptr<Content> content;
};
struct PutContent {
  Cell cell = no_cell;
  std::unique_ptr<Content> content;
};
struct RenameCell {
  Cell cell = no_cell;
  std::string name;
};
struct PutBlock {
  std::size_t block = 0;
  std::unique_ptr<RowBlock> rows;  // none: drops it
};
struct RenameBlock {
  std::size_t block = 0;
  std::string name;
};
struct PutColumn {
  std::size_t block = 0;
  std::size_t column = 0;
  std::unique_ptr<Column> with;  // none: takes the last one away
};
struct PutRow {
  std::size_t block = 0;
  std::size_t at = 0;
  std::unique_ptr<Row> row;
};
struct TakeRow {
  std::size_t block = 0;
  std::size_t at = 0;
};
struct MoveRowTo {
  std::size_t block = 0;
  std::size_t from = 0;
  std::size_t to = 0;
};
struct RenameRow {
  std::size_t block = 0;
  std::size_t at = 0;
  std::string name;
};

using EditStep = std::variant<ForgetCells, SwapGiven, RecallCell, PutContent, RenameCell, PutBlock,
                              RenameBlock, PutColumn, PutRow, TakeRow, MoveRowTo, RenameRow>;
using EditSteps = std::vector<EditStep>;

/// The sum of a column, in a cell of its own.
struct ColumnTotal {
  Total sum;
  Home home;
  bool stale = true;  // its rows must be read again
};

/// Throws where a cell of that name cannot have the value that it is given or overridden with;
/// `names` are those there are.
using ValueGuard = void (*)(std::string_view cell, const CellValue& value, const CellNames& names);

class SheetState {
 public:
  explicit SheetState(std::shared_ptr<const FunctionTable> functions,
                      ValueGuard checked_by = nullptr)
      : compiler(std::move(functions)), guard(checked_by) {}
  SheetState(const SheetState&) = delete;
  SheetState& operator=(const SheetState&) = delete;

  Compiler compiler;
  const ValueGuard guard;  // may be null
  Cell kept_cells = 0;     // those below are neither renamed nor removed
  CellNames names;
  CellRecords records;
  Uses uses{records};
  Contents contents{records};
  Figures figures;
  RowBlocks blocks{records};
  std::vector<ColumnTotal> totals;
  DueCells due{records};

  /// So many numbers have been given; some may be free.
  [[nodiscard]] std::size_t cells() const { return records.size(); }
  /// Bytes held by what every cell has.
  [[nodiscard]] std::size_t bytes() const;
  [[nodiscard]] bool exists(Cell cell) const { return contents.kind(cell) != ContentKind::none; }
  [[nodiscard]] ValueType type(Cell cell) const;
  [[nodiscard]] std::string formula_text(Cell cell) const;
  [[nodiscard]] std::string column_text(const RowBlock& block, const Column& column) const;
  [[nodiscard]] Content content(Cell cell) const;
  /// As formulas call it: a total by its column.
  [[nodiscard]] std::string name_in_formula(Cell cell) const;
  /// `lines.price`.
  [[nodiscard]] std::string column_name(Home home) const;

  /// Room for so many cells more.
  void reserve(std::size_t more);

  // Steps. Each is recorded, and what it touches is due when the sheet settles.
  Cell create(std::string_view name, Content content);
  void forget(Cell cell);
  void put(Cell cell, Content content);
  /// Of the type that the cell has, which is given.
  void put_given(Cell cell, GivenValue given);
  void rename(Cell cell, std::string name);
  void put_block(std::size_t block, std::unique_ptr<RowBlock> rows);
  void rename_block(std::size_t block, std::string name);
  /// In place of a column, or behind the last one; none takes the last one away. The number of
  /// columns changes only while there are no rows.
  void put_column(std::size_t block, std::size_t column, std::unique_ptr<Column> with);
  void put_row(std::size_t block, std::size_t at, Row row);
  Row take_row(std::size_t block, std::size_t at);
  void move_row(std::size_t block, std::size_t from, std::size_t to);
  void rename_row(std::size_t block, std::size_t at, std::string name);

  /// Plays steps from the last to the first.
  void play_back(EditSteps steps);
  /// What takes back all that was recorded since the last call.
  [[nodiscard]] EditSteps take_recorded();
  /// What was touched since the last call is due.
  void accept();
  /// Nothing that was touched since the last `accept` is due.
  void refuse();

 private:
  void play(EditStep& step);
  Cell take_number();
  void take_number_again(Cell cell);
  void fill(Cell cell, Content content);
  void touch(Cell cell) { touched_.push_back(cell); }
  void record_new(Cell cell);
  void join_total(const Column& column, Cell cell);
  void leave_total(const Column& column, Cell cell);

  std::size_t room_ = 0;  // for so many cells
  std::vector<Cell> free_;
  std::vector<Cell> dropped_;  // since the last `accept`: their figures are kept till then
  std::vector<Cell> touched_;  // since the last `accept`
  EditSteps recorded_;
};

/// Of all rows of a column, read anew.
[[nodiscard]] Total sum_of_rows(const SheetState& state, const Figures& figures, Home home);

}  // namespace scalepan
