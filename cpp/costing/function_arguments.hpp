// What the functions of a costing's formulas are given.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "exact/error.hpp"
#include "sheet/along.hpp"

namespace scalepan {

using Types = std::span<const ValueType>;
using Values = std::span<const Value>;

/// Throws `formula.type`.
template <typename Kind>
const Kind& thing(const ThingPointer& value) {
  const auto* held = dynamic_cast<const Kind*>(value.get());
  if (held != nullptr) return *held;
  fail("formula.type", "\"" + value->text() + "\" is of another kind");
}

template <typename Kind>
const Kind& thing(const Value& value) {
  return thing<Kind>(std::get<ThingPointer>(value));
}

/// Throws `formula.undecided` for an interval.
[[nodiscard]] inline const Rational& single(std::string_view function, const Value& value) {
  if (const auto* number = std::get_if<Rational>(&value)) return *number;
  fail("formula.undecided",
       "\"" + std::string(function) + "\" cannot be decided for more than one figure",
       "give one figure");
}

/// At a value of the input on their stretch, of arguments without things that move.
[[nodiscard]] std::vector<Value> values_at(std::span<const Along> arguments, const Rational& input);

}  // namespace scalepan
