// Numbers of portions to look for on a curve: the cheapest a portion, and those that a larger batch
// beats.
#pragma once

#include <optional>
#include <vector>

#include "costing/curve_points.hpp"

namespace scalepan {

/// Where a portion costs least.
struct CheapestCount {
  Rational portions;  // the smallest of them
  Rational per_portion;
  std::vector<CountRun> counts;  // all of them
};

/// Neighbours on the curve that are dominated by the same larger number: it costs no more.
struct DominatedCounts {
  Rational first;
  Rational last;
  Rational by;     // the largest of the curve that costs no more than any of them
  Rational costs;  // what that one costs
};

/// `costs` has one entry a point. None where there is no point.
[[nodiscard]] std::optional<CheapestCount> cheapest_count(const CurvePoints& points,
                                                          const std::vector<Rational>& costs);
/// In ascending order.
[[nodiscard]] std::vector<DominatedCounts> dominated_counts(const CurvePoints& points,
                                                            const std::vector<Rational>& costs);

}  // namespace scalepan
