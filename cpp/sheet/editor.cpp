#include "sheet/editor.hpp"

#include <algorithm>
#include <utility>

#include "exact/text.hpp"
#include "measure/nearest.hpp"
#include "sheet/names_in_formula.hpp"
#include "sheet/settle.hpp"

namespace scalepan {

namespace {

std::string others_text(std::size_t others) {
  return others == 0 ? "" : " and " + std::to_string(others) + " more";
}

}  // namespace

void Editor::make(const Change& change) {
  std::visit([this](const auto& one) { make_one(one); }, change);
}

Cell Editor::known(std::string_view name) const {
  const Cell cell = state_.names.find(name);
  if (cell != no_cell && state_.contents.kind(cell) != ContentKind::total) return cell;
  fail("sheet.unknown", "no cell is called \"" + excerpt(name) + "\"",
       nearest_hint(state_.names.nearest(name)));
}

void Editor::expect_free(std::string_view name) const {
  if (state_.names.find(name) != no_cell) {
    fail("sheet.taken", std::string(name) + " is a cell already", "take another name");
  }
  expect_new_name(name);
}

/// Of a name that no cell has.
void Editor::expect_new_name(std::string_view name) const {
  expect_cell_name(name, state_.compiler.functions());
  const std::size_t point = name.rfind('.');
  const std::string_view front = point == std::string_view::npos ? "" : name.substr(0, point);
  const bool rows = state_.blocks.find(name) != state_.blocks.size();
  const bool in_rows = !front.empty() && state_.blocks.find(front) != state_.blocks.size();
  if (!rows && !in_rows) {
    expect_no_column(name);
    return;
  }
  fail("sheet.taken",
       in_rows ? std::string(front) + " are rows, with columns of their own"
               : std::string(name) + " are rows already",
       "take another name");
}

void Editor::expect_no_column(std::string_view name) const {
  if (name.find('.') != std::string_view::npos) return;
  for (std::size_t i = 0; i < state_.blocks.size(); ++i) {
    if (!state_.blocks.has(i)) continue;
    const RowBlock& block = state_.blocks.at(i);
    if (block.column(name) == block.columns.size()) continue;
    // Rows whose columns are all given have no formulas but those that name cells in full.
    if (std::ranges::none_of(block.columns,
                             [](const Column& c) { return c.formula.has_value(); })) {
      continue;
    }
    fail("sheet.taken", std::string(name) + " is a column of " + block.name + " already",
         "a formula of the rows could mean either");
  }
}

void Editor::expect_own_formula(Cell cell) const {
  const auto home = home_with_formula(cell);
  if (!home) return;
  fail("sheet.in_rows",
       std::string(state_.names.name(cell)) + " belongs to the rows " +
           state_.blocks.at(home->block).name,
       "define " + state_.column_name(*home));
}

bool reads(const Column& column, Cell input) {
  return column.formula &&
         std::ranges::find(column.formula->inputs, input) != column.formula->inputs.end();
}

void fail_read_by(std::string_view name, const RowBlock& block, const Column& reader) {
  fail("sheet.read", std::string(name) + " is read by the column " + block.name + "." + reader.name,
       "remove or change what reads it first");
}

void Editor::expect_unread(Cell cell) const {
  const std::vector<Cell> readers = state_.uses.readers_of(cell);
  if (readers.empty()) return;
  fail("sheet.read",
       std::string(state_.names.name(cell)) + " is read by " +
           std::string(state_.names.name(readers.back())) + others_text(readers.size() - 1),
       "remove or change what reads it first");
}

void Editor::expect_unread_by_columns(Cell cell, std::size_t but_of) const {
  for (std::size_t i = 0; i < state_.blocks.size(); ++i) {
    if (!state_.blocks.has(i) || i == but_of) continue;
    const RowBlock& block = state_.blocks.at(i);
    for (const Column& column : block.columns) {
      if (reads(column, cell)) fail_read_by(state_.names.name(cell), block, column);
    }
  }
}

Formula Editor::compile(std::string_view place, std::string_view text, const Names& names) {
  try {
    return state_.compiler.compile(text, names);
  } catch (const Error& error) {
    Place at;
    at.cell = place;
    at.offset = error.place().offset;
    if (at.offset != Place::no_offset) at.column = static_cast<int>(at.offset) + 1;
    throw error.at(at);
  }
}

void Editor::make_one(const Set& change) {
  const Cell cell = state_.names.find(change.name);
  if (cell == no_cell) {
    expect_new_name(change.name);
    expect_possible(change.name, change.value);
    state_.create(change.name, {ContentKind::given, change.value, change.source, {}, 0, {}});
    return;
  }
  static_cast<void>(known(change.name));
  if (state_.contents.kind(cell) == ContentKind::formula) {
    fail("sheet.formula", change.name + " has the formula " + excerpt(state_.formula_text(cell)),
         "override it to put a measured value in its place");
  }
  const ValueType before = state_.type(cell);
  GivenValue given{fitted(change.value, before), change.source};
  expect_possible(change.name, given.value);
  if (given.value.type == before) {
    state_.put_given(cell, std::move(given));
    return;
  }
  Content content = state_.content(cell);
  content.given = std::move(given.value);
  content.source = change.source;
  const bool alike = content.given.type.alike(before);
  const bool in_rows = state_.blocks.home(cell).has_value();
  if (!alike && (!change.other_kind || content.instead || in_rows)) {
    fail_other_type(change.name, before, "value", content.given.type);
  }
  if (in_rows) content.given.type = before;
  if (!(content.given.type == before)) retyped_.insert(cell);
  state_.put(cell, std::move(content));
}

void Editor::fail_other_type(std::string_view name, const ValueType& own, std::string_view what,
                             const ValueType& other) const {
  fail("sheet.dimension",
       std::string(name) + " is " + own.name() + ", but the " + std::string(what) + " is " +
           other.name(),
       "give the same kind, or redeclare the cell");
}

void Editor::make_one(const Define& change) {
  const Cell cell = state_.names.find(change.name);
  if (cell == no_cell) {
    define_new(change);
  } else {
    static_cast<void>(known(change.name));
    expect_own_formula(cell);
    define_cell(cell, compile(change.name, change.formula, NamesInFormula(state_)));
  }
}

void Editor::define_new(const Define& change) {
  if (const auto column = state_.blocks.find_column(change.name)) {
    define_column(*column, change.formula);
    return;
  }
  const std::size_t point = change.name.rfind('.');
  if (point != std::string::npos) {
    const std::size_t block = state_.blocks.find(change.name.substr(0, point));
    if (block != state_.blocks.size()) {
      add_column(block, {change.name.substr(point + 1), std::nullopt, change.formula});
      return;
    }
  }
  expect_new_name(change.name);
  Content content;
  content.kind = ContentKind::formula;
  content.formula = compile(change.name, change.formula, NamesInFormula(state_));
  state_.create(change.name, std::move(content));
}

void Editor::define_cell(Cell cell, Formula formula) {
  expect_acyclic(cell, formula.inputs);
  const ValueType before = state_.type(cell);
  const ValueType after = formula.programme->type;
  const auto home = state_.blocks.home(cell);
  if (home && !after.alike(state_.blocks.at(home->block).columns[home->column].type)) {
    fail_other_type(state_.names.name(cell), before, "formula", after);
  }
  Content content = state_.content(cell);
  if (content.instead && !after.alike(before)) {
    fail("sheet.overridden",
         std::string(state_.names.name(cell)) + " is overridden with " + before.name() +
             ", but the formula gives " + after.name(),
         "release it first");
  }
  content.kind = ContentKind::formula;
  content.given = {};
  content.source.clear();
  content.formula = std::move(formula);
  state_.put(cell, std::move(content));
  expect_acyclic_without_rows();
  if (!(after == before)) retyped_.insert(cell);
}

void Editor::make_one(const PutOverride& change) {
  const Cell cell = known(change.name);
  if (trimmed(change.with.why).empty()) {
    fail("sheet.reason", "the override of " + change.name + " gives no reason",
         "say what was measured, and how");
  }
  const ValueType own = state_.type(cell);
  Content content = state_.content(cell);
  content.instead = change.with;
  content.instead->value = fitted(change.with.value, own);
  if (!content.instead->value.type.alike(own)) {
    fail_other_type(change.name, own, "override", content.instead->value.type);
  }
  expect_possible(change.name, content.instead->value);
  state_.put(cell, std::move(content));
}

void Editor::make_one(const Release& change) {
  const Cell cell = known(change.name);
  if (!state_.contents.is_overridden(cell)) {
    fail("sheet.released", change.name + " has no override to release");
  }
  Content content = state_.content(cell);
  content.instead.reset();
  state_.put(cell, std::move(content));
}

void Editor::expect_own(Cell cell) const {
  if (cell >= state_.kept_cells) return;
  fail("sheet.kept",
       std::string(state_.names.name(cell)) +
           " is a cell that this sheet is made with, and keeps its name",
       "define a cell of your own beside it, or override it");
}

void Editor::make_one(const Remove& change) {
  const std::size_t block = state_.blocks.find(change.name);
  if (block != state_.blocks.size()) {
    remove_block(block);
    return;
  }
  if (const auto column = state_.blocks.find_column(change.name)) {
    remove_column(*column);
    return;
  }
  const Cell cell = known(change.name);
  if (const auto home = state_.blocks.home(cell)) {
    fail("sheet.in_rows",
         change.name + " belongs to the rows " + state_.blocks.at(home->block).name,
         "remove its row or its column");
  }
  expect_own(cell);
  expect_unread(cell);
  expect_unread_by_columns(cell);
  state_.forget(cell);
}

void Editor::make_one(const Rename& change) {
  const std::size_t block = state_.blocks.find(change.name);
  if (block != state_.blocks.size()) {
    rename_block(block, change.to);
    return;
  }
  if (const auto column = state_.blocks.find_column(change.name)) {
    rename_column(*column, change.to);
    return;
  }
  const std::size_t point = change.name.rfind('.');
  if (point != std::string::npos) {
    const std::size_t in = state_.blocks.find(change.name.substr(0, point));
    if (in != state_.blocks.size()) {
      const std::size_t at = known_row(state_.blocks.at(in), change.name.substr(point + 1));
      rename_row(in, at, change.to);
      return;
    }
  }
  const Cell cell = known(change.name);
  if (const auto home = state_.blocks.home(cell)) {
    fail("sheet.in_rows",
         change.name + " belongs to the rows " + state_.blocks.at(home->block).name,
         "rename its row or its column");
  }
  expect_own(cell);
  expect_free(change.to);
  state_.rename(cell, change.to);
}

// What a change of types asks of those that read it.

void Editor::check_retyped() {
  while (!retyped_.empty()) {
    const Cell lowest = *std::ranges::min_element(
        retyped_, {}, [&](Cell cell) { return std::pair(state_.uses.height(cell), cell); });
    retyped_.erase(lowest);
    if (!state_.exists(lowest)) continue;
    retype_columns_reading(lowest);
    for (const Cell reader : state_.uses.readers_of(lowest)) retype_cell(reader);
  }
}

void Editor::retype_cell(Cell cell) {
  if (state_.contents.kind(cell) == ContentKind::total) {
    retyped_.insert(cell);
  } else if (const auto home = home_with_formula(cell)) {
    retype_column(*home);
  } else {
    const std::string name(state_.names.name(cell));
    Formula formula = compile(name, state_.formula_text(cell), NamesInFormula(state_));
    if (formula.programme != state_.contents.shared_programme(cell)) {
      define_cell(cell, std::move(formula));
    }
  }
}

std::optional<Home> Editor::home_with_formula(Cell cell) const {
  const auto home = state_.blocks.home(cell);
  if (!home || !state_.blocks.at(home->block).columns[home->column].formula) return std::nullopt;
  return home;
}

void Editor::retype_columns_reading(Cell cell) {
  for (std::size_t i = 0; i < state_.blocks.size(); ++i) {
    if (!state_.blocks.has(i)) continue;
    for (std::size_t k = 0; k < state_.blocks.at(i).columns.size(); ++k) {
      const auto& formula = state_.blocks.at(i).columns[k].formula;
      if (formula && std::ranges::find(formula->inputs, cell) != formula->inputs.end()) {
        retype_column({static_cast<std::uint32_t>(i), static_cast<std::uint32_t>(k)});
      }
    }
  }
}

void Editor::retype_column(Home home) {
  const RowBlock& block = state_.blocks.at(home.block);
  define_column(home, state_.column_text(block, block.columns[home.column]));
}

}  // namespace scalepan
