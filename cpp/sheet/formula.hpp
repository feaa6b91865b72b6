// Formulas: compiled once, to a short programme for a stack of exact numbers.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "exact/rational.hpp"
#include "sheet/types.hpp"

namespace scalepan {

/// What one instruction does. Flags are the numbers 0 and 1.
enum class Operation : std::uint8_t {
  constant,  // argument: which
  input,     // argument: which
  add,
  subtract,
  multiply,
  divide,
  negate,
  power,  // argument: the exponent
  reciprocal,
  less,
  at_most,
  equal,
  unequal,
  both,
  either,
  invert,
  jump,         // argument: to which instruction
  jump_if_not,  // the same; takes the flag off the stack
  least,        // argument: of how many
  greatest,     // the same
  absolute,
  up_to_multiple,
  down_to_multiple,
  nearest_multiple,
};

struct Instruction {
  Operation operation = Operation::constant;
  std::uint32_t argument = 0;
  std::uint32_t offset = 0;  // in the text, for errors
};

/// A formula is the same for every row of a block: its inputs are named by their place in `inputs`.
struct Formula {
  ValueType type;
  std::vector<Instruction> code;
  std::vector<Rational> constants;
  std::vector<std::uint32_t> inputs;  // cells, each once, in the order of the text
  std::uint32_t stack = 0;            // the most numbers at once
};

/// What a formula runs on. `failed` may be null where no input can have failed.
struct FormulaRun {
  const Rational* values;          // by cell
  const std::uint8_t* failed;      // by cell
  std::vector<Rational>& stack;    // kept from run to run
};

/// Thrown where a formula reads a cell without a value.
struct InputFailed {
  std::uint32_t cell;
};

/// In the coherent unit. Throws `number.division_by_zero` and `number.rounding_step` with the
/// offset in the text, `number.too_large`, and `InputFailed`.
[[nodiscard]] Rational run(const Formula& formula, const FormulaRun& with);

}  // namespace scalepan
