// Curves: the four costs over a range of portions, exact at every point.
#pragma once

#include <string>
#include <vector>

#include "costing/costing.hpp"

namespace scalepan {

/// The packs of one item change here, seen from the point before.
struct Breakpoint {
  Rational portions;
  std::string item;
  PacksTaken packs_before;
  PacksTaken packs;
};

struct Curve {
  std::vector<Rational> portions;
  std::vector<Rational> till;
  std::vector<Rational> used;
  std::vector<Rational> thrown;
  std::vector<Rational> borne;
  std::vector<Breakpoint> breakpoints;
  std::string currency;               // ISO 4217 code
  std::vector<std::string> unpriced;  // ids of lines that no point includes
};

/// Portions of another size, spare ones and losses would be lost where a costing is asked for other
/// numbers of portions. Throws `cost.curve`.
void expect_by_portions(const Recipe& recipe);

/// So many points are an oversight, not a curve.
inline constexpr std::size_t most_curve_points = 1'000'000;

/// Costs the recipe at each number of portions, in the order given.
/// Throws what `expect_by_portions` throws, `recipe.portions` for one
/// that is not above zero, and the errors of the covers.
[[nodiscard]] Curve cost_curve(const Costing& costing, const std::vector<Rational>& portions);

}  // namespace scalepan
