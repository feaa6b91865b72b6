#include "sheet/changes_of.hpp"

#include <algorithm>
#include <functional>
#include <queue>
#include <unordered_map>
#include <utility>

#include "sheet/token.hpp"

namespace scalepan {

namespace {

/// The names that a formula may read; of one that cannot be read, those up to there.
std::vector<std::string> names_in(std::string_view formula, UnitMemo& memo) {
  std::vector<std::string> names;
  try {
    TokenReader tokens(formula, memo);
    for (Token token = tokens.next();
         token.kind != TokenKind::end && token.kind != TokenKind::unreadable;
         token = tokens.next()) {
      if (token.kind == TokenKind::name) names.emplace_back(token.text);
    }
  } catch (const Error&) {
    return names;  // the formula is refused where it is compiled
  }
  return names;
}

/// What changes make and what they build on.
class BuildOrder {
 public:
  explicit BuildOrder(std::vector<Change> changes) : changes_(std::move(changes)) {
    part_own_formulas();
    for (std::size_t i = 0; i < changes_.size(); ++i) {
      if (const auto* block = std::get_if<AddBlock>(&changes_[i])) note_block(i, *block);
    }
    for (std::size_t i = 0; i < changes_.size(); ++i) note_made(i);
    waits_.resize(changes_.size());
    leads_to_.resize(changes_.size());
    for (std::size_t i = 0; i < changes_.size(); ++i) note_needs(i);
  }

  std::vector<Change> ordered() {
    std::priority_queue<std::size_t, std::vector<std::size_t>, std::greater<>> ready;
    for (std::size_t i = 0; i < changes_.size(); ++i) {
      if (waits_[i].empty()) ready.push(i);
    }
    std::vector<std::size_t> left(changes_.size());
    for (std::size_t i = 0; i < changes_.size(); ++i) left[i] = waits_[i].size();
    std::vector<Change> ordered;
    ordered.reserve(changes_.size());
    std::vector<bool> done(changes_.size());
    while (!ready.empty()) {
      const std::size_t at = ready.top();
      ready.pop();
      done[at] = true;
      ordered.push_back(std::move(changes_[at]));
      for (const std::size_t next : leads_to_[at]) {
        if (--left[next] == 0) ready.push(next);
      }
    }
    if (ordered.size() < changes_.size()) fail_cycle(done);
    return ordered;
  }

 private:
  /// Formulas of rows' own may read other rows, so they are made apart.
  void part_own_formulas() {
    std::vector<Change> parted;
    for (Change& change : changes_) {
      std::vector<Change> own;
      if (auto* row = std::get_if<AddRow>(&change)) {
        for (GivenInRow& one : row->given) {
          if (one.formula.empty()) continue;
          own.emplace_back(Define{row->row + "." + one.column, std::exchange(one.formula, {})});
        }
      }
      parted.push_back(std::move(change));
      std::ranges::move(own, std::back_inserter(parted));
    }
    changes_ = std::move(parted);
  }

  void make(const std::string& name, std::size_t by) { makers_[name].push_back(by); }

  void note_block(std::size_t i, const AddBlock& block) {
    make(block.name, i);
    std::vector<std::string>& columns = columns_[block.name];
    for (const NewColumn& column : block.columns) {
      make(block.name + "." + column.name, i);
      columns.push_back(column.name);
    }
  }

  void note_made(std::size_t i) {
    if (const auto* set = std::get_if<Set>(&changes_[i])) {
      make(set->name, i);
    } else if (const auto* define = std::get_if<Define>(&changes_[i])) {
      make(define->name, i);
      const std::size_t point = define->name.rfind('.');
      if (point == std::string::npos) return;
      const auto block = columns_.find(define->name.substr(0, point));
      if (block != columns_.end()) block->second.push_back(define->name.substr(point + 1));
    } else if (const auto* row = std::get_if<AddRow>(&changes_[i])) {
      rows_.emplace_back(i, row);
    }
  }

  void need(std::size_t i, const std::string& name) {
    const auto made = makers_.find(name);
    if (made == makers_.end()) return;  // refused where it is read
    for (const std::size_t by : made->second) {
      if (by == i) continue;
      waits_[i].push_back(by);
      leads_to_[by].push_back(i);
    }
  }

  void need_all(std::size_t i, const std::string& formula, const std::string& block) {
    for (const std::string& name : names_in(formula, memo_)) {
      if (!block.empty()) need(i, block + "." + name);
      need(i, name);
      need_row(i, name);
    }
  }

  /// `leeks.need` is made by the row and by the column.
  void need_row(std::size_t i, const std::string& name) {
    const std::size_t point = name.rfind('.');
    if (point == std::string::npos) return;
    if (row_makers_.empty()) {
      for (const auto& [by, row] : rows_) row_makers_.emplace(row->row, std::pair(by, row->block));
    }
    const auto [from, to] = row_makers_.equal_range(name.substr(0, point));
    for (auto row = from; row != to; ++row) {
      const auto& [by, block] = row->second;
      const std::vector<std::string>& columns = columns_[block];
      const std::string column = name.substr(point + 1);
      if (std::ranges::find(columns, column) == columns.end()) continue;
      waits_[i].push_back(by);
      leads_to_[by].push_back(i);
      need(i, block + "." + column);
    }
  }

  void note_needs(std::size_t i) {
    if (const auto* define = std::get_if<Define>(&changes_[i])) {
      const std::size_t point = define->name.rfind('.');
      const std::string front = point == std::string::npos ? "" : define->name.substr(0, point);
      const bool column = columns_.contains(front);
      if (column) need(i, front);
      need_row(i, define->name);
      need_all(i, define->formula, column ? front : "");
    } else if (const auto* block = std::get_if<AddBlock>(&changes_[i])) {
      for (const NewColumn& column : block->columns) need_all(i, column.formula, block->name);
    } else if (const auto* row = std::get_if<AddRow>(&changes_[i])) {
      need(i, row->block);
    } else if (const auto* instead = std::get_if<PutOverride>(&changes_[i])) {
      need(i, instead->name);
      need_row(i, instead->name);
    }
  }

  [[nodiscard]] static std::string name_of(const Change& change) {
    if (const auto* define = std::get_if<Define>(&change)) return define->name;
    if (const auto* block = std::get_if<AddBlock>(&change)) return block->name;
    if (const auto* row = std::get_if<AddRow>(&change)) return row->row;
    if (const auto* set = std::get_if<Set>(&change)) return set->name;
    return "a change";
  }

  [[noreturn]] void fail_cycle(const std::vector<bool>& done) const {
    std::vector<std::size_t> chain;
    std::size_t at = 0;
    while (done[at]) ++at;
    while (std::ranges::find(chain, at) == chain.end()) {
      chain.push_back(at);
      at = *std::ranges::find_if(waits_[at], [&](std::size_t by) { return !done[by]; });
    }
    std::string links;
    for (auto link = std::ranges::find(chain, at); link != chain.end(); ++link) {
      links += name_of(changes_[*link]) + " reads ";
    }
    Place place;
    place.cell = name_of(changes_[at]);
    fail("sheet.cycle", "a cell cannot depend on itself: " + excerpt(links + place.cell, 400), {},
         place);
  }

  std::vector<Change> changes_;
  UnitMemo memo_;
  std::unordered_map<std::string, std::vector<std::size_t>> makers_;
  std::unordered_map<std::string, std::vector<std::string>> columns_;
  std::vector<std::pair<std::size_t, const AddRow*>> rows_;
  std::unordered_multimap<std::string, std::pair<std::size_t, std::string>> row_makers_;
  std::vector<std::vector<std::size_t>> waits_;
  std::vector<std::vector<std::size_t>> leads_to_;
};

std::vector<Cell> cells_by_name(const SheetState& state) {
  std::vector<Cell> cells;
  for (Cell cell = 0; cell < state.cells(); ++cell) {
    if (state.exists(cell)) cells.push_back(cell);
  }
  std::ranges::sort(cells, {}, [&](Cell cell) { return state.names.name(cell); });
  return cells;
}

std::vector<const RowBlock*> blocks_by_name(const SheetState& state) {
  std::vector<const RowBlock*> blocks;
  for (std::size_t i = 0; i < state.blocks.size(); ++i) {
    if (state.blocks.has(i)) blocks.push_back(&state.blocks.at(i));
  }
  std::ranges::sort(blocks, {}, &RowBlock::name);
  return blocks;
}

void add_cells(const SheetState& state, const std::vector<Cell>& cells,
               std::vector<Change>& changes) {
  for (const Cell cell : cells) {
    const ContentKind kind = state.contents.kind(cell);
    if (state.blocks.home(cell)) continue;
    const std::string name(state.names.name(cell));
    if (kind == ContentKind::given) {
      changes.emplace_back(Set{name, state.contents.given(cell), state.contents.source(cell)});
    } else if (kind == ContentKind::formula) {
      changes.emplace_back(Define{name, state.formula_text(cell)});
    }
  }
}

GivenInRow given_in_row(const SheetState& state, const std::string& column, Cell cell) {
  if (state.contents.kind(cell) == ContentKind::formula) {
    return {column, std::nullopt, {}, state.formula_text(cell)};
  }
  return {column, state.contents.given(cell), state.contents.source(cell)};
}

void add_row(const SheetState& state, const RowBlock& block, const Row& row,
             std::vector<Change>& changes) {
  AddRow added{block.name, row.name, {}};
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    if (block.columns[i].formula) continue;
    added.given.push_back(given_in_row(state, block.columns[i].name, row.cells[i]));
  }
  changes.emplace_back(std::move(added));
}

void add_blocks(const SheetState& state, std::vector<Change>& changes) {
  for (const RowBlock* one : blocks_by_name(state)) {
    const RowBlock& block = *one;
    AddBlock added{block.name, {}};
    for (const Column& column : block.columns) {
      if (!column.formula) added.columns.push_back({column.name, column.type});
    }
    changes.emplace_back(std::move(added));
    for (const Column& column : block.columns) {
      if (!column.formula) continue;
      changes.emplace_back(
          Define{block.name + "." + column.name, state.column_text(block, column)});
    }
    for (const Row& row : block.rows) add_row(state, block, row, changes);
  }
}

}  // namespace

std::vector<Change> in_buildable_order(std::vector<Change> changes) {
  return BuildOrder(std::move(changes)).ordered();
}

std::vector<Change> changes_of(const SheetState& state) {
  std::vector<Change> changes;
  const std::vector<Cell> cells = cells_by_name(state);
  add_cells(state, cells, changes);
  add_blocks(state, changes);
  for (const Cell cell : cells) {
    if (state.contents.is_overridden(cell)) {
      changes.emplace_back(
          PutOverride{std::string(state.names.name(cell)), state.contents.instead(cell)});
    }
  }
  return in_buildable_order(std::move(changes));
}

}  // namespace scalepan
