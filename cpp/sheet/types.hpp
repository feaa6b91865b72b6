// Types of cells and formulas: known when a formula is entered, never found out later.
#pragma once

#include <cstdint>
#include <string>

#include "measure/unit.hpp"

namespace scalepan {

enum class ValueKind : std::uint8_t { quantity, flag, text, food, recipe, offers, packs };

struct ValueType {
  ValueKind kind = ValueKind::quantity;
  bool any_zero = false;  // the literal 0, which is nothing of whatever it meets
  Unit shown{};           // of a quantity: its dimension, and how it is shown; of offers and packs:
                          // of what they hold
  Unit money{};           // of offers and packs: what they cost

  [[nodiscard]] Dimension dimension() const { return shown.dimension(); }
  /// Whether it is worked out on numbers: a quantity, or a flag, which is 0 or 1.
  [[nodiscard]] bool is_number() const { return kind <= ValueKind::flag; }
  /// The same kind and dimensions, however shown.
  [[nodiscard]] bool alike(const ValueType& other) const;
  /// `weight EP`, `plain number`, `yes or no`, `text`, `a food`, `a recipe`, `offers of weight AP
  /// in GBP`, `packs of weight AP in GBP`.
  [[nodiscard]] std::string name() const;

  friend bool operator==(const ValueType&, const ValueType&) = default;
};

[[nodiscard]] inline ValueType flag_type() { return {ValueKind::flag}; }
[[nodiscard]] inline ValueType text_type() { return {ValueKind::text}; }
[[nodiscard]] inline ValueType quantity_type(Unit shown) {
  return {ValueKind::quantity, false, shown};
}

}  // namespace scalepan
