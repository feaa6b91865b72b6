// Formulas: compiled once for each shape, to a short programme for exact numbers.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "sheet/instruction.hpp"
#include "sheet/value.hpp"

namespace scalepan {

struct Function;

/// How the figures on both sides of a sign are shown.
struct Sides {
  Unit left;
  Unit right;

  friend bool operator==(const Sides&, const Sides&) = default;
};

/// What all formulas of one shape and with inputs of the same types have in common. Its inputs are
/// told apart by their place in a formula's `inputs`. Never changes.
struct Programme {
  ValueType type;
  std::vector<ValueType> input_types;
  std::vector<Instruction> code;
  std::vector<Rational> constants;
  std::vector<ThingPointer> things;
  std::vector<const Function*> functions;  // of the compiler's table, which must live as long
  std::vector<Sides> sides;                // how what signs stand between is shown, for errors
  std::uint32_t stack = 0;                 // the most values at once
  bool numeric = true;                     // only numbers go in, out and between
  bool one_sign = false;                   // numeric, and one sign between two cells or literals
  std::string shape;                       // the text, with one byte 1 in the place of each name
  std::vector<std::uint32_t> occurrences;  // which input each name is, in the order of the text
};

struct Formula {
  std::shared_ptr<const Programme> programme;
  std::vector<std::uint32_t> inputs;  // cells, each once, in the order of the text
};

/// The text of a formula whose inputs are called so.
[[nodiscard]] std::string text_of(const Programme& programme,
                                  const std::function<std::string(std::size_t)>& name_of_input);

/// Where an offset in the shape is in that text.
[[nodiscard]] std::size_t text_offset(const Programme& programme,
                                      const std::function<std::string(std::size_t)>& name_of_input,
                                      std::size_t offset);

/// Hears of each call of a function before it is made.
using CallListener = std::function<void(const Function&, std::span<const Value>)>;

/// Kept from run to run, so that nothing is allocated.
struct RunSpace {
  std::vector<Rational> numbers;
  std::vector<Value> values;
  CallListener listener{};  // of `run_on_values`
};

/// What a formula's inputs are worth.
struct NumberInputs {
  const std::uint32_t* cells;  // of the formula
  const Rational* values;      // by cell
};

/// Of a numeric programme whose inputs are all single numbers, in the coherent unit. Throws
/// `number.division_by_zero` and `number.rounding_step` with an offset in the shape, and
/// `number.too_large`.
[[nodiscard]] Rational run(const Programme& programme, const NumberInputs& inputs, RunSpace& space);

/// Thrown where a formula reads a cell without a value.
struct InputFailed {
  std::uint32_t cell;
};

/// Of any programme. `value_of_input` may throw `InputFailed`. Throws what `run` and the functions
/// throw, `formula.undecided` where an interval leaves a choice, a comparison or a step open, and
/// `formula.unbounded` where nothing bounds what comes out from below.
[[nodiscard]] Value run_on_values(const Programme& programme,
                                  const std::function<Value(std::size_t)>& value_of_input,
                                  RunSpace& space);

}  // namespace scalepan
