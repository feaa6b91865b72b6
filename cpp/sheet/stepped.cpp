#include "sheet/stepped.hpp"

#include <algorithm>
#include <utility>

#include "exact/stairs.hpp"
#include "sheet/machine.hpp"
#include "sheet/numbers.hpp"

namespace scalepan {

namespace {

/// Thrown where a figure is no straight line with stairs upon it.
struct NotStepped {
  std::string reason;
};

Stepped constant(const Rational& number) { return {Rational(), number, {}}; }

Stepped scaled(const Stepped& a, const Rational& by) {
  Stepped result{a.slope * by, a.start * by, {}};
  if (by.is_zero()) return result;
  result.rises = a.rises;
  for (Rise& rise : result.rises) rise.height *= by;
  return result;
}

Stepped sum(const Stepped& a, const Stepped& b) {
  Stepped result{a.slope + b.slope, a.start + b.start, a.rises};
  result.rises.insert(result.rises.end(), b.rises.begin(), b.rises.end());
  return result;
}

/// floor(x) is -ceil(-x). Halves go away from zero, so up or down by the side the line is on.
Stepped rounded(const Instruction& instruction, const Stepped& a, const Rational& step,
                const Rational& last) {
  if (!a.is_straight()) throw NotStepped{"a figure that goes in steps is rounded again"};
  if (step.sign() <= 0) throw NotStepped{"what is rounded to is not above zero"};
  const Rational slope = a.slope / step;
  const Rational start = a.start / step;
  Stepped result;
  switch (instruction.operation) {
    case Operation::up_to_multiple:
      result.rises.push_back({step, slope, start});
      break;
    case Operation::down_to_multiple:
      result.rises.push_back({-step, -slope, -start});
      break;
    default: {
      const int first_side = start.sign();
      const int last_side = (start + slope * last).sign();
      if (first_side * last_side < 0) throw NotStepped{"a figure is rounded on both sides of zero"};
      if (first_side + last_side >= 0) {
        result.rises.push_back({-step, -slope, -(start + Rational(1, 2))});
      } else {
        result.rises.push_back({step, slope, start - Rational(1, 2)});
      }
    }
  }
  return result;
}

class SteppedDomain {
 public:
  using Value = Stepped;

  SteppedDomain(const Path& path, const std::vector<std::optional<Stepped>>& on_the_way,
                const PathStep& step, const Rational& last)
      : path_(path), on_the_way_(on_the_way), step_(step), last_(last) {}

  [[nodiscard]] Stepped operand(const Instruction& instruction) const {
    if (instruction.operand == Operand::constant) {
      return constant(step_.programme->constants[instruction.argument]);
    }
    const Cell place = step_.inputs[instruction.argument];
    if (on_the_way_[place]) return *on_the_way_[place];
    if (!path_.figures.is_number(place)) {
      throw NotStepped{step_.input_names[instruction.argument] + " is no single number"};
    }
    return constant(path_.figures.number(place));
  }

  [[nodiscard]] static Stepped one(const Instruction& instruction, const Stepped& a) {
    if (a.is_constant()) return constant(one_number(instruction, a.start));
    if (instruction.operation == Operation::negate) return scaled(a, Rational(-1));
    throw NotStepped{"a figure that moves is turned over, raised or made absolute"};
  }

  [[nodiscard]] Stepped two(const Instruction& instruction, const Stepped& a,
                            const Stepped& b) const {
    if (a.is_constant() && b.is_constant()) {
      return constant(two_numbers(instruction, a.start, b.start));
    }
    switch (instruction.operation) {
      case Operation::add:
        return sum(a, b);
      case Operation::subtract:
        return sum(a, scaled(b, Rational(-1)));
      case Operation::multiply:
        if (b.is_constant()) return scaled(a, b.start);
        if (a.is_constant()) return scaled(b, a.start);
        throw NotStepped{"two figures that move are multiplied"};
      case Operation::divide:
        if (!b.is_constant()) throw NotStepped{"what is divided by moves"};
        expect_divisor(instruction, b.start);
        return scaled(a, reciprocal(b.start));
      case Operation::up_to_multiple:
      case Operation::down_to_multiple:
      case Operation::nearest_multiple:
        if (!b.is_constant()) throw NotStepped{"what is rounded to moves"};
        return rounded(instruction, a, b.start, last_);
      default:
        throw NotStepped{"figures that move are compared"};
    }
  }

  [[nodiscard]] static bool holds(const Instruction& /*unused*/, const Stepped& flag) {
    return !flag.start.is_zero();
  }
  [[nodiscard]] static Stepped called(const Instruction& /*unused*/, const Stepped* /*unused*/) {
    return {};
  }

 private:
  const Path& path_;
  const std::vector<std::optional<Stepped>>& on_the_way_;
  const PathStep& step_;
  const Rational& last_;
};

class SteppedRunner {
 public:
  SteppedRunner(const Path& path, const EvenPoints& points)
      : path_(path), on_the_way_(path.places), last_(points.size - 1) {
    on_the_way_[Path::input] = Stepped{points.step, points.first, {}};
  }

  std::vector<Stepped> run() {
    for (const PathStep& step : path_.steps) {
      on_the_way_[step.place] = step.programme == nullptr ? total(step) : formula(step);
      if (on_the_way_[step.place]->rises.size() > most_rises)
        throw NotStepped{"it has many stairs"};
    }
    std::vector<Stepped> outputs;
    for (const Cell output : path_.outputs) outputs.push_back(figure(output));
    return outputs;
  }

 private:
  static constexpr std::size_t most_rises = 10'000;

  [[nodiscard]] Stepped figure(Cell place) const {
    if (on_the_way_[place]) return *on_the_way_[place];
    if (!path_.figures.is_number(place)) throw NotStepped{"an output is no single number"};
    return constant(path_.figures.number(place));
  }

  [[nodiscard]] Stepped formula(const PathStep& step) {
    if (!step.programme->numeric) throw NotStepped{step.name + " does not work on numbers alone"};
    const SteppedDomain domain(path_, on_the_way_, step, last_);
    return Machine<SteppedDomain>(*step.programme, domain, stack_).run();
  }

  [[nodiscard]] Stepped total(const PathStep& step) const {
    const Value beside = step.beside.value();
    const auto* number = std::get_if<Rational>(&beside);
    if (number == nullptr) throw NotStepped{step.name + " is no single number"};
    Stepped result = constant(*number);
    for (const Cell row : step.inputs) result = sum(result, figure(row));
    return result;
  }

  const Path& path_;
  std::vector<std::optional<Stepped>> on_the_way_;  // by place
  Rational last_;                                   // the number of the last point
  std::vector<Stepped> stack_;
};

Rational common_denominator(const Rational& a, const Rational& b) {
  return Rational(1) / common_step(Rational(1) / denominator(a), Rational(1) / denominator(b));
}

/// What all figures are multiples of.
Rational step_of(const Stepped& stepped) {
  Rational step = common_step(stepped.slope, stepped.start);
  for (const Rise& rise : stepped.rises) step = common_step(step, rise.height);
  return step.is_zero() ? Rational(1) : step;
}

const Rational& half_word() {
  static const Rational half = std::int64_t{1} << 61U;
  return half;
}

/// Stairs that climb with the points, and those that fall, told from the other end.
struct Stairways {
  std::vector<Stair> up;
  std::vector<Stair> down;
  Rational start;  // counted in steps, like all heights
  Rational most;   // no sum on the way is larger
};

/// False where a figure is no word.
bool add_stair(const Rise& rise, const Rational& step, std::size_t points, Stairways& ways) {
  const bool falls = rise.slope.sign() < 0;
  const Rational last(points - 1);
  const Rational slope = falls ? -rise.slope : rise.slope;
  Rational start = falls ? rise.start + rise.slope * last : rise.start;
  const Rational height = rise.height / step;
  // A stair counts from zero up, so it is lifted, and the line below it let down.
  const Rational lift = start.sign() < 0 ? -floor(start) : Rational();
  start += lift;
  ways.start -= height * lift;
  const Rational width = common_denominator(slope, start);
  const Rational whole_slope = slope * width;
  const Rational whole_start = start * width;
  ways.most += abs(height) * (ceil(slope * last + start) + abs(lift));
  const bool words =
      height.is_word() && whole_slope.is_word() && whole_start.is_word() && width.is_word();
  if (!words) return false;
  (falls ? ways.down : ways.up)
      .push_back({height.word_numerator(), whole_slope.word_numerator(),
                  whole_start.word_numerator(), width.word_numerator()});
  return true;
}

void add_line(std::int64_t slope, std::int64_t start, std::span<std::int64_t> counts) {
  for (std::int64_t& count : counts) {
    count += start;
    start += slope;
  }
}

}  // namespace

SteppedPath stepped_path(const Path& path, const EvenPoints& points) {
  try {
    return {SteppedRunner(path, points).run(), ""};
  } catch (const NotStepped& reason) {
    return {{}, reason.reason};
  } catch (const Error& error) {
    return {{}, error.what()};  // of some points or all: told when they are worked out one by one
  }
}

std::optional<WordColumn> column_of(const Stepped& stepped, std::size_t points) {
  const Rational step = step_of(stepped);
  WordColumn column{step, points, word_array(points)};
  if (points == 0) return column;
  Stairways ways;
  ways.start = stepped.start / step;
  const Rational slope = stepped.slope / step;
  for (const Rise& rise : stepped.rises) {
    if (!add_stair(rise, step, points, ways)) return std::nullopt;
  }
  ways.most += abs(ways.start) + abs(slope) * Rational(points);
  if (ways.most > half_word()) return std::nullopt;
  const auto up = StairSum::over(ways.up, points);
  const auto down = StairSum::over(ways.down, points);
  if (!up || !down) return std::nullopt;
  const std::span<std::int64_t> counts(column.counts.get(), points);
  down->fill(counts);
  std::ranges::reverse(counts);
  if (!ways.up.empty()) {
    const WordArray rising = word_array(points);
    up->fill(std::span(rising.get(), points));
    for (std::size_t i = 0; i < points; ++i) counts[i] += rising[i];
  }
  add_line(slope.word_numerator(), ways.start.word_numerator(), counts);
  return column;
}

}  // namespace scalepan
