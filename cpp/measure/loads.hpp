// Loads: a total shared out into ovens, pans or trays that hold so much at a time.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "measure/quantity.hpp"

namespace scalepan {

enum class LoadSplit {
  full_and_short,  // full loads, and what is left as one short load
  equal,           // as few loads as that, all alike
};

/// So many loads that hold the same.
struct LoadsAlike {
  Rational count;
  Quantity each;
};

/// The fewest loads that take the whole of a total.
struct Loads {
  Quantity capacity;
  std::vector<LoadsAlike> parts;  // the larger first, two at most; none for a total of zero

  /// Of all loads.
  [[nodiscard]] Rational count() const;
  /// How many are filled to the capacity.
  [[nodiscard]] Rational full() const;
  /// What the largest holds; zero where there is no load.
  [[nodiscard]] Quantity each() const;
  /// What the smallest holds where that is below the capacity, else zero.
  [[nodiscard]] Quantity short_one() const;
  /// `3 loads of 4 kg and one of 1 kg`; a rounded figure is marked so.
  [[nodiscard]] std::string text() const;
  /// The time of all loads one after the other. How long one load takes is the cook's own figure:
  /// it is never scaled with what the load holds. Throws `load.time` for what is no time, or
  /// negative.
  [[nodiscard]] Quantity in_turn(const Quantity& time_of_one) const;
};

/// Counts (pieces, portions, plain numbers) are shared out whole: loads of an equal split then
/// differ by one at most, and a capacity of 12.5 pieces holds 12. All else is shared out exactly.
/// The sum of the loads is the total. Throws `load.kind` where total and capacity are of different
/// dimensions or stages, `load.negative`, `load.capacity` where a load holds nothing, and
/// `load.whole` where the total of a count is no whole number.
[[nodiscard]] Loads loads_of(const Quantity& total, const Quantity& capacity, LoadSplit split);

}  // namespace scalepan
