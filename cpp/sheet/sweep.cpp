#include "sheet/sweep.hpp"

#include <utility>

#include "sheet/stepped.hpp"

namespace scalepan {

PathRunner::PathRunner(Path path) : path_(std::move(path)), evaluator_(path_.figures, *this) {}

void PathRunner::run(const Rational& input) {
  path_.figures.keep_number(Path::input, input);
  for (const PathStep& step : path_.steps) {
    step_ = &step;
    if (step.programme == nullptr) {
      run_total(step);
    } else {
      evaluator_.run_formula(step.place, *step.programme, step.inputs.data());
    }
  }
}

void PathRunner::run_total(const PathStep& step) {
  Total sum = step.beside;
  for (const Cell row : step.inputs) sum.replace({}, heard_of(path_.figures, row));
  evaluator_.run_total(step.place, sum);
}

void PathRunner::hold_new(Cell place, const Error& error) {
  const Error placed =
      placed_in_formula(error, step_->name, step_->programme.get(),
                        [this](std::size_t input) { return step_->input_names[input]; });
  hold(place, {std::make_shared<const Error>(placed), place});
}

Rational SweptCell::number(std::size_t point) const {
  return words_ ? figure_at(*words_, point) : numbers_[point];
}

std::shared_ptr<const WordColumn> SweptCell::words() const {
  if (words_ || !odd_.empty()) return words_;
  auto column = column_of(numbers_);
  if (!column) return nullptr;
  return std::make_shared<const WordColumn>(std::move(*column));
}

namespace {

constexpr std::size_t points_a_pulse = 512;

/// None where they are not evenly spaced.
std::optional<EvenPoints> even(std::span<const Rational> points) {
  if (points.size() < 2) return std::nullopt;
  const Rational step = points[1] - points[0];
  if (step.is_zero()) return std::nullopt;
  for (std::size_t i = 2; i < points.size(); ++i) {
    if (!(points[i] - points[i - 1] == step)) return std::nullopt;
  }
  return EvenPoints{points[0], step, points.size()};
}

std::vector<SweptCell> cells_of(const Path& path) {
  std::vector<SweptCell> cells;
  for (std::size_t i = 0; i < path.outputs.size(); ++i) {
    cells.emplace_back(path.output_names[i], path.output_types[i]);
  }
  return cells;
}

/// Why not, or empty where all cells have their words.
std::string fill_words(const Path& path, const std::optional<EvenPoints>& points,
                       std::vector<SweptCell>& cells) {
  if (!points) return "the values are not evenly spaced";
  const SteppedPath stepped = stepped_path(path, *points);
  if (!stepped.why_not.empty()) return stepped.why_not;
  std::vector<WordColumn> columns;
  for (const Stepped& output : stepped.outputs) {
    auto column = column_of(output, points->size);
    if (!column) return "its figures do not fit 64-bit words";
    columns.push_back(std::move(*column));
  }
  for (std::size_t i = 0; i < cells.size(); ++i) cells[i].put_words(std::move(columns[i]));
  return {};
}

void put_point(const Figures& figures, Cell place, std::size_t point, SweptCell& cell) {
  if (figures.is_number(place)) {
    cell.put_number(point, figures.number(place));
  } else if (figures.condition(place) == Condition::failed) {
    cell.put_odd(point, {{}, figures.held(place).error});
  } else {
    cell.put_odd(point, {figures.value(place), nullptr});
  }
}

}  // namespace

Sweep sweep(Path path, std::span<const Rational> points, const SweepPulse& pulse) {
  Sweep swept{cells_of(path), ""};
  const std::string why_not = fill_words(path, even(points), swept.cells);
  if (why_not.empty()) {
    swept.kernel = "in machine words";
    return swept;
  }
  swept.kernel = "point by point: " + why_not;
  for (SweptCell& cell : swept.cells) cell.resize(points.size());
  PathRunner runner(std::move(path));
  for (std::size_t point = 0; point < points.size(); ++point) {
    if (point % points_a_pulse == 0) pulse(point);
    runner.run(points[point]);
    for (std::size_t i = 0; i < swept.cells.size(); ++i) {
      put_point(runner.figures(), runner.path().outputs[i], point, swept.cells[i]);
    }
  }
  return swept;
}

}  // namespace scalepan
