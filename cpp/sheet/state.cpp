#include "sheet/state.hpp"

#include <algorithm>
#include <utility>

namespace scalepan {

namespace {

constexpr std::size_t few_touched = 1024;

}  // namespace

ValueType SheetState::type(Cell cell) const {
  switch (contents.kind(cell)) {
    case ContentKind::given:
      return contents.given(cell).type;
    case ContentKind::total: {
      const Home home = totals[contents.total(cell)].home;
      return blocks.at(home.block).columns[home.column].type;
    }
    default:
      return contents.programme(cell).type;
  }
}

std::string SheetState::formula_text(Cell cell) const {
  if (contents.kind(cell) != ContentKind::formula) return {};
  const Cell* inputs = uses.inputs_of(cell);
  return text_of(contents.programme(cell),
                 [&](std::size_t input) { return name_in_formula(inputs[input]); });
}

std::string SheetState::name_in_formula(Cell cell) const {
  if (contents.kind(cell) != ContentKind::total) return std::string(names.name(cell));
  return column_name(totals[contents.total(cell)].home);
}

std::string SheetState::column_text(const RowBlock& block, const Column& column) const {
  if (!column.formula) return {};
  return text_of(*column.formula->programme, [&](std::size_t input) {
    const Cell cell = column.formula->inputs[input];
    return cell >= first_column ? block.columns[cell - first_column].name : name_in_formula(cell);
  });
}

std::string SheetState::column_name(Home home) const {
  const RowBlock& block = blocks.at(home.block);
  return block.name + "." + block.columns[home.column].name;
}

Content SheetState::content(Cell cell) const {
  Content content;
  content.kind = contents.kind(cell);
  if (content.kind == ContentKind::given) {
    content.given = contents.given(cell);
    content.source = contents.source(cell);
  } else if (content.kind == ContentKind::formula) {
    content.formula.programme = contents.shared_programme(cell);
    const auto inputs = uses.read_by(cell);
    content.formula.inputs.assign(inputs.begin(), inputs.end());
  } else if (content.kind == ContentKind::total) {
    content.total = contents.total(cell);
  }
  if (contents.is_overridden(cell)) content.instead = contents.instead(cell);
  return content;
}

Cell SheetState::take_number() {
  if (!free_.empty()) {
    const Cell cell = free_.back();
    free_.pop_back();
    return cell;
  }
  const auto cell = static_cast<Cell>(records.size());
  records.emplace_back();
  figures.resize(records.size());
  return cell;
}

void SheetState::reserve(std::size_t more) {
  if (cells() + more <= room_) return;
  room_ = std::max(cells() + more, room_ + room_ / 2);
  names.reserve(room_);
  records.reserve(room_);
  figures.reserve(room_);
}

std::size_t SheetState::bytes() const {
  return names.bytes() + records.capacity() * sizeof(CellRecord) + uses.bytes() + figures.bytes() +
         due.bytes();
}

void SheetState::take_number_again(Cell cell) {
  std::vector<Cell>& from = std::ranges::find(dropped_, cell) == dropped_.end() ? free_ : dropped_;
  from.erase(std::find(from.rbegin(), from.rend(), cell).base() - 1);
}

void SheetState::fill(Cell cell, Content content) {
  touch(cell);
  if (content.kind == ContentKind::formula) {
    uses.read(cell, content.formula.inputs);
    contents.put_formula(cell, std::move(content.formula.programme));
  } else {
    uses.read(cell, {});
    if (content.kind == ContentKind::given) {
      contents.put_given(cell, std::move(content.given), std::move(content.source));
    } else {
      contents.put_total(cell, content.total);
      ColumnTotal& total = totals[content.total];
      total.stale = true;
      for (const Row& row : blocks.at(total.home.block).rows) {
        uses.read_more(cell, row.cells[total.home.column]);
      }
    }
  }
  if (content.instead || contents.is_overridden(cell)) {
    contents.put_override(cell, std::move(content.instead));
  }
}

Cell SheetState::create(std::string_view name, Content content) {
  const Cell cell = take_number();
  names.put(cell, name);
  fill(cell, std::move(content));
  record_new(cell);
  return cell;
}

void SheetState::record_new(Cell cell) {
  if (!recorded_.empty()) {
    if (auto* last = std::get_if<ForgetCells>(&recorded_.back())) {
      last->cells.push_back(cell);
      return;
    }
  }
  recorded_.emplace_back(ForgetCells{{cell}});
}

void SheetState::put_given(Cell cell, GivenValue given) {
  touch(cell);
  auto before = std::make_unique<GivenValue>(contents.swap_given(cell, std::move(given)));
  recorded_.emplace_back(SwapGiven{cell, std::move(before)});
}

void SheetState::forget(Cell cell) {
  recorded_.emplace_back(
      RecallCell{cell, std::string(names.name(cell)), std::make_unique<Content>(content(cell))});
  if (contents.kind(cell) == ContentKind::total) {
    const Home home = totals[contents.total(cell)].home;
    for (const Row& row : blocks.at(home.block).rows) {
      uses.read_less(cell, row.cells[home.column]);
    }
  }
  uses.read(cell, {});
  contents.clear(cell);
  names.drop(cell);
  dropped_.push_back(cell);
}

void SheetState::put(Cell cell, Content content) {
  recorded_.emplace_back(PutContent{cell, std::make_unique<Content>(this->content(cell))});
  fill(cell, std::move(content));
}

void SheetState::rename(Cell cell, std::string name) {
  recorded_.emplace_back(RenameCell{cell, std::string(names.name(cell))});
  names.drop(cell);
  names.put(cell, name);
}

void SheetState::put_block(std::size_t block, std::unique_ptr<RowBlock> rows) {
  if (rows == nullptr) {
    recorded_.emplace_back(PutBlock{block, std::make_unique<RowBlock>(blocks.drop(block))});
  } else {
    blocks.put(block, std::move(*rows));
    recorded_.emplace_back(PutBlock{block, nullptr});
  }
}

void SheetState::rename_block(std::size_t block, std::string name) {
  recorded_.emplace_back(RenameBlock{block, blocks.at(block).name});
  blocks.rename(block, name);
}

void SheetState::put_column(std::size_t block, std::size_t column, std::unique_ptr<Column> with) {
  std::vector<Column>& columns = blocks.at(block).columns;
  std::unique_ptr<Column> before;
  if (column < columns.size()) before = std::make_unique<Column>(std::move(columns[column]));
  if (with != nullptr && with->total != no_cell) {
    totals[contents.total(with->total)].home = {static_cast<std::uint32_t>(block),
                                                static_cast<std::uint32_t>(column)};
  }
  if (with == nullptr) {
    columns.pop_back();
  } else if (before == nullptr) {
    columns.push_back(std::move(*with));
  } else {
    columns[column] = std::move(*with);
  }
  recorded_.emplace_back(PutColumn{block, column, std::move(before)});
}

void SheetState::join_total(const Column& column, Cell cell) {
  if (column.total == no_cell) return;
  uses.read_more(column.total, cell);
  touch(column.total);
}

void SheetState::leave_total(const Column& column, Cell cell) {
  if (column.total == no_cell) return;
  uses.read_less(column.total, cell);
  totals[contents.total(column.total)].stale = true;
  touch(column.total);
}

void SheetState::put_row(std::size_t block, std::size_t at, Row row) {
  RowBlock& rows = blocks.at(block);
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    blocks.put_home(row.cells[i],
                    {static_cast<std::uint32_t>(block), static_cast<std::uint32_t>(i)});
    join_total(rows.columns[i], row.cells[i]);
  }
  rows.rows.insert(rows.rows.begin() + static_cast<std::ptrdiff_t>(at), std::move(row));
  recorded_.emplace_back(TakeRow{block, at});
}

Row SheetState::take_row(std::size_t block, std::size_t at) {
  RowBlock& rows = blocks.at(block);
  Row row = std::move(rows.rows[at]);
  rows.rows.erase(rows.rows.begin() + static_cast<std::ptrdiff_t>(at));
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    leave_total(rows.columns[i], row.cells[i]);
    blocks.clear_home(row.cells[i]);
  }
  recorded_.emplace_back(PutRow{block, at, std::make_unique<Row>(row)});
  return row;
}

void SheetState::move_row(std::size_t block, std::size_t from, std::size_t to) {
  const auto rows = blocks.at(block).rows.begin();
  const auto at = [&](std::size_t i) { return rows + static_cast<std::ptrdiff_t>(i); };
  if (from < to) {
    std::rotate(at(from), at(from + 1), at(to + 1));
  } else {
    std::rotate(at(to), at(from), at(from + 1));
  }
  recorded_.emplace_back(MoveRowTo{block, to, from});
}

void SheetState::rename_row(std::size_t block, std::size_t at, std::string name) {
  std::string& known = blocks.at(block).rows[at].name;
  recorded_.emplace_back(RenameRow{block, at, std::exchange(known, std::move(name))});
}

void SheetState::play(EditStep& step) {
  if (auto* forgotten = std::get_if<ForgetCells>(&step)) {
    std::for_each(forgotten->cells.rbegin(), forgotten->cells.rend(),
                  [this](Cell cell) { forget(cell); });
  } else if (auto* given = std::get_if<SwapGiven>(&step)) {
    put_given(given->cell, std::move(*given->given));
  } else if (auto* recall = std::get_if<RecallCell>(&step)) {
    take_number_again(recall->cell);
    names.put(recall->cell, recall->name);
    fill(recall->cell, std::move(*recall->content));
    record_new(recall->cell);
  } else if (auto* content = std::get_if<PutContent>(&step)) {
    put(content->cell, std::move(*content->content));
  } else if (auto* name = std::get_if<RenameCell>(&step)) {
    rename(name->cell, std::move(name->name));
  } else if (auto* block = std::get_if<PutBlock>(&step)) {
    put_block(block->block, std::move(block->rows));
  } else if (auto* block_name = std::get_if<RenameBlock>(&step)) {
    rename_block(block_name->block, std::move(block_name->name));
  } else if (auto* column = std::get_if<PutColumn>(&step)) {
    put_column(column->block, column->column, std::move(column->with));
  } else if (auto* row = std::get_if<PutRow>(&step)) {
    put_row(row->block, row->at, std::move(*row->row));
  } else if (auto* taken = std::get_if<TakeRow>(&step)) {
    take_row(taken->block, taken->at);
  } else if (auto* moved = std::get_if<MoveRowTo>(&step)) {
    move_row(moved->block, moved->from, moved->to);
  } else if (auto* row_name = std::get_if<RenameRow>(&step)) {
    rename_row(row_name->block, row_name->at, std::move(row_name->name));
  }
}

void SheetState::play_back(EditSteps steps) {
  for (auto step = steps.rbegin(); step != steps.rend(); ++step) play(*step);
}

EditSteps SheetState::take_recorded() {
  for (EditStep& step : recorded_) {
    if (auto* forgotten = std::get_if<ForgetCells>(&step)) forgotten->cells.shrink_to_fit();
  }
  return std::exchange(recorded_, {});
}

void SheetState::accept() {
  for (const Cell cell : touched_) {
    if (exists(cell)) due.add(cell, uses.height(cell));
  }
  refuse();
}

void SheetState::refuse() {
  // Little is touched again and again, and much once.
  if (touched_.size() > few_touched) touched_ = {};
  touched_.clear();
  for (const Cell cell : dropped_) {
    figures.forget(cell);
    free_.push_back(cell);
  }
  dropped_.clear();
}

Total sum_of_rows(const SheetState& state, const Figures& figures, Home home) {
  Total sum;
  for (const Row& row : state.blocks.at(home.block).rows) {
    sum.replace({}, heard_of(figures, row.cells[home.column]));
  }
  return sum;
}

}  // namespace scalepan
