// Writes programmes. Values come in the order of the text, and each operation after what it needs.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "sheet/formula.hpp"
#include "sheet/functions.hpp"

namespace scalepan {

/// Keeps back a plain value until it is known whether it is the right side of a sign, which then
/// takes it from where it is.
class Emitter {
 public:
  /// For the next programme.
  void clear();

  void number(const Rational& value, std::uint32_t offset);
  void thing(ThingPointer value, std::uint32_t offset);
  void input(std::uint32_t index, std::uint32_t offset);

  void one(Operation operation, std::uint32_t argument, std::uint32_t offset,
           const Sides& sides = {});
  void two(Operation operation, std::uint32_t offset, const Sides& sides);
  void several(Operation operation, std::uint32_t count, std::uint32_t offset);
  void call(const Function* function, std::uint32_t count, std::uint32_t offset);

  /// Each gives what `land_here` takes once the place to jump to is reached.
  std::uint32_t jump_if_not(std::uint32_t offset);
  std::uint32_t jump(std::uint32_t offset);
  void land_here(std::uint32_t jump);

  /// What came, in vectors that have no room to spare.
  void finish(Programme& programme);

 private:
  void place(Operand operand, std::uint32_t argument, std::uint32_t offset);
  void flush();
  std::uint32_t emit(const Instruction& instruction);
  std::uint16_t index_of(const Sides& sides);
  void deepen(std::uint32_t depth);

  std::vector<Instruction> code_;
  std::vector<Rational> constants_;
  std::vector<ThingPointer> things_;
  std::vector<const Function*> functions_;
  std::vector<Sides> sides_;
  Instruction kept_back_;
  bool keeps_back_ = false;
  bool occupied_ = false;  // the current value is still needed
  std::uint32_t depth_ = 0;
  std::uint32_t deepest_ = 0;
};

}  // namespace scalepan
