#include "sheet/formula.hpp"

#include <algorithm>
#include <utility>

#include "exact/error.hpp"
#include "exact/rounding.hpp"

namespace scalepan {

namespace {

Rational power_of(const Rational& base, std::uint32_t exponent) {
  Rational power = 1;
  for (std::uint32_t i = 0; i < exponent; ++i) power *= base;
  return power;
}

Rounding rounding_of(Operation operation) {
  if (operation == Operation::up_to_multiple) return Rounding::ceiling;
  return operation == Operation::down_to_multiple ? Rounding::floor : Rounding::half_up;
}

class Machine {
 public:
  Machine(const Formula& formula, const FormulaRun& with)
      : formula_(formula), with_(with), stack_(with.stack) {
    if (stack_.size() < formula.stack) stack_.resize(formula.stack);
  }

  Rational run() {
    for (std::size_t at = 0; at < formula_.code.size();) at = step(at);
    return std::move(stack_[0]);
  }

 private:
  std::size_t step(std::size_t at) {
    const Instruction& instruction = formula_.code[at];
    switch (instruction.operation) {
      case Operation::constant:
        stack_[top_++] = formula_.constants[instruction.argument];
        break;
      case Operation::input:
        stack_[top_++] = read(formula_.inputs[instruction.argument]);
        break;
      case Operation::jump:
        return instruction.argument;
      case Operation::jump_if_not:
        return stack_[--top_].is_zero() ? instruction.argument : at + 1;
      case Operation::negate:
        stack_[top_ - 1] = -stack_[top_ - 1];
        break;
      case Operation::invert:
        stack_[top_ - 1] = Rational(stack_[top_ - 1].is_zero() ? 1 : 0);
        break;
      case Operation::absolute:
        if (stack_[top_ - 1].sign() < 0) stack_[top_ - 1] = -stack_[top_ - 1];
        break;
      case Operation::power:
        stack_[top_ - 1] = power_of(stack_[top_ - 1], instruction.argument);
        break;
      case Operation::reciprocal:
        stack_[top_ - 1] = quotient(Rational(1), stack_[top_ - 1], instruction);
        break;
      case Operation::least:
      case Operation::greatest:
        extreme(instruction);
        break;
      default:
        --top_;
        two(instruction, stack_[top_ - 1], stack_[top_]);
    }
    return at + 1;
  }

  [[nodiscard]] const Rational& read(std::uint32_t cell) const {
    if (with_.failed != nullptr && with_.failed[cell] != 0) throw InputFailed{cell};
    return with_.values[cell];
  }

  void extreme(const Instruction& instruction) {
    const auto first = stack_.begin() + (top_ - instruction.argument);
    const auto last = stack_.begin() + top_;
    const auto best = instruction.operation == Operation::least ? std::min_element(first, last)
                                                                : std::max_element(first, last);
    std::iter_swap(first, best);
    top_ -= instruction.argument - 1;
  }

  static Rational quotient(const Rational& a, const Rational& b, const Instruction& instruction) {
    if (b.is_zero()) fail_at(instruction.offset, "number.division_by_zero", "division by zero");
    return a / b;
  }

  /// Leaves the result in `a`.
  void two(const Instruction& instruction, Rational& a, const Rational& b) const {
    switch (instruction.operation) {
      case Operation::add:
        a = a + b;
        break;
      case Operation::subtract:
        a = a - b;
        break;
      case Operation::multiply:
        a = a * b;
        break;
      case Operation::divide:
        a = quotient(a, b, instruction);
        break;
      case Operation::less:
        a = Rational(a < b ? 1 : 0);
        break;
      case Operation::at_most:
        a = Rational(a <= b ? 1 : 0);
        break;
      case Operation::equal:
        a = Rational(a == b ? 1 : 0);
        break;
      case Operation::unequal:
        a = Rational(a == b ? 0 : 1);
        break;
      case Operation::both:
        a = Rational(a.is_zero() || b.is_zero() ? 0 : 1);
        break;
      case Operation::either:
        a = Rational(a.is_zero() && b.is_zero() ? 0 : 1);
        break;
      default:
        a = in_part(instruction.offset, [&] {
          return round_to_multiple(a, b, rounding_of(instruction.operation)).value;
        });
    }
  }

  const Formula& formula_;
  const FormulaRun& with_;
  std::vector<Rational>& stack_;
  std::uint32_t top_ = 0;
};

}  // namespace

Rational run(const Formula& formula, const FormulaRun& with) {
  return Machine(formula, with).run();
}

}  // namespace scalepan
