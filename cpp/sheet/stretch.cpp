#include "sheet/stretch.hpp"

#include <algorithm>
#include <span>

#include "sheet/functions.hpp"
#include "sheet/machine.hpp"
#include "sheet/numbers.hpp"

namespace scalepan {

namespace {

Along along_of(const Value& value) {
  if (const auto* number = std::get_if<Rational>(&value)) return RatioForm::constant(*number);
  if (const auto* thing = std::get_if<ThingPointer>(&value)) return *thing;
  const auto& interval = std::get<Interval>(value);
  if (interval.high == interval.low) return RatioForm::constant(interval.low);
  return ManyFigures{};
}

/// None where one of them moves.
std::optional<std::vector<Value>> still(std::span<const Along> arguments) {
  std::vector<Value> values;
  for (const Along& argument : arguments) {
    const auto* form = std::get_if<RatioForm>(&argument);
    const auto* thing = std::get_if<ThingPointer>(&argument);
    if (form != nullptr && form->is_constant()) {
      values.emplace_back(form->number());
    } else if (thing != nullptr) {
      values.emplace_back(*thing);
    } else {
      return std::nullopt;
    }
  }
  return values;
}

[[noreturn]] void fail_many(const std::string& what) {
  throw NoForm{what + " is no single number"};
}

using OnTheWay = std::vector<std::optional<Along>>;  // by place

class FormDomain {
 public:
  using Value = Along;

  FormDomain(const Path& path, const OnTheWay& on_the_way, const PathStep& step, Reach& reach)
      : path_(path), on_the_way_(on_the_way), step_(step), reach_(reach) {}

  [[nodiscard]] Along operand(const Instruction& instruction) const {
    switch (instruction.operand) {
      case Operand::constant:
        return RatioForm::constant(step_.programme->constants[instruction.argument]);
      case Operand::thing:
        return step_.programme->things[instruction.argument];
      default:
        return input(instruction.argument);
    }
  }

  [[nodiscard]] Along one(const Instruction& instruction, const Along& a) const {
    if (const auto* form = std::get_if<RatioForm>(&a)) return one_form(instruction, *form);
    switch (instruction.operation) {
      case Operation::negate:
      case Operation::absolute:
      case Operation::reciprocal:
        return ManyFigures{};
      default:
        fail_many("what is raised to a power or turned to its opposite");
    }
  }

  [[nodiscard]] Along two(const Instruction& instruction, const Along& a, const Along& b) const {
    const auto* one = std::get_if<RatioForm>(&a);
    const auto* other = std::get_if<RatioForm>(&b);
    if (one != nullptr && other != nullptr) return two_forms(instruction, *one, *other);
    if (const auto* thing = std::get_if<ThingPointer>(&a)) {
      const auto* same = std::get_if<ThingPointer>(&b);
      if (same == nullptr) fail_moving();
      const bool equal = same_value(*thing, *same);
      return RatioForm::constant(flag_number(equal == (instruction.operation == Operation::equal)));
    }
    if (std::holds_alternative<MovingPointer>(a)) fail_moving();
    return many_figures(instruction, one != nullptr ? one : other);
  }

  [[nodiscard]] static bool holds(const Instruction& /*unused*/, const Along& flag) {
    if (is_many(flag)) fail_many("a condition");
    return !std::get<RatioForm>(flag).number().is_zero();
  }

  [[nodiscard]] Along called(const Instruction& instruction, const Along* first) const {
    const Function& function = *step_.programme->functions[instruction.argument];
    const std::span<const Along> arguments(first, instruction.count);
    if (const auto values = still(arguments)) return along_of(function.run(*values));
    const std::string name = "\"" + std::string(function.name) + "\"";
    if (std::ranges::any_of(arguments, is_many)) fail_many("what " + name + " is given");
    if (function.along == nullptr) throw NoForm{name + " is known at single values only"};
    return function.along(function, arguments, reach_);
  }

 private:
  /// At a zero of it the formula fails.
  [[nodiscard]] RatioForm divisor(const RatioForm& form) const {
    reach_.turns_at(form.where(Rational()));
    return inverse_of(form);
  }

  [[nodiscard]] Along input(std::uint32_t input) const {
    const Cell place = step_.inputs[input];
    if (const auto& known = on_the_way_[place]) {
      if (std::holds_alternative<NoFigure>(*known)) throw InputFailed{place};
      return *known;
    }
    const Condition condition = path_.figures.condition(place);
    if (condition != Condition::number && condition != Condition::thing) {
      fail_many(step_.input_names[input]);
    }
    return along_of(path_.figures.value(place));
  }

  static bool is_many(const Along& value) { return std::holds_alternative<ManyFigures>(value); }
  [[noreturn]] static void fail_moving() {
    throw NoForm{"things that follow from it are compared"};
  }

  /// An interval stays one where it is moved, or stretched by what is not zero.
  [[nodiscard]] Along many_figures(const Instruction& instruction, const RatioForm* other) const {
    switch (instruction.operation) {
      case Operation::add:
      case Operation::subtract:
        return ManyFigures{};
      case Operation::multiply:
      case Operation::divide:
        if (other == nullptr || reach_.sign_of(*other) != 0) return ManyFigures{};
        [[fallthrough]];
      default:
        fail_many("a figure that is \"at least\" beyond a value of it");
    }
  }

  [[nodiscard]] RatioForm one_form(const Instruction& instruction, const RatioForm& a) const {
    if (a.is_constant()) return RatioForm::constant(one_number(instruction, a.number()));
    switch (instruction.operation) {
      case Operation::negate:
        return a * RatioForm::constant(Rational(-1));
      case Operation::absolute:
        return reach_.sign_of(a) < 0 ? a * RatioForm::constant(Rational(-1)) : a;
      case Operation::reciprocal:
        return divisor(a);
      default:
        if (instruction.argument == 1) return a;
        if (instruction.argument == 0) return RatioForm::constant(Rational(1));
        throw NoForm{"a figure that follows from it is raised to a power"};
    }
  }

  [[nodiscard]] RatioForm two_forms(const Instruction& instruction, const RatioForm& a,
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
        return a * divisor(b);
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
  const OnTheWay& on_the_way_;
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
    for (const PathStep& step : path_.steps) {
      on_the_way_[step.place] = figure_of(step);
    }
    const Along output = along(path_.outputs.front());
    const auto* form = std::get_if<RatioForm>(&output);
    if (form == nullptr) return {std::nullopt, reach_.end()};
    reach_.turns_at(form->pole());
    return {*form, reach_.end()};
  }

 private:
  [[nodiscard]] Along along(Cell place) const {
    if (on_the_way_[place]) return *on_the_way_[place];
    if (!path_.figures.is_number(place)) throw NoForm{"a figure is no single number"};
    return RatioForm::constant(path_.figures.number(place));
  }

  [[nodiscard]] Along figure_of(const PathStep& step) {
    try {
      return step.programme == nullptr ? total(step) : formula(step);
    } catch (const InputFailed&) {
      return NoFigure{};
    } catch (const Error&) {
      return NoFigure{};
    }
  }

  [[nodiscard]] Along formula(const PathStep& step) {
    const FormDomain domain(path_, on_the_way_, step, reach_);
    return Machine<FormDomain>(*step.programme, domain, stack_).run();
  }

  /// A row without a figure makes it "at least" the others, or leaves none.
  [[nodiscard]] Along total(const PathStep& step) const {
    const Value beside = step.beside.value();
    const auto* number = std::get_if<Rational>(&beside);
    if (number == nullptr) throw NoForm{step.name + " is no single number"};
    RatioForm sum = RatioForm::constant(*number);
    for (const Cell row : step.inputs) {
      const Along part = along(row);
      if (!std::holds_alternative<RatioForm>(part)) return ManyFigures{};
      sum = sum + std::get<RatioForm>(part);
    }
    return sum;
  }

  const Path& path_;
  Reach reach_;
  OnTheWay on_the_way_;
  std::vector<Along> stack_;
};

}  // namespace

PathStretch stretch_beyond(const Path& path, const Rational& input) {
  return StretchRunner(path, input).run();
}

}  // namespace scalepan
