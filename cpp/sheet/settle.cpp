#include "sheet/settle.hpp"

#include <utility>

namespace scalepan {

Error error_of(const SheetState& state, Cell cell) {
  const auto& [error, origin] = state.figures.held(cell);
  const bool formula = state.contents.kind(origin) == ContentKind::formula;
  const Cell* inputs = state.uses.inputs_of(origin);
  const auto name_of_input = [&](std::size_t input) {
    return state.name_in_formula(inputs[input]);
  };
  return placed_in_formula(*error, state.names.name(origin),
                           formula ? &state.contents.programme(origin) : nullptr, name_of_input);
}

void Settler::settle() {
  ran_.clear();
  while (!state_.due.empty()) work_out(state_.due.take());
}

void Settler::work_out(Cell cell) {
  const Contents& contents = state_.contents;
  if (contents.runs(cell)) [[likely]] {
    ran_.push_back(cell);
    evaluator_.run_formula(cell, contents.programme(cell), state_.uses.inputs_of(cell));
  } else if (contents.is_overridden(cell)) {
    keep(cell, contents.instead(cell).value.value);
  } else if (contents.kind(cell) == ContentKind::given) {
    keep(cell, contents.given(cell).value);
  } else if (contents.kind(cell) == ContentKind::total) {
    ran_.push_back(cell);
    run_total(cell);
  }
}

void Settler::run_total(Cell cell) {
  ColumnTotal& total = state_.totals[state_.contents.total(cell)];
  if (total.stale) {
    total.sum = sum_of_rows(state_, state_.figures, total.home);
    total.stale = false;
  }
  evaluator_.run_total(cell, total.sum);
}

void Settler::keep_number(Cell cell, Rational number) {
  Figures& figures = state_.figures;
  if (!figures.is_number(cell)) [[unlikely]] {
    const Heard before = heard_of(figures, cell);
    figures.keep_number(cell, std::move(number));
    tell_readers(cell, [&](Total& sum) { sum.replace(before, heard_of(figures, cell)); });
  } else if (figures.swap_number(cell, number)) {
    const Rational& before = number;
    tell_readers(cell, [&](Total& sum) { sum.replace(before, figures.number(cell)); });
  }
}

void Settler::keep(Cell cell, const Value& value) {
  if (const auto* number = std::get_if<Rational>(&value)) {
    keep_number(cell, *number);
    return;
  }
  const Heard before = heard_of(state_.figures, cell);
  if (!state_.figures.keep(cell, value)) return;
  tell_readers(cell, [&](Total& sum) { sum.replace(before, heard_of(state_.figures, cell)); });
}

void Settler::hold(Cell cell, const HeldError& held) {
  const Heard before = heard_of(state_.figures, cell);
  if (!state_.figures.hold(cell, held)) return;
  tell_readers(cell, [&](Total& sum) { sum.replace(before, heard_of(state_.figures, cell)); });
}

void Settler::hold_new(Cell cell, const Error& error) {
  hold(cell, {std::make_shared<const Error>(error), cell});
}

/// The figure of a cell is another now: who reads it is due, and totals hear of it.
template <typename Replace>
void Settler::tell_readers(Cell cell, Replace replace) {
  const Uses& uses = state_.uses;
  for (Uses::Entry at = uses.first_reader(cell); at != Uses::no_entry; at = uses.next_reader(at)) {
    const Cell reader = uses.reader(at);
    if (state_.contents.kind(reader) == ContentKind::total) [[unlikely]] {
      ColumnTotal& total = state_.totals[state_.contents.total(reader)];
      if (!total.stale) replace(total.sum);
    }
    state_.due.add(reader, uses.height(reader));
  }
}

}  // namespace scalepan
