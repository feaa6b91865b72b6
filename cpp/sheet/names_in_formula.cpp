#include "sheet/names_in_formula.hpp"

#include <memory>

#include "measure/nearest.hpp"

namespace scalepan {

Cell total_of(SheetState& state, Home home) {
  const Column& column = state.blocks.at(home.block).columns[home.column];
  if (column.total != no_cell) return column.total;
  Content content;
  content.kind = ContentKind::total;
  content.total = state.totals.size();
  state.totals.push_back({{}, home, true});
  const Cell cell = state.create("sum(" + state.column_name(home) + ")", std::move(content));
  auto with = std::make_unique<Column>(column);
  with->total = cell;
  state.put_column(home.block, home.column, std::move(with));
  return cell;
}

std::optional<Names::Found> NamesInFormula::find(std::string_view name) const {
  const Cell cell = state_.names.find(name);
  if (cell == no_cell || state_.contents.kind(cell) == ContentKind::total) return std::nullopt;
  return Found{cell, state_.type(cell)};
}

std::optional<Names::Found> NamesInFormula::find_total(std::string_view column) const {
  const auto home = state_.blocks.find_column(column);
  if (!home) return std::nullopt;
  const ValueType type = state_.blocks.at(home->block).columns[home->column].type;
  if (type.kind != ValueKind::quantity) return std::nullopt;
  return Found{total_of(state_, *home), type};
}

std::vector<std::string> NamesInFormula::nearest(std::string_view name) const {
  return state_.names.nearest(name);
}

std::optional<Names::Found> NamesInColumn::find(std::string_view name) const {
  const std::size_t column = block_.column(name);
  if (column == block_.columns.size()) return NamesInFormula::find(name);
  return Found{first_column + static_cast<Cell>(column), block_.columns[column].type};
}

std::vector<std::string> NamesInColumn::nearest(std::string_view name) const {
  std::vector<std::string_view> columns;
  for (const Column& column : block_.columns) columns.push_back(column.name);
  std::vector<std::string> near = nearest_names(name, columns);
  return near.empty() ? NamesInFormula::nearest(name) : near;
}

}  // namespace scalepan
