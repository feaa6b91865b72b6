#include "sheet/path.hpp"

#include <algorithm>
#include <memory>
#include <unordered_map>
#include <utility>

#include "sheet/settle.hpp"

namespace scalepan {

namespace {

std::vector<Cell> read_by(const SheetState& state, Cell cell) {
  if (state.contents.kind(cell) != ContentKind::total) {
    const auto inputs = state.uses.read_by(cell);
    return {inputs.begin(), inputs.end()};
  }
  const Home home = state.totals[state.contents.total(cell)].home;
  std::vector<Cell> rows;
  for (const Row& row : state.blocks.at(home.block).rows) rows.push_back(row.cells[home.column]);
  return rows;
}

/// All that follows from the input. Overridden cells follow from nothing.
std::vector<bool> followers_of(const SheetState& state, Cell input) {
  std::vector<bool> follows(state.cells());
  std::vector<Cell> open{input};
  while (!open.empty()) {
    const Cell at = open.back();
    open.pop_back();
    for (const Cell reader : state.uses.readers_of(at)) {
      if (follows[reader] || state.contents.is_overridden(reader)) continue;
      follows[reader] = true;
      open.push_back(reader);
    }
  }
  return follows;
}

std::vector<Cell> cells_between(const SheetState& state, Cell input,
                                const std::vector<Cell>& outputs) {
  const std::vector<bool> follows = followers_of(state, input);
  std::vector<bool> seen(state.cells());
  std::vector<Cell> between;
  std::vector<Cell> open = outputs;
  while (!open.empty()) {
    const Cell at = open.back();
    open.pop_back();
    if (seen[at] || !follows[at]) continue;
    seen[at] = true;
    between.push_back(at);
    for (const Cell from : read_by(state, at)) open.push_back(from);
  }
  std::ranges::sort(between, {},
                    [&](Cell cell) { return std::pair(state.uses.height(cell), cell); });
  return between;
}

class PathMaker {
 public:
  explicit PathMaker(const SheetState& state) : state_(state) {}

  Path make(Cell input, const std::vector<Cell>& outputs) {
    path_.input_name = state_.names.name(input);
    path_.input_type = state_.type(input);
    place_of(input);
    for (const Cell cell : cells_between(state_, input, outputs)) add_step(cell);
    for (const Cell output : outputs) {
      path_.outputs.push_back(place_of(output));
      path_.output_types.push_back(state_.type(output));
      path_.output_names.emplace_back(state_.names.name(output));
    }
    return std::move(path_);
  }

 private:
  /// A cell that has no place yet lies beside the way: its figure stands.
  Cell place_of(Cell cell) {
    const auto [known, fresh] = places_.emplace(cell, static_cast<Cell>(places_.size()));
    if (fresh) {
      path_.places = places_.size();
      path_.figures.resize(path_.places);
      copy_figure(cell, known->second);
    }
    return known->second;
  }

  void copy_figure(Cell cell, Cell place) {
    if (state_.figures.condition(cell) == Condition::failed) {
      path_.figures.hold(place, {std::make_shared<const Error>(error_of(state_, cell)), place});
    } else {
      path_.figures.keep(place, state_.figures.value(cell));
    }
  }

  void add_step(Cell cell) {
    PathStep step;
    step.name = state_.names.name(cell);
    if (state_.contents.kind(cell) == ContentKind::total) {
      add_rows(cell, step);
    } else {
      step.programme = state_.contents.shared_programme(cell);
      for (const Cell input : state_.uses.read_by(cell)) {
        step.inputs.push_back(place_of(input));
        step.input_names.push_back(state_.name_in_formula(input));
      }
    }
    step.place = place_of(cell);
    on_the_way_.push_back(step.place);
    path_.steps.push_back(std::move(step));
  }

  void add_rows(Cell cell, PathStep& step) {
    for (const Cell row : read_by(state_, cell)) {
      const auto known = places_.find(row);
      const bool on_the_way =
          known != places_.end() &&
          (known->second == Path::input || std::ranges::binary_search(on_the_way_, known->second));
      if (on_the_way) {
        step.inputs.push_back(known->second);
      } else {
        step.beside.replace({}, heard_of(state_.figures, row));
      }
    }
  }

  const SheetState& state_;
  Path path_;
  std::unordered_map<Cell, Cell> places_;
  std::vector<Cell> on_the_way_;  // places, rising
};

Cell known(const SheetState& state, std::string_view name) {
  const Cell cell = state.names.find(name);
  if (cell != no_cell) return cell;
  fail("sheet.unknown", "no cell is called \"" + excerpt(name) + "\"");
}

}  // namespace

Path path_between(const SheetState& state, std::string_view input,
                  const std::vector<std::string>& outputs) {
  const Cell from = known(state, input);
  if (state.contents.kind(from) != ContentKind::given && !state.contents.is_overridden(from)) {
    fail("sheet.formula",
         std::string(input) + " is no input: it has the formula " +
             excerpt(state.formula_text(from)),
         "choose a cell that is given or overridden");
  }
  if (state.type(from).kind != ValueKind::quantity) {
    fail("sheet.type", std::string(input) + " is " + state.type(from).name() +
                           ", and only an amount or a number can be varied");
  }
  std::vector<Cell> to;
  for (const std::string& output : outputs) to.push_back(known(state, output));
  return PathMaker(state).make(from, to);
}

}  // namespace scalepan
