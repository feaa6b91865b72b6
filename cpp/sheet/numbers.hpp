// What the operations on single numbers come to. Flags are 0 and 1.
#pragma once

#include <algorithm>

#include "exact/error.hpp"
#include "exact/rational.hpp"
#include "exact/rounding.hpp"
#include "sheet/instruction.hpp"

namespace scalepan {

[[nodiscard]] inline Rational flag_number(bool flag) { return {flag ? 1 : 0}; }

/// Throws `number.rounding_step` with the instruction's offset.
[[nodiscard]] inline Rational rounded_to(const Instruction& instruction, const Rational& a,
                                         const Rational& step) {
  Rounding mode = Rounding::half_up;
  if (instruction.operation == Operation::up_to_multiple) mode = Rounding::ceiling;
  if (instruction.operation == Operation::down_to_multiple) mode = Rounding::floor;
  return in_part(instruction.offset, [&] { return round_to_multiple(a, step, mode).value; });
}

/// Throws `number.division_by_zero` with the instruction's offset.
inline void expect_divisor(const Instruction& instruction, const Rational& b) {
  if (b.is_zero()) [[unlikely]] {
    fail_at(instruction.offset, "number.division_by_zero", "division by zero");
  }
}

[[nodiscard]] inline Rational two_numbers(const Instruction& instruction, const Rational& a,
                                          const Rational& b) {
  switch (instruction.operation) {
    case Operation::add:
      return a + b;
    case Operation::subtract:
      return a - b;
    case Operation::multiply:
      return a * b;
    case Operation::divide:
      expect_divisor(instruction, b);
      return a / b;
    case Operation::less:
      return flag_number(a < b);
    case Operation::at_most:
      return flag_number(a <= b);
    case Operation::equal:
      return flag_number(a == b);
    case Operation::unequal:
      return flag_number(!(a == b));
    case Operation::both:
      return flag_number(!a.is_zero() && !b.is_zero());
    case Operation::either:
      return flag_number(!a.is_zero() || !b.is_zero());
    case Operation::least:
      return std::min(a, b);
    case Operation::greatest:
      return std::max(a, b);
    default:
      return rounded_to(instruction, a, b);
  }
}

[[nodiscard]] inline Rational one_number(const Instruction& instruction, const Rational& a) {
  switch (instruction.operation) {
    case Operation::negate:
      return -a;
    case Operation::absolute:
      return a.sign() < 0 ? -a : a;
    case Operation::invert:
      return flag_number(a.is_zero());
    case Operation::reciprocal:
      expect_divisor(instruction, a);
      return reciprocal(a);
    default:
      return power(a, static_cast<int>(instruction.argument));
  }
}

}  // namespace scalepan
