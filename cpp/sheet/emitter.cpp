#include "sheet/emitter.hpp"

#include <algorithm>
#include <utility>

namespace scalepan {

namespace {

// Beyond that many, looking for an equal one would cost more than it saves.
constexpr std::size_t few = 16;

/// Where an equal one is among the last few, or a new place.
template <typename Kept>
std::uint32_t place_among(std::vector<Kept>& all, const Kept& one) {
  const std::size_t from = all.size() > few ? all.size() - few : 0;
  const auto found = std::find(all.begin() + static_cast<std::ptrdiff_t>(from), all.end(), one);
  const auto place = static_cast<std::uint32_t>(found - all.begin());
  if (found == all.end()) all.push_back(one);
  return place;
}

}  // namespace

void Emitter::clear() {
  code_.clear();
  constants_.clear();
  things_.clear();
  functions_.clear();
  sides_.clear();
  keeps_back_ = false;
  occupied_ = false;
  depth_ = 0;
  deepest_ = 0;
}

void Emitter::number(const Rational& value, std::uint32_t offset) {
  place(Operand::constant, place_among(constants_, value), offset);
}

void Emitter::thing(ThingPointer value, std::uint32_t offset) {
  things_.push_back(std::move(value));
  place(Operand::thing, static_cast<std::uint32_t>(things_.size() - 1), offset);
}

void Emitter::input(std::uint32_t index, std::uint32_t offset) {
  place(Operand::input, index, offset);
}

void Emitter::place(Operand operand, std::uint32_t argument, std::uint32_t offset) {
  flush();
  kept_back_ = {Operation::load, operand, 0, argument, offset};
  keeps_back_ = true;
}

void Emitter::flush() {
  if (!keeps_back_) return;
  keeps_back_ = false;
  if (occupied_) {
    emit({Operation::push, Operand::current, 0, 0, kept_back_.offset});
    deepen(depth_ + 1);
  }
  emit(kept_back_);
  occupied_ = true;
}

void Emitter::one(Operation operation, std::uint32_t argument, std::uint32_t offset,
                  const Sides& sides) {
  flush();
  emit({operation, Operand::current, index_of(sides), argument, offset});
}

void Emitter::two(Operation operation, std::uint32_t offset, const Sides& sides) {
  Instruction instruction{operation, Operand::current, index_of(sides), 0, offset};
  if (keeps_back_) {
    keeps_back_ = false;
    instruction.operand = kept_back_.operand;
    instruction.argument = kept_back_.argument;
  } else {
    --depth_;
  }
  emit(instruction);
}

void Emitter::several(Operation operation, std::uint32_t count, std::uint32_t offset) {
  flush();
  depth_ -= count - 1;
  if (count > 1) emit({operation, Operand::current, 0, count, offset});
}

void Emitter::call(const Function* function, std::uint32_t count, std::uint32_t offset) {
  flush();
  // All arguments stand on the stack for the call, the current value too.
  deepen(depth_ + 1);
  depth_ -= count;
  emit({Operation::call, Operand::current, static_cast<std::uint16_t>(count),
        place_among(functions_, function), offset});
}

std::uint32_t Emitter::jump_if_not(std::uint32_t offset) {
  flush();
  occupied_ = false;
  return emit({Operation::jump_if_not, Operand::current, 0, 0, offset});
}

std::uint32_t Emitter::jump(std::uint32_t offset) {
  flush();
  occupied_ = false;
  return emit({Operation::jump, Operand::current, 0, 0, offset});
}

void Emitter::land_here(std::uint32_t jump) {
  flush();
  code_[jump].argument = static_cast<std::uint32_t>(code_.size());
}

std::uint32_t Emitter::emit(const Instruction& instruction) {
  code_.push_back(instruction);
  return static_cast<std::uint32_t>(code_.size() - 1);
}

std::uint16_t Emitter::index_of(const Sides& sides) {
  return static_cast<std::uint16_t>(place_among(sides_, sides));
}

void Emitter::deepen(std::uint32_t depth) {
  depth_ = depth;
  deepest_ = std::max(deepest_, depth);
}

void Emitter::finish(Programme& programme) {
  flush();
  programme.code = code_;
  programme.constants = constants_;
  programme.things = things_;
  programme.functions = functions_;
  programme.sides = sides_;
  programme.stack = deepest_;
  programme.numeric = things_.empty() && functions_.empty();
}

}  // namespace scalepan
