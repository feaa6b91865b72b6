// Programmes on values of every kind.
#include <span>

#include "exact/error.hpp"
#include "sheet/formula.hpp"
#include "sheet/functions.hpp"
#include "sheet/interval.hpp"
#include "sheet/machine.hpp"
#include "sheet/numbers.hpp"
#include "sheet/token.hpp"

namespace scalepan {

namespace {

/// A single number wherever there is but one.
Value settled(Value value) {
  const auto* interval = std::get_if<Interval>(&value);
  if (interval == nullptr || interval->high != interval->low) return value;
  return Rational(interval->low);
}

Interval interval_in(const Value& value) {
  const auto* number = std::get_if<Rational>(&value);
  return number != nullptr ? interval_of(*number) : std::get<Interval>(value);
}

class ValueDomain {
 public:
  using Value = scalepan::Value;

  ValueDomain(const Programme& programme, const std::function<Value(std::size_t)>& value_of_input)
      : programme_(programme), value_of_input_(value_of_input) {}

  [[nodiscard]] Value operand(const Instruction& instruction) const {
    switch (instruction.operand) {
      case Operand::constant:
        return programme_.constants[instruction.argument];
      case Operand::thing:
        return programme_.things[instruction.argument];
      default:
        return settled(value_of_input_(instruction.argument));
    }
  }

  [[nodiscard]] Value one(const Instruction& instruction, const Value& a) const {
    if (const auto* number = std::get_if<Rational>(&a)) return one_number(instruction, *number);
    return settled(one_interval(instruction, std::get<Interval>(a)));
  }

  [[nodiscard]] Value two(const Instruction& instruction, const Value& a, const Value& b) const {
    const auto* one = std::get_if<Rational>(&a);
    const auto* other = std::get_if<Rational>(&b);
    if (one != nullptr && other != nullptr) return two_numbers(instruction, *one, *other);
    if (std::holds_alternative<ThingPointer>(a)) {
      return flag_number(same_value(a, b) == (instruction.operation == Operation::equal));
    }
    return two_intervals(instruction, interval_in(a), interval_in(b));
  }

  [[nodiscard]] static bool holds(const Instruction& instruction, const Value& flag) {
    if (const auto* number = std::get_if<Rational>(&flag)) return !number->is_zero();
    fail_at(instruction.offset, "formula.undecided",
            "\"if\" cannot be decided: its condition may be yes or no");
  }

  [[nodiscard]] Value called(const Instruction& instruction, const Value* first) const {
    const Function& function = *programme_.functions[instruction.argument];
    return settled(in_part(instruction.offset, [&] {
      return function.run(std::span<const Value>(first, instruction.count));
    }));
  }

 private:
  [[nodiscard]] Interval one_interval(const Instruction& instruction, const Interval& a) const {
    switch (instruction.operation) {
      case Operation::negate:
        return bounded(instruction, difference_of(interval_of(0), a), a);
      case Operation::invert:
        return bounded(instruction, difference_of(interval_of(1), a), a);
      case Operation::absolute:
        return absolute_of(a);
      case Operation::reciprocal:
        expect_divisor(instruction, a);
        return reciprocal_of(a);
      default:
        return power_of(a, instruction.argument);
    }
  }

  [[nodiscard]] Value two_intervals(const Instruction& instruction, const Interval& a,
                                    const Interval& b) const {
    switch (instruction.operation) {
      case Operation::less:
        return decided(instruction, is_less(a, b), a, b);
      case Operation::at_most:
        return decided(instruction, is_at_most(a, b), a, b);
      case Operation::equal:
        return decided(instruction, is_equal(a, b), a, b);
      case Operation::unequal:
        return flag_number(decided(instruction, is_equal(a, b), a, b).is_zero());
      default:
        return settled(combined(instruction, a, b));
    }
  }

  [[nodiscard]] Interval combined(const Instruction& instruction, const Interval& a,
                                  const Interval& b) const {
    switch (instruction.operation) {
      case Operation::add:
        return sum_of(a, b);
      case Operation::subtract:
        return bounded(instruction, difference_of(a, b), a, b);
      case Operation::multiply:
        return bounded(instruction, product_of(a, b), a, b);
      case Operation::divide:
        expect_divisor(instruction, b);
        return bounded(instruction, product_of(a, reciprocal_of(b)), a, b);
      case Operation::both:
      case Operation::least:
        return least_of(a, b);
      case Operation::either:
      case Operation::greatest:
        return greatest_of(a, b);
      default:
        return rounded(instruction, a, b);
    }
  }

  [[nodiscard]] Interval rounded(const Instruction& instruction, const Interval& a,
                                 const Interval& step) const {
    if (step.high != step.low) {
      fail_at(instruction.offset, "formula.undecided",
              "what is rounded to cannot be decided: the step is " + right(instruction, step),
              "give one figure");
    }
    Interval result{rounded_to(instruction, a.low, step.low), std::nullopt};
    if (a.high) result.high = rounded_to(instruction, *a.high, step.low);
    return result;
  }

  void expect_divisor(const Instruction& instruction, const Interval& b) const {
    if (!holds_zero(b)) return;
    fail_at(instruction.offset, "number.division_by_zero",
            "division by what may be zero: " + right(instruction, b));
  }

  [[nodiscard]] Rational decided(const Instruction& instruction, const std::optional<bool>& flag,
                                 const Interval& a, const Interval& b) const {
    if (flag) return flag_number(*flag);
    fail_at(instruction.offset, "formula.undecided",
            sign(instruction) + " cannot be decided between " + left(instruction, a) +
                " on its left and " + right(instruction, b) + " on its right",
            "give figures that leave no choice");
  }

  [[nodiscard]] Interval bounded(const Instruction& instruction, MaybeInterval result,
                                 const Interval& a, const Interval& b) const {
    if (result) return std::move(*result);
    fail_at(instruction.offset, "formula.unbounded",
            sign(instruction) + " leaves no lower bound: " + left(instruction, a) +
                " on its left and " + right(instruction, b) + " on its right",
            "give an upper bound");
  }
  [[nodiscard]] Interval bounded(const Instruction& instruction, MaybeInterval result,
                                 const Interval& a) const {
    if (result) return std::move(*result);
    fail_at(instruction.offset, "formula.unbounded",
            sign(instruction) + " leaves no lower bound of " + right(instruction, a),
            "give an upper bound");
  }

  /// As it is written.
  [[nodiscard]] std::string sign(const Instruction& instruction) const {
    UnitMemo none;
    const std::string_view shape = programme_.shape;
    return "\"" + std::string(TokenReader(shape.substr(instruction.offset), none).next().text) +
           "\"";
  }
  [[nodiscard]] std::string left(const Instruction& instruction, const Interval& a) const {
    return figure_text(settled(a), quantity_type(programme_.sides[instruction.count].left));
  }
  [[nodiscard]] std::string right(const Instruction& instruction, const Interval& b) const {
    return figure_text(settled(b), quantity_type(programme_.sides[instruction.count].right));
  }

  const Programme& programme_;
  const std::function<Value(std::size_t)>& value_of_input_;
};

}  // namespace

Value run_on_values(const Programme& programme,
                    const std::function<Value(std::size_t)>& value_of_input, RunSpace& space) {
  const ValueDomain domain(programme, value_of_input);
  return Machine<ValueDomain>(programme, domain, space.values).run();
}

}  // namespace scalepan
