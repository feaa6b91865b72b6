// What programmes are made of.
//
// A programme works on one current value and a stack below it. An operation of two sides takes its
// right side from where the instruction says; the left one is the current value, or, where the
// right side is the current value, the top of the stack.
#pragma once

#include <cstdint>

namespace scalepan {

enum class Operation : std::uint8_t {
  load,  // makes the operand the current value
  push,  // puts the current value on the stack
  add,
  subtract,
  multiply,
  divide,
  less,
  at_most,
  equal,
  unequal,
  both,
  either,
  up_to_multiple,
  down_to_multiple,
  nearest_multiple,
  negate,
  absolute,
  invert,
  reciprocal,
  power,        // argument: the exponent
  least,        // argument: of how many, the current value and the stack's top ones
  greatest,     // the same
  jump,         // argument: to which instruction
  jump_if_not,  // the same; the current value is the flag, and is done with
  call,         // argument: which of the programme's functions
};

/// Where the right side of an operation is.
enum class Operand : std::uint8_t { current, constant, input, thing };

struct Instruction {
  Operation operation = Operation::load;
  Operand operand = Operand::current;
  std::uint16_t count = 0;  // of a call: arguments; of a sign: which of the programme's sides
  std::uint32_t argument = 0;
  std::uint32_t offset = 0;  // in the shape, for errors
};

static_assert(sizeof(Instruction) == 12);

}  // namespace scalepan
