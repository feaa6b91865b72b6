#include "sheet/settle.hpp"

#include <utility>

namespace scalepan {

namespace {

/// Offsets in a shape, which has one letter for each name, become offsets in the text.
std::size_t offset_in_text(const SheetState& state, Cell cell, std::size_t offset) {
  const Programme& programme = state.contents.programme(cell);
  const Cell* inputs = state.uses.inputs_of(cell);
  std::size_t in_text = offset;
  std::size_t occurrence = 0;
  for (std::size_t at = 0; at < offset && at < programme.shape.size(); ++at) {
    if (programme.shape[at] != '\1') continue;
    in_text += state.names.name(inputs[programme.occurrences[occurrence++]]).size() - 1;
  }
  return in_text;
}

}  // namespace

Error placed_in_cell(const SheetState& state, Cell cell, const Error& error) {
  Place place;
  place.cell = state.names.name(cell);
  if (error.place().offset != Place::no_offset) {
    place.offset = offset_in_text(state, cell, error.place().offset);
    place.column = static_cast<int>(place.offset) + 1;
  }
  return error.at(place);
}

std::vector<Cell> Settler::settle(SheetState& state) {
  state_ = &state;
  ran_.clear();
  while (!state.due.empty()) work_out(state.due.take());
  return std::exchange(ran_, {});
}

void Settler::work_out(Cell cell) {
  const Contents& contents = state_->contents;
  if (contents.runs(cell)) [[likely]] {
    ran_.push_back(cell);
    run_formula(cell);
  } else if (contents.is_overridden(cell)) {
    keep(cell, contents.instead(cell).value.value);
  } else if (contents.kind(cell) == ContentKind::given) {
    keep(cell, contents.given(cell).value);
  } else if (contents.kind(cell) == ContentKind::total) {
    ran_.push_back(cell);
    run_total(cell);
  }
}

void Settler::run_formula(Cell cell) {
  const Programme& programme = state_->contents.programme(cell);
  if (!programme.numeric || !state_->figures.all_plain()) {
    run_on_figures(cell, programme);
    return;
  }
  try {
    keep_number(cell, run(programme,
                          {state_->uses.inputs_of(cell), state_->figures.numbers(), nullptr},
                          space_));
  } catch (const Error& error) {
    hold_new(cell, error);
  }
}

/// Where some figures are no single numbers, or the programme asks for other things.
void Settler::run_on_figures(Cell cell, const Programme& programme) {
  const Cell* inputs = state_->uses.inputs_of(cell);
  const Figures& figures = state_->figures;
  const auto value_of_input = [&](std::size_t input) {
    const Cell from = inputs[input];
    if (figures.condition(from) == Condition::failed) throw InputFailed{from};
    return figures.value(from);
  };
  try {
    keep(cell, run_on_values(programme, value_of_input, space_));
  } catch (const InputFailed& input) {
    const HeldError held = figures.held(input.cell);
    hold(cell, held);
  } catch (const Error& error) {
    hold_new(cell, error);
  }
}

void Settler::run_total(Cell cell) {
  ColumnTotal& total = state_->totals[state_->contents.total(cell)];
  if (total.stale) {
    total.sum.clear();
    for (const Row& row : state_->blocks.at(total.home.block).rows) {
      total.sum.replace({}, heard(row.cells[total.home.column]));
    }
    total.stale = false;
  }
  try {
    keep(cell, total.sum.value(state_->column_name(total.home)));
  } catch (const Error& error) {
    Place place;
    place.cell = state_->names.name(cell);
    hold(cell, {std::make_shared<const Error>(error.at(place)), cell});
  }
}

void Settler::keep_number(Cell cell, const Rational& number) {
  Figures& figures = state_->figures;
  if (figures.is_number(cell)) [[likely]] {
    const Rational before = figures.number(cell);
    if (figures.keep_number(cell, number)) tell_number(cell, before, number);
  } else {
    const Heard before = heard(cell);
    figures.keep_number(cell, number);
    tell(cell, before);
  }
}

void Settler::keep(Cell cell, const Value& value) {
  if (const auto* number = std::get_if<Rational>(&value)) {
    keep_number(cell, *number);
    return;
  }
  const Heard before = heard(cell);
  if (state_->figures.keep(cell, value)) tell(cell, before);
}

void Settler::hold(Cell cell, const HeldError& held) {
  const Heard before = heard(cell);
  if (state_->figures.hold(cell, held)) tell(cell, before);
}

void Settler::hold_new(Cell cell, const Error& error) {
  hold(cell, {std::make_shared<const Error>(placed_in_cell(*state_, cell, error)), cell});
}

Heard Settler::heard(Cell cell) const {
  const Condition condition = state_->figures.condition(cell);
  if (condition != Condition::number && condition != Condition::interval) return {condition, {}};
  return {condition, state_->figures.value(cell)};
}

/// The figure of a cell is another now: who reads it is due, and totals hear of it.
template <typename Replace>
void Settler::tell_readers(Cell cell, Replace replace) {
  const Uses& uses = state_->uses;
  for (Uses::Entry at = uses.first_reader(cell); at != Uses::no_entry; at = uses.next_reader(at)) {
    const Cell reader = uses.reader(at);
    if (state_->contents.kind(reader) == ContentKind::total) [[unlikely]] {
      ColumnTotal& total = state_->totals[state_->contents.total(reader)];
      if (!total.stale) replace(total.sum);
    }
    state_->due.add(reader, uses.height(reader));
  }
}

void Settler::tell_number(Cell cell, const Rational& before, const Rational& after) {
  tell_readers(cell, [&](Total& sum) { sum.replace(before, after); });
}

void Settler::tell(Cell cell, const Heard& before) {
  const Heard after = heard(cell);
  tell_readers(cell, [&](Total& sum) { sum.replace(before, after); });
}

}  // namespace scalepan
