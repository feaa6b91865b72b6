// Types of cells and formulas: known when a formula is entered, never found out later.
#pragma once

#include <cstdint>
#include <string>

#include "measure/unit.hpp"

namespace scalepan {

enum class ValueKind : std::uint8_t { quantity, flag };

struct ValueType {
  ValueKind kind = ValueKind::quantity;
  bool any_zero = false;  // the literal 0, which is nothing of whatever it meets
  Unit shown{};           // of a quantity: its dimension, and how it is shown

  [[nodiscard]] Dimension dimension() const { return shown.dimension(); }
  /// `weight EP`, `plain number`, `yes or no`.
  [[nodiscard]] std::string name() const;
};

[[nodiscard]] inline ValueType flag_type() { return {ValueKind::flag, false, {}}; }
[[nodiscard]] inline ValueType quantity_type(Unit shown) {
  return {ValueKind::quantity, false, shown};
}

}  // namespace scalepan
