// The verbs: what each change asks for, checked, and done in steps.
#pragma once

#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/change.hpp"
#include "sheet/state.hpp"

namespace scalepan {

/// Whether the formula of the column has that input.
[[nodiscard]] bool reads(const Column& column, Cell input);
[[noreturn]] void fail_read_by(std::string_view name, const RowBlock& block, const Column& reader);

/// Makes changes, one after the other. What it throws leaves the state in the midst of them: the
/// caller plays back what was recorded.
class Editor {
 public:
  explicit Editor(SheetState& state) : state_(state) {}

  void make(const Change& change);
  /// Checks again what reads cells whose dimension or kind has changed. To be called once, after
  /// the last change.
  void check_retyped();

 private:
  void make_one(const Set& change);
  void make_one(const Define& change);
  void make_one(const PutOverride& change);
  void make_one(const Release& change);
  void make_one(const Remove& change);
  void make_one(const Rename& change);
  void make_one(const AddBlock& change);
  void make_one(const AddRow& change);
  void make_one(const RemoveRow& change);
  void make_one(const MoveRow& change);

  [[nodiscard]] Cell known(std::string_view name) const;
  [[nodiscard]] std::size_t known_block(std::string_view name) const;
  [[nodiscard]] std::size_t known_row(const RowBlock& block, std::string_view name) const;
  [[nodiscard]] std::size_t place_before(const RowBlock& block, std::string_view before) const;
  void expect_free(std::string_view name) const;
  void expect_possible(std::string_view name, const CellValue& value) const {
    if (state_.guard != nullptr) state_.guard(name, value, state_.names);
  }
  void expect_own(Cell cell) const;
  void expect_new_name(std::string_view name) const;
  void expect_no_column(std::string_view name) const;
  void expect_no_cells_under(std::string_view block) const;
  void expect_own_formula(Cell cell) const;
  void expect_unread(Cell cell) const;
  /// Of all blocks of rows, or all but one.
  void expect_unread_by_columns(Cell cell, std::size_t but_of = most_blocks) const;
  void expect_acyclic(Cell cell, std::span<const Cell> inputs) const;
  [[noreturn]] void fail_cycle(const std::vector<Cell>& chain) const;

  [[noreturn]] void fail_other_type(std::string_view name, const ValueType& own,
                                    std::string_view what, const ValueType& other) const;

  [[nodiscard]] Formula compile(std::string_view place, std::string_view text, const Names& names);
  void define_new(const Define& change);
  void define_cell(Cell cell, Formula formula);
  void define_column(Home home, std::string_view text);
  void add_column(std::size_t block, const NewColumn& column);
  void expect_column_name(const RowBlock& block, std::string_view name) const;
  void expect_row_name(const RowBlock& rows, std::string_view name) const;
  void expect_columns_acyclic(const RowBlock& block, std::size_t column,
                              const Formula& formula) const;
  void expect_acyclic_without_rows() const;
  [[nodiscard]] std::vector<Cell> read_without_rows(Cell cell) const;
  Row new_row(std::size_t block, const AddRow& change);
  void create_formula_cells(const RowBlock& block, Row& row);
  void remove_block(std::size_t block);
  void remove_column(Home home);
  /// Unless something reads it, but for the columns of one block.
  void forget_total(Home home, std::size_t but_of = most_blocks);
  void forget_unread(std::vector<Cell> cells);
  void remove_row(std::size_t block, std::size_t at);
  void rename_block(std::size_t block, const std::string& to);
  void rename_column(Home home, const std::string& to);
  void rename_row(std::size_t block, std::size_t at, const std::string& to);
  void retype_cell(Cell cell);
  /// The column of a cell that has its formula from there.
  [[nodiscard]] std::optional<Home> home_with_formula(Cell cell) const;
  void retype_column(Home home);
  void retype_columns_reading(Cell cell);

  SheetState& state_;
  std::set<Cell> retyped_;
};

}  // namespace scalepan
