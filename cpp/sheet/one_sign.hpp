// Formulas that are one sign between two operands. Most formulas of a sheet are: the machine would
// cost more than the sign.
#pragma once

#include "sheet/formula.hpp"
#include "sheet/numbers.hpp"

namespace scalepan {

/// Of a programme with `one_sign`; `cells` are the formula's inputs, and no value of theirs has
/// failed. Throws what `run` throws.
[[nodiscard]] inline Rational run_one_sign(const Programme& programme, const std::uint32_t* cells,
                                           const Rational* values) {
  const auto operand = [&](const Instruction& instruction) -> const Rational& {
    return instruction.operand == Operand::constant ? programme.constants[instruction.argument]
                                                    : values[cells[instruction.argument]];
  };
  const Instruction* const code = programme.code.data();
  const Rational& left = operand(code[0]);
  const Rational& right = operand(code[1]);
  switch (code[1].operation) {
    case Operation::add:
      return left + right;
    case Operation::subtract:
      return left - right;
    case Operation::multiply:
      return left * right;
    default:
      return two_numbers(code[1], left, right);
  }
}

}  // namespace scalepan
