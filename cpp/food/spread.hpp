// What the spread of facts leaves open of a factor that is made of them.
//
// Two bounds, each named: the worst case, where every fact is off to the same side at once, and
// root-sum-square, where the facts are off independently of one another.
#pragma once

#include <span>

#include "food/fact.hpp"

namespace scalepan {

/// A fact used one way or the other.
struct Step {
  const Fact* fact = nullptr;
  bool divides = false;  // the amount is divided by the fact's value
};

struct Spread {
  Rational low = 1;
  Rational high = 1;

  friend bool operator==(const Spread&, const Spread&) = default;
};

/// The product of the steps with every fact at its low or high.
[[nodiscard]] Spread worst_case(std::span<const Step> steps);

/// The product of the steps, less and plus the root of the sum of the squared relative spreads of
/// the facts. The root is `root_up`, so the bounds lie at or outside the true ones; they never lie
/// outside the worst case. One fact alone gives the worst case exactly.
[[nodiscard]] Spread root_sum_square(std::span<const Step> steps);

/// Decimal places of a root that does not end.
inline constexpr int root_places = 12;

/// The square root of x, at least zero: exact where it is rational, else rounded up at
/// `root_places` places (so less than one unit of the last place above the true root).
[[nodiscard]] Rational root_up(const Rational& x);

}  // namespace scalepan
