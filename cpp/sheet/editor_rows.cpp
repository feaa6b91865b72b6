// Changes of rows.
#include <algorithm>
#include <utility>

#include "measure/nearest.hpp"
#include "sheet/editor.hpp"
#include "sheet/names_in_formula.hpp"

namespace scalepan {

namespace {

std::vector<std::string> nearest_of(std::string_view name, const std::vector<std::string>& names) {
  const std::vector<std::string_view> known(names.begin(), names.end());
  return nearest_names(name, known);
}

/// Stands in until the formula of the row's own is there.
CellValue nothing_of(const ValueType& type) {
  if (type.is_number()) return {type, Rational()};
  return {type, std::make_shared<const Text>("")};
}

Content formula_content(Formula formula) {
  Content content;
  content.kind = ContentKind::formula;
  content.formula = std::move(formula);
  return content;
}

}  // namespace

std::size_t Editor::known_block(std::string_view name) const {
  const std::size_t block = state_.blocks.find(name);
  if (block != state_.blocks.size()) return block;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < state_.blocks.size(); ++i) {
    if (state_.blocks.has(i)) names.push_back(state_.blocks.at(i).name);
  }
  fail("sheet.unknown", "no rows are called \"" + excerpt(name) + "\"",
       nearest_hint(nearest_of(name, names)));
}

std::size_t Editor::known_row(const RowBlock& block, std::string_view name) const {
  const std::size_t row = block.row(name);
  if (row != block.rows.size()) return row;
  std::vector<std::string> names;
  for (const Row& other : block.rows) names.push_back(other.name);
  fail("sheet.unknown", "no row of " + block.name + " is called \"" + excerpt(name) + "\"",
       nearest_hint(nearest_of(name, names)));
}

std::size_t Editor::place_before(const RowBlock& block, std::string_view before) const {
  return before.empty() ? block.rows.size() : known_row(block, before);
}

void Editor::make_one(const AddBlock& change) {
  expect_free(change.name);
  expect_no_cells_under(change.name);
  const std::size_t block = state_.blocks.free_number();
  if (block == most_blocks) fail("sheet.many", "there are too many blocks of rows");
  auto rows = std::make_unique<RowBlock>();
  rows->name = change.name;
  state_.put_block(block, std::move(rows));
  for (const NewColumn& column : change.columns) add_column(block, column);
}

void Editor::expect_no_cells_under(std::string_view block) const {
  for (Cell cell = 0; cell < state_.cells(); ++cell) {
    if (!state_.exists(cell) || state_.contents.kind(cell) == ContentKind::total) continue;
    const std::string_view name = state_.names.name(cell);
    const std::size_t point = name.rfind('.');
    if (point != block.size() || !name.starts_with(block)) continue;
    fail("sheet.taken", std::string(name) + " is a cell already", "take another name");
  }
}

void Editor::expect_column_name(const RowBlock& block, std::string_view name) const {
  expect_cell_name(name, state_.compiler.functions());
  const bool dotted = name.find('.') != std::string_view::npos;
  if (dotted)
    fail("sheet.name", "\"" + std::string(name) + "\" cannot be the name of a column",
         "a column has a name without points");
  const bool known = block.column(name) != block.columns.size();
  if (known) fail("sheet.taken", block.name + " have a column " + std::string(name) + " already");
  if (state_.names.find(name) != no_cell) {
    fail("sheet.taken", std::string(name) + " is a cell already",
         "a formula of the rows could mean either");
  }
}

/// Rows are taken out and put back with one cell more.
void Editor::add_column(std::size_t block, const NewColumn& column) {
  RowBlock& rows = state_.blocks.at(block);
  expect_column_name(rows, column.name);
  const std::string place = rows.name + "." + column.name;
  if (state_.names.find(place) != no_cell) fail("sheet.taken", place + " is a cell already");
  if (rows.columns.size() == most_columns) {
    fail("sheet.many", "rows have at most " + std::to_string(most_columns) + " columns");
  }
  auto added = std::make_unique<Column>();
  added->name = column.name;
  if (column.given) {
    if (!rows.rows.empty()) {
      fail("sheet.row", "the rows there are have no " + column.name, "give it a formula");
    }
    added->type = *column.given;
  } else {
    for (const Column& other : rows.columns) {
      if (state_.names.find(other.name) == no_cell) continue;
      fail("sheet.taken", other.name + " is a column of " + rows.name + " and a cell",
           "a formula of the rows could mean either");
    }
    added->formula = compile(place, column.formula, NamesInColumn(state_, rows));
    added->type = added->formula->programme->type;
  }
  const auto formula = added->formula;
  std::vector<Row> taken;
  while (!rows.rows.empty()) taken.push_back(state_.take_row(block, rows.rows.size() - 1));
  state_.put_column(block, rows.columns.size(), std::move(added));
  for (; !taken.empty(); taken.pop_back()) {
    Row row = std::move(taken.back());
    const std::string name = row.name + "." + column.name;
    expect_free(name);
    row.cells.push_back(
        state_.create(name, formula_content({formula->programme, inputs_in_row(*formula, row)})));
    state_.put_row(block, rows.rows.size(), std::move(row));
  }
}

void Editor::define_column(Home home, std::string_view text) {
  RowBlock& block = state_.blocks.at(home.block);
  const std::string place = state_.column_name(home);
  auto column = std::make_unique<Column>(block.columns[home.column]);
  if (!column->formula) {
    fail("sheet.formula", place + " is given row by row", "add a column with another name");
  }
  Formula formula = compile(place, text, NamesInColumn(state_, block));
  expect_columns_acyclic(block, home.column, formula);
  column->total = block.columns[home.column].total;  // the formula may have asked for it
  column->formula = formula;
  const bool other_type = !(column->type == formula.programme->type);
  column->type = formula.programme->type;
  const Cell total = column->total;
  state_.put_column(home.block, home.column, std::move(column));
  for (const Row& row : block.rows) {
    define_cell(row.cells[home.column], {formula.programme, inputs_in_row(formula, row)});
  }
  expect_acyclic_without_rows();
  if (other_type && total != no_cell) retyped_.insert(total);
}

void Editor::expect_row_name(const RowBlock& rows, std::string_view name) const {
  expect_cell_name(name, state_.compiler.functions());
  if (rows.column(name) != rows.columns.size()) {
    fail("sheet.taken", std::string(name) + " is a column of " + rows.name, "take another name");
  }
  // Rows with columns have cells, whose names are taken.
  if (rows.columns.empty() && rows.row(name) != rows.rows.size()) {
    fail("sheet.taken", std::string(name) + " is a row of " + rows.name + " already");
  }
}

Row Editor::new_row(std::size_t block, const AddRow& change) {
  const RowBlock& rows = state_.blocks.at(block);
  Row row{change.row, std::vector<Cell>(rows.columns.size(), no_cell)};
  for (const auto& [name, value, source, formula] : change.given) {
    const std::size_t at = rows.column(name);
    std::vector<std::string> names;
    for (const Column& column : rows.columns) names.push_back(column.name);
    if (at == rows.columns.size()) {
      fail("sheet.unknown", rows.name + " have no column \"" + excerpt(name) + "\"",
           nearest_hint(nearest_of(name, names)));
    }
    const Column& column = rows.columns[at];
    const std::string cell = change.row + "." + name;
    if (column.formula) {
      fail("sheet.formula", cell + " has the formula " + state_.column_text(rows, column),
           "override it to put a measured value in its place");
    }
    if (row.cells[at] != no_cell) fail("sheet.taken", cell + " is given twice");
    CellValue fit = value ? fitted(*value, column.type) : nothing_of(column.type);
    if (!fit.type.alike(column.type)) fail_other_type(cell, column.type, "value", fit.type);
    expect_free(cell);
    row.cells[at] = state_.create(cell, {ContentKind::given, std::move(fit), source, {}, 0, {}});
  }
  return row;
}

void Editor::make_one(const AddRow& change) {
  const std::size_t block = known_block(change.block);
  const RowBlock& rows = state_.blocks.at(block);
  const std::size_t at = place_before(rows, change.before);
  expect_row_name(rows, change.row);
  Row row = new_row(block, change);
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    if (row.cells[i] != no_cell || rows.columns[i].formula) continue;
    fail("sheet.row", change.row + "." + rows.columns[i].name + " is given no value",
         "it is " + rows.columns[i].type.name());
  }
  create_formula_cells(rows, row);
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const Cell total = rows.columns[i].total;
    if (total != no_cell) expect_acyclic(total, std::span(&row.cells[i], 1));
  }
  state_.put_row(block, at, std::move(row));
  for (const GivenInRow& one : change.given) {
    if (!one.formula.empty()) make_one(Define{change.row + "." + one.column, one.formula});
  }
}

/// Each after the columns that it reads.
void Editor::create_formula_cells(const RowBlock& block, Row& row) {
  const auto ready = [&](const Formula& formula) {
    return std::ranges::none_of(formula.inputs, [&](Cell input) {
      return input >= first_column && row.cells[input - first_column] == no_cell;
    });
  };
  for (std::size_t left = block.columns.size(); left > 0;) {
    left = 0;
    for (std::size_t i = 0; i < block.columns.size(); ++i) {
      const Column& column = block.columns[i];
      if (row.cells[i] != no_cell) continue;
      if (!ready(*column.formula)) {
        ++left;
        continue;
      }
      const std::string name = row.name + "." + column.name;
      expect_free(name);
      row.cells[i] = state_.create(
          name, formula_content({column.formula->programme, inputs_in_row(*column.formula, row)}));
    }
  }
}

/// From the highest on, so that what is recalled finds what it reads.
void Editor::forget_unread(std::vector<Cell> cells) {
  for (const Cell cell : cells) expect_own(cell);
  std::ranges::sort(cells, std::ranges::greater(),
                    [&](Cell cell) { return state_.uses.height(cell); });
  for (const Cell cell : cells) {
    expect_unread(cell);
    state_.forget(cell);
  }
}

void Editor::remove_row(std::size_t block, std::size_t at) {
  Row row = state_.take_row(block, at);
  for (const Cell cell : row.cells) expect_unread_by_columns(cell);
  forget_unread(std::move(row.cells));
}

void Editor::make_one(const RemoveRow& change) {
  const std::size_t block = known_block(change.block);
  remove_row(block, known_row(state_.blocks.at(block), change.row));
}

void Editor::make_one(const MoveRow& change) {
  const std::size_t block = known_block(change.block);
  const RowBlock& rows = state_.blocks.at(block);
  const std::size_t from = known_row(rows, change.row);
  const std::size_t before = place_before(rows, change.before);
  const std::size_t to = before > from ? before - 1 : before;
  if (to != from) state_.move_row(block, from, to);
}

void Editor::remove_block(std::size_t block) {
  RowBlock& rows = state_.blocks.at(block);
  std::vector<Cell> cells;
  while (!rows.rows.empty()) {
    const Row row = state_.take_row(block, rows.rows.size() - 1);
    cells.insert(cells.end(), row.cells.begin(), row.cells.end());
  }
  for (const Cell cell : cells) expect_unread_by_columns(cell, block);
  forget_unread(std::move(cells));
  for (std::size_t i = 0; i < rows.columns.size(); ++i) {
    forget_total({static_cast<std::uint32_t>(block), static_cast<std::uint32_t>(i)}, block);
  }
  state_.put_block(block, nullptr);
}

void Editor::forget_total(Home home, std::size_t but_of) {
  const Column& known = state_.blocks.at(home.block).columns[home.column];
  const Cell total = known.total;
  if (total == no_cell) return;
  expect_unread(total);
  expect_unread_by_columns(total, but_of);
  auto column = std::make_unique<Column>(known);
  column->total = no_cell;
  state_.put_column(home.block, home.column, std::move(column));
  state_.forget(total);
}

/// Rows are taken out and put back with one cell less; columns behind it take the places before
/// theirs.
void Editor::remove_column(Home home) {
  const RowBlock& rows = state_.blocks.at(home.block);
  const Cell as_input = first_column + home.column;
  for (const Column& column : rows.columns) {
    if (reads(column, as_input)) fail_read_by(state_.column_name(home), rows, column);
  }
  std::vector<Row> taken;
  std::vector<Cell> cells;
  while (!rows.rows.empty()) {
    Row& row = taken.emplace_back(state_.take_row(home.block, rows.rows.size() - 1));
    cells.push_back(row.cells[home.column]);
    row.cells.erase(row.cells.begin() + home.column);
  }
  for (const Cell cell : cells) expect_unread_by_columns(cell);
  forget_unread(std::move(cells));
  forget_total(home);
  for (std::size_t i = home.column + std::size_t{1}; i < rows.columns.size(); ++i) {
    auto column = std::make_unique<Column>(rows.columns[i]);
    if (column->formula) {
      for (Cell& input : column->formula->inputs) {
        if (input > as_input) --input;
      }
    }
    state_.put_column(home.block, i - 1, std::move(column));
  }
  state_.put_column(home.block, rows.columns.size() - 1, nullptr);
  for (; !taken.empty(); taken.pop_back()) {
    state_.put_row(home.block, rows.rows.size(), std::move(taken.back()));
  }
}

void Editor::rename_block(std::size_t block, const std::string& to) {
  expect_free(to);
  expect_no_cells_under(to);
  state_.rename_block(block, to);
  for (const Column& column : state_.blocks.at(block).columns) {
    if (column.total != no_cell) state_.rename(column.total, "sum(" + to + "." + column.name + ")");
  }
}

void Editor::rename_column(Home home, const std::string& to) {
  const RowBlock& block = state_.blocks.at(home.block);
  expect_column_name(block, to);
  auto column = std::make_unique<Column>(block.columns[home.column]);
  column->name = to;
  const Cell total = column->total;
  state_.put_column(home.block, home.column, std::move(column));
  if (total != no_cell) state_.rename(total, "sum(" + block.name + "." + to + ")");
  for (const Row& row : block.rows) {
    const std::string name = row.name + "." + to;
    expect_own(row.cells[home.column]);
    expect_free(name);
    state_.rename(row.cells[home.column], name);
  }
}

void Editor::rename_row(std::size_t block, std::size_t at, const std::string& to) {
  const RowBlock& rows = state_.blocks.at(block);
  expect_row_name(rows, to);
  state_.rename_row(block, at, to);
  for (std::size_t i = 0; i < rows.columns.size(); ++i) {
    const std::string name = to + "." + rows.columns[i].name;
    expect_own(rows.rows[at].cells[i]);
    expect_free(name);
    state_.rename(rows.rows[at].cells[i], name);
  }
}

}  // namespace scalepan
