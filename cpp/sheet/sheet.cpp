#include "sheet/sheet.hpp"

#include <mutex>

#include "measure/nearest.hpp"
#include "sheet/changes_of.hpp"
#include "sheet/editor.hpp"
#include "sheet/why_cell.hpp"

namespace scalepan {

namespace {

constexpr std::size_t most_undone = 1000;
// So few are not worth setting room aside for.
constexpr std::size_t few_changes = 64;

Cell known(const SheetState& state, std::string_view name) {
  const Cell cell = state.names.find(name);
  if (cell != no_cell) return cell;
  fail("sheet.unknown", "no cell is called \"" + excerpt(name) + "\"",
       nearest_hint(state.names.nearest(name)));
}

const RowBlock& known_block(const SheetState& state, std::string_view name) {
  const std::size_t block = state.blocks.find(name);
  if (block != state.blocks.size()) return state.blocks.at(block);
  fail("sheet.unknown", "no rows are called \"" + excerpt(name) + "\"");
}

CellValue value_of(const SheetState& state, Cell cell) {
  if (state.figures.condition(cell) == Condition::failed) throw error_of(state, cell);
  return {state.type(cell), state.figures.value(cell)};
}

Outcome outcome_of(const SheetState& state, std::string_view name) {
  try {
    return value_of(state, known(state, name));
  } catch (const Error& error) {
    return error;
  }
}

std::vector<std::string> names_of(const SheetState& state, const std::vector<Cell>& cells) {
  std::vector<std::string> names;
  names.reserve(cells.size());
  for (const Cell cell : cells) names.emplace_back(state.names.name(cell));
  return names;
}

}  // namespace

Sheet::Sheet(std::shared_ptr<const FunctionTable> functions, ValueGuard guard)
    : state_(std::move(functions), guard) {}

/// What takes the changes back. Where one is refused, all are.
EditSteps Sheet::make(const std::vector<Change>& changes) {
  Editor editor(state_);
  if (changes.size() > few_changes) state_.reserve(changes.size());
  try {
    for (const Change& change : changes) editor.make(change);
    editor.check_retyped();
  } catch (...) {
    state_.play_back(state_.take_recorded());
    static_cast<void>(state_.take_recorded());
    state_.refuse();
    throw;
  }
  return state_.take_recorded();
}

EditSteps Sheet::play_back(EditSteps steps) {
  state_.play_back(std::move(steps));
  return state_.take_recorded();
}

void Sheet::settle() {
  state_.accept();
  settler_.settle();
}

void Sheet::remember(EditSteps steps) {
  done_.push_back(std::move(steps));
  if (done_.size() > most_undone) done_.pop_front();
}

void Sheet::apply(const std::vector<Change>& changes) {
  const std::unique_lock lock(mutex_);
  remember(make(changes));
  undone_.clear();
  ++changes_made_;
  settle();
}

void Sheet::restore(std::vector<Change> changes) { apply(in_buildable_order(std::move(changes))); }

bool Sheet::undo() {
  const std::unique_lock lock(mutex_);
  if (done_.empty()) return false;
  EditSteps steps = std::move(done_.back());
  done_.pop_back();
  undone_.push_back(play_back(std::move(steps)));
  ++changes_made_;
  settle();
  return true;
}

bool Sheet::redo() {
  const std::unique_lock lock(mutex_);
  if (undone_.empty()) return false;
  EditSteps steps = std::move(undone_.back());
  undone_.pop_back();
  remember(play_back(std::move(steps)));
  ++changes_made_;
  settle();
  return true;
}

void Sheet::keep_cells() {
  const std::unique_lock lock(mutex_);
  state_.kept_cells = static_cast<Cell>(state_.cells());
}

void Sheet::forget_past() {
  const std::unique_lock lock(mutex_);
  done_.clear();
  undone_.clear();
  changes_made_ = 0;
}

std::size_t Sheet::changes_made() const {
  const std::shared_lock lock(mutex_);
  return changes_made_;
}

CellValue Sheet::value(std::string_view name) const {
  const std::shared_lock lock(mutex_);
  return value_of(state_, known(state_, name));
}

std::string Sheet::told(std::string_view name) const {
  const std::shared_lock lock(mutex_);
  const Cell cell = known(state_, name);
  const CellValue value = value_of(state_, cell);
  return figure_text(value.value, value.type);
}

std::string Sheet::formula(std::string_view name) const {
  const std::shared_lock lock(mutex_);
  return state_.formula_text(known(state_, name));
}

bool Sheet::has(std::string_view name) const {
  const std::shared_lock lock(mutex_);
  return state_.names.find(name) != no_cell;
}

bool Sheet::has_figure(std::string_view name) const {
  const std::shared_lock lock(mutex_);
  return state_.figures.condition(known(state_, name)) != Condition::failed;
}

std::vector<std::string> Sheet::cells() const {
  const std::shared_lock lock(mutex_);
  std::vector<std::string> names;
  for (Cell cell = 0; cell < state_.cells(); ++cell) {
    const ContentKind kind = state_.contents.kind(cell);
    if (kind == ContentKind::given || kind == ContentKind::formula) {
      names.emplace_back(state_.names.name(cell));
    }
  }
  return names;
}

std::vector<std::string> Sheet::rows(std::string_view block) const {
  const std::shared_lock lock(mutex_);
  std::vector<std::string> names;
  for (const Row& row : known_block(state_, block).rows) names.push_back(row.name);
  return names;
}

std::vector<std::string> Sheet::columns(std::string_view block) const {
  const std::shared_lock lock(mutex_);
  std::vector<std::string> names;
  for (const Column& column : known_block(state_, block).columns) names.push_back(column.name);
  return names;
}

std::vector<std::string> Sheet::blocks() const {
  const std::shared_lock lock(mutex_);
  std::vector<std::string> names;
  for (std::size_t i = 0; i < state_.blocks.size(); ++i) {
    if (state_.blocks.has(i)) names.push_back(state_.blocks.at(i).name);
  }
  return names;
}

std::vector<std::string> Sheet::readers(std::string_view name) const {
  const std::shared_lock lock(mutex_);
  return names_of(state_, state_.uses.readers_of(known(state_, name)));
}

Why Sheet::why(std::string_view name) const {
  const std::shared_lock lock(mutex_);
  return why_cell(state_, known(state_, name));
}

std::vector<std::string> Sheet::ran() const {
  const std::shared_lock lock(mutex_);
  return names_of(state_, settler_.ran());
}

std::vector<Change> Sheet::changes() const {
  const std::shared_lock lock(mutex_);
  return changes_of(state_);
}

std::vector<Outcome> Sheet::values_with(const std::vector<Change>& changes,
                                        const std::vector<std::string>& names) {
  const std::unique_lock lock(mutex_);
  std::vector<Cell> ran_before = settler_.ran();
  EditSteps steps = make(changes);
  settle();
  std::vector<Outcome> outcomes;
  for (const std::string& name : names) outcomes.push_back(outcome_of(state_, name));
  static_cast<void>(play_back(std::move(steps)));
  settle();
  settler_.put_ran(std::move(ran_before));
  return outcomes;
}

namespace {

/// In the coherent unit of what it is for; a bare number is of the unit that is shown in.
Rational coherent(const Quantity& quantity, std::string_view name, const ValueType& type) {
  const CellValue value = fitted({quantity_type(quantity.unit()), quantity.coherent()}, type);
  if (!value.type.alike(type)) {
    fail("sheet.dimension", std::string(name) + " is " + type.name() + ", and " + quantity.text() +
                                " is " + value.type.name());
  }
  return std::get<Rational>(value.value);
}

}  // namespace

Rational Sheet::possible(const Quantity& quantity, std::string_view input,
                         const ValueType& type) const {
  Rational number = coherent(quantity, input, type);
  if (state_.guard != nullptr) {
    const std::shared_lock lock(mutex_);
    state_.guard(input, {type, number}, state_.names);
  }
  return number;
}

Sweep Sheet::sweep(std::string_view input, const std::vector<Quantity>& values,
                   const std::vector<std::string>& outputs, const SweepPulse& pulse) const {
  const Path path = path_from(input, outputs);
  std::vector<Rational> points;
  points.reserve(values.size());
  for (const Quantity& value : values) {
    points.push_back(possible(value, input, path.input_type));
  }
  return scalepan::sweep(path, points, pulse);
}

Meetings Sheet::meetings(std::string_view input, std::string_view output, const Quantity& target,
                         const Quantity& low, const Quantity& high, const SweepPulse& pulse,
                         Aim aim) const {
  const Path path = path_from(input, {std::string(output)});
  const Rational wanted = coherent(target, output, path.output_types.front());
  const Rational from = possible(low, input, path.input_type);
  const Rational to = possible(high, input, path.input_type);
  return meetings_of(path, wanted, from, to, aim, pulse);
}

/// The sheet may change while what was taken out of it is worked with.
Path Sheet::path_from(std::string_view input, const std::vector<std::string>& outputs) const {
  const std::shared_lock lock(mutex_);
  return path_between(state_, input, outputs);
}

ValueType Sheet::type(std::string_view name) const {
  const std::shared_lock lock(mutex_);
  return state_.type(known(state_, name));
}

std::size_t Sheet::bytes() const {
  const std::shared_lock lock(mutex_);
  return state_.bytes();
}

}  // namespace scalepan
