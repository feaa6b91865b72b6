#include "sheet/figures.hpp"

#include <string_view>

namespace scalepan {

namespace {

Condition condition_of(const Value& value) {
  if (std::holds_alternative<Interval>(value)) return Condition::interval;
  return std::holds_alternative<ThingPointer>(value) ? Condition::thing : Condition::number;
}

bool is_plain(Condition condition) {
  return condition != Condition::failed && condition != Condition::interval;
}

}  // namespace

void Figures::resize(std::size_t cells) {
  numbers_.resize(cells);
  conditions_.resize(cells, static_cast<std::uint8_t>(Condition::unknown));
}

void Figures::reserve(std::size_t cells) {
  numbers_.reserve(cells);
  conditions_.reserve(cells);
}

Value Figures::value(Cell cell) const {
  if (is_number(cell)) return numbers_[cell];
  return odd_.at(cell);
}

/// What the cell was leaves no trace.
void Figures::leave(Cell cell, Condition next) {
  const Condition before = condition(cell);
  if (before == Condition::failed) held_.erase(cell);
  if (before == Condition::interval || before == Condition::thing) odd_.erase(cell);
  if (before == Condition::number) numbers_[cell] = Rational();
  not_plain_ += static_cast<std::size_t>(!is_plain(next));
  not_plain_ -= static_cast<std::size_t>(!is_plain(before));
  conditions_[cell] = static_cast<std::uint8_t>(next);
}

bool Figures::keep(Cell cell, const Value& value) {
  if (const auto* number = std::get_if<Rational>(&value)) return keep_number(cell, *number);
  const auto known = odd_.find(cell);
  if (known != odd_.end() && same_value(known->second, value)) return false;
  leave(cell, condition_of(value));
  odd_.insert_or_assign(cell, value);
  return true;
}

bool Figures::hold(Cell cell, const HeldError& held) {
  const auto known = held_.find(cell);
  if (known != held_.end() && known->second.origin == held.origin &&
      known->second.error->place().offset == held.error->place().offset &&
      std::string_view(known->second.error->what()) == held.error->what()) {
    return false;
  }
  leave(cell, Condition::failed);
  held_.insert_or_assign(cell, held);
  return true;
}

void Figures::forget(Cell cell) { leave(cell, Condition::unknown); }

}  // namespace scalepan
