#include "sheet/stretch.hpp"

#include <utility>

#include "sheet/machine.hpp"
#include "sheet/numbers.hpp"

namespace scalepan {

namespace {

/// Where the stretch begins, and how far it goes as known so far.
class Reach {
 public:
  explicit Reach(Rational from) : from_(std::move(from)) {}

  [[nodiscard]] const Rational& from() const { return from_; }
  [[nodiscard]] const std::optional<Rational>& end() const { return end_; }

  void turns_at(const std::optional<Rational>& x) {
    if (x && *x > from_ && (!end_ || *x < *end_)) end_ = x;
  }
  int sign_of(const RatioForm& form) {
    turns_at(form.where(Rational()));
    turns_at(form.pole());
    return form.sign_beyond(from_);
  }
  /// The smallest whole number that is not below the form.
  Rational ceiling_of(const RatioForm& form) {
    const auto value = form.at(from_);
    if (!value) throw NoForm{"a rounded figure grows beyond all bounds"};
    const int direction = form.direction();
    const Rational level = direction > 0 ? floor(*value) + Rational(1) : ceil(*value);
    if (direction != 0) {
      turns_at(form.where(direction > 0 ? level : level - Rational(1)));
      turns_at(form.pole());
    }
    return level;
  }

 private:
  Rational from_;
  std::optional<Rational> end_;
};

class FormDomain {
 public:
  using Value = RatioForm;
  using Places = std::vector<std::optional<RatioForm>>;

  FormDomain(const Path& path, const Places& on_the_way, const PathStep& step, Reach& reach)
      : path_(path), on_the_way_(on_the_way), step_(step), reach_(reach) {}

  [[nodiscard]] RatioForm operand(const Instruction& instruction) const {
    if (instruction.operand == Operand::constant) {
      return RatioForm::constant(step_.programme->constants[instruction.argument]);
    }
    const Cell place = step_.inputs[instruction.argument];
    if (on_the_way_[place]) return *on_the_way_[place];
    if (!path_.figures.is_number(place)) {
      throw NoForm{step_.input_names[instruction.argument] + " is no single number"};
    }
    return RatioForm::constant(path_.figures.number(place));
  }

  [[nodiscard]] RatioForm one(const Instruction& instruction, const RatioForm& a) const {
    if (a.is_constant()) return RatioForm::constant(one_number(instruction, a.number()));
    switch (instruction.operation) {
      case Operation::negate:
        return a * RatioForm::constant(Rational(-1));
      case Operation::absolute:
        return reach_.sign_of(a) < 0 ? a * RatioForm::constant(Rational(-1)) : a;
      case Operation::reciprocal:
        return inverse_of(a);
      default:
        if (instruction.argument == 1) return a;
        if (instruction.argument == 0) return RatioForm::constant(Rational(1));
        throw NoForm{"a figure that follows from it is raised to a power"};
    }
  }

  [[nodiscard]] RatioForm two(const Instruction& instruction, const RatioForm& a,
                              const RatioForm& b) const {
    if (a.is_constant() && b.is_constant()) {
      return RatioForm::constant(two_numbers(instruction, a.number(), b.number()));
    }
    switch (instruction.operation) {
      case Operation::add:
        return a + b;
      case Operation::subtract:
        return a - b;
      case Operation::multiply:
        return a * b;
      case Operation::divide:
        if (b.is_constant()) expect_divisor(instruction, b.number());
        return a * inverse_of(b);
      case Operation::least:
        return reach_.sign_of(a - b) <= 0 ? a : b;
      case Operation::greatest:
        return reach_.sign_of(a - b) >= 0 ? a : b;
      case Operation::up_to_multiple:
      case Operation::down_to_multiple:
      case Operation::nearest_multiple:
        return rounded(instruction, a, b);
      default:
        return compared(instruction.operation, reach_.sign_of(a - b));
    }
  }

  [[nodiscard]] static bool holds(const Instruction& /*unused*/, const RatioForm& flag) {
    return !flag.number().is_zero();
  }
  [[nodiscard]] static RatioForm called(const Instruction& /*unused*/,
                                        const RatioForm* /*unused*/) {
    return {};
  }

 private:
  static RatioForm compared(Operation operation, int sign) {
    bool flag = false;
    if (operation == Operation::less) flag = sign < 0;
    if (operation == Operation::at_most) flag = sign <= 0;
    if (operation == Operation::equal) flag = sign == 0;
    if (operation == Operation::unequal) flag = sign != 0;
    return RatioForm::constant(flag_number(flag));
  }

  [[nodiscard]] RatioForm rounded(const Instruction& instruction, const RatioForm& a,
                                  const RatioForm& step) const {
    if (reach_.sign_of(step) <= 0) throw NoForm{"what is rounded to is not above zero"};
    const RatioForm count = a * inverse_of(step);
    const RatioForm minus = RatioForm::constant(Rational(-1));
    Rational level;
    if (instruction.operation == Operation::up_to_multiple) {
      level = reach_.ceiling_of(count);
    } else if (instruction.operation == Operation::down_to_multiple) {
      level = -reach_.ceiling_of(count * minus);
    } else {  // halves go away from zero
      const RatioForm half = RatioForm::constant(Rational(1, 2));
      level = reach_.sign_of(count) < 0 ? reach_.ceiling_of(count - half)
                                        : -reach_.ceiling_of((count + half) * minus);
    }
    return step * RatioForm::constant(level);
  }

  const Path& path_;
  const Places& on_the_way_;
  const PathStep& step_;
  Reach& reach_;
};

class StretchRunner {
 public:
  StretchRunner(const Path& path, const Rational& input)
      : path_(path), reach_(input), on_the_way_(path.places) {
    on_the_way_[Path::input] = RatioForm::input();
  }

  PathStretch run() {
    try {
      for (const PathStep& step : path_.steps) {
        on_the_way_[step.place] = step.programme == nullptr ? total(step) : formula(step);
      }
    } catch (const Error&) {
      return {std::nullopt, reach_.end()};
    }
    const RatioForm output = figure(path_.outputs.front());
    reach_.turns_at(output.pole());
    return {output, reach_.end()};
  }

 private:
  [[nodiscard]] RatioForm figure(Cell place) const {
    if (on_the_way_[place]) return *on_the_way_[place];
    if (!path_.figures.is_number(place)) throw NoForm{"a figure is no single number"};
    return RatioForm::constant(path_.figures.number(place));
  }

  RatioForm formula(const PathStep& step) {
    if (!step.programme->numeric) throw NoForm{step.name + " does not work on numbers alone"};
    const FormDomain domain(path_, on_the_way_, step, reach_);
    return Machine<FormDomain>(*step.programme, domain, stack_).run();
  }

  [[nodiscard]] RatioForm total(const PathStep& step) const {
    const Value beside = step.beside.value();
    const auto* number = std::get_if<Rational>(&beside);
    if (number == nullptr) throw NoForm{step.name + " is no single number"};
    RatioForm result = RatioForm::constant(*number);
    for (const Cell row : step.inputs) result = result + figure(row);
    return result;
  }

  const Path& path_;
  Reach reach_;
  FormDomain::Places on_the_way_;
  std::vector<RatioForm> stack_;
};

}  // namespace

PathStretch stretch_beyond(const Path& path, const Rational& input) {
  return StretchRunner(path, input).run();
}

}  // namespace scalepan
