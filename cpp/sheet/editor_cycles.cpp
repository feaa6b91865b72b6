// No cell may depend on itself: not by formulas, nor by rows and their totals.
#include <algorithm>
#include <unordered_map>
#include <utility>

#include "sheet/editor.hpp"

namespace scalepan {

void Editor::fail_cycle(const std::vector<Cell>& chain) const {
  constexpr std::size_t most_told = 12;
  std::string links;
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const bool left_out =
        chain.size() > most_told && i >= most_told / 2 && i < chain.size() - most_told / 2;
    if (left_out && i > most_told / 2) continue;
    links += i == 0 ? "" : " reads ";
    links += left_out ? "... (" + std::to_string(chain.size() - most_told) + " cells)"
                      : std::string(state_.names.name(chain[i]));
  }
  fail("sheet.cycle", "a cell cannot depend on itself: " + links);
}

void Editor::expect_acyclic(Cell cell, std::span<const Cell> inputs) const {
  const std::vector<Cell> chain = state_.uses.cycle(cell, inputs);
  if (!chain.empty()) fail_cycle(chain);
}

/// Columns of one row may not read each other in a circle, even while there is no row.
void Editor::expect_columns_acyclic(const RowBlock& block, std::size_t column,
                                    const Formula& formula) const {
  std::vector<std::size_t> open;
  std::vector<bool> seen(block.columns.size());
  const auto read = [&](const Formula& by) {
    for (const Cell input : by.inputs) {
      if (input >= first_column && !seen[input - first_column]) {
        seen[input - first_column] = true;
        open.push_back(input - first_column);
      }
    }
  };
  for (read(formula); !open.empty();) {
    const std::size_t at = open.back();
    open.pop_back();
    if (at == column) {
      fail("sheet.cycle",
           "a column cannot depend on itself: " + block.name + "." + block.columns[column].name);
    }
    if (block.columns[at].formula) read(*block.columns[at].formula);
  }
}

/// What the cell reads, a total of a column without rows what that column's rows would read.
std::vector<Cell> Editor::read_without_rows(Cell cell) const {
  if (state_.contents.kind(cell) == ContentKind::formula) {
    const auto inputs = state_.uses.read_by(cell);
    return {inputs.begin(), inputs.end()};
  }
  if (state_.contents.kind(cell) != ContentKind::total) return {};
  const Home home = state_.totals[state_.contents.total(cell)].home;
  const RowBlock& block = state_.blocks.at(home.block);
  std::vector<Cell> inputs;
  for (const Row& row : block.rows) inputs.push_back(row.cells[home.column]);
  if (!block.rows.empty()) return inputs;
  std::vector<bool> seen(block.columns.size());
  std::vector<std::size_t> open{home.column};
  while (!open.empty()) {
    const std::size_t at = open.back();
    open.pop_back();
    if (seen[at] || !block.columns[at].formula) continue;
    seen[at] = true;
    for (const Cell input : block.columns[at].formula->inputs) {
      if (input >= first_column) {
        open.push_back(input - first_column);
      } else {
        inputs.push_back(input);
      }
    }
  }
  return inputs;
}

/// A column may not rest on its own total, even while there is no row.
void Editor::expect_acyclic_without_rows() const {
  struct Open {
    Cell cell;
    std::vector<Cell> inputs;
  };
  std::unordered_map<Cell, bool> on_the_way;
  for (std::size_t i = 0; i < state_.blocks.size(); ++i) {
    if (!state_.blocks.has(i) || !state_.blocks.at(i).rows.empty()) continue;
    for (const Column& column : state_.blocks.at(i).columns) {
      if (column.total == no_cell || !on_the_way.emplace(column.total, true).second) continue;
      std::vector<Open> open{{column.total, read_without_rows(column.total)}};
      while (!open.empty()) {
        if (open.back().inputs.empty()) {
          on_the_way[open.back().cell] = false;
          open.pop_back();
          continue;
        }
        const Cell next = open.back().inputs.back();
        open.back().inputs.pop_back();
        const auto [known, is_new] = on_the_way.emplace(next, true);
        if (is_new) {
          open.push_back({next, read_without_rows(next)});
        } else if (known->second) {
          std::vector<Cell> chain;
          for (const Open& link : open) {
            if (link.cell == next || !chain.empty()) chain.push_back(link.cell);
          }
          chain.push_back(next);
          fail_cycle(chain);
        }
      }
    }
  }
}

}  // namespace scalepan
