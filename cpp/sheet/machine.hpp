// How programmes run, on whatever values a domain has.
#pragma once

#include <utility>
#include <vector>

#include "sheet/formula.hpp"

namespace scalepan {

/// A domain has the type `Value` and, of instructions: `operand`, `one`, `two`, `holds` (of a
/// condition) and `called`.
template <typename Domain>
class Machine {
 public:
  using Held = typename Domain::Value;

  Machine(const Programme& programme, const Domain& domain, std::vector<Held>& stack)
      : programme_(programme), domain_(domain) {
    if (stack.size() < programme.stack) stack.resize(programme.stack);
    top_ = stack.data();
  }

  Held run() {
    const Instruction* const first = programme_.code.data();
    const Instruction* const end = first + programme_.code.size();
    for (const Instruction* at = first; at != end;) {
      switch (at->operation) {
        case Operation::jump:
          at = first + at->argument;
          continue;
        case Operation::jump_if_not:
          at = domain_.holds(*at, current_) ? at + 1 : first + at->argument;
          continue;
        default:
          step(*at);
          ++at;
      }
    }
    return std::move(current_);
  }

 private:
  void step(const Instruction& instruction) {
    switch (instruction.operation) {
      case Operation::load:
        current_ = domain_.operand(instruction);
        break;
      case Operation::push:
        *top_++ = std::move(current_);
        break;
      case Operation::negate:
      case Operation::absolute:
      case Operation::invert:
      case Operation::reciprocal:
      case Operation::power:
        current_ = domain_.one(instruction, current_);
        break;
      case Operation::least:
      case Operation::greatest:
        for (auto i = instruction.argument; i > 1; --i) with_top(instruction);
        break;
      case Operation::call:
        *top_ = std::move(current_);
        top_ -= instruction.count - 1;
        current_ = domain_.called(instruction, top_);
        break;
      default:
        if (instruction.operand == Operand::current) {
          with_top(instruction);
        } else {
          current_ = domain_.two(instruction, current_, domain_.operand(instruction));
        }
    }
  }

  void with_top(const Instruction& instruction) {
    --top_;
    current_ = domain_.two(instruction, *top_, current_);
  }

  const Programme& programme_;
  const Domain& domain_;
  Held* top_ = nullptr;
  Held current_{};
};

}  // namespace scalepan
