#include "costing/curve_counts.hpp"

#include <algorithm>
#include <utility>

namespace scalepan {

std::optional<CheapestCount> cheapest_count(const CurvePoints& points,
                                            const std::vector<Rational>& costs) {
  std::optional<CheapestCount> best;
  CountRuns runs;
  for (const std::size_t place : points.ascending()) {
    Rational each = costs[place] / points[place];
    if (best && each > best->per_portion) continue;
    if (!best || each < best->per_portion) {
      best = CheapestCount{points[place], std::move(each), {}};
      runs = {};
    }
    runs.add(points[place]);
  }
  if (best) best->counts = runs.runs();
  return best;
}

std::vector<DominatedCounts> dominated_counts(const CurvePoints& points,
                                              const std::vector<Rational>& costs) {
  // From the largest down: those that cost less than all larger ones. The last of them that costs
  // no more than a smaller number is the largest of all that do.
  std::vector<std::size_t> least;
  std::vector<DominatedCounts> found;
  std::vector<std::size_t> places = points.ascending();
  std::ranges::reverse(places);
  bool neighbour = false;  // is the last one found
  for (const std::size_t place : places) {
    const auto by = std::ranges::partition_point(
        least, [&](std::size_t larger) { return costs[larger] > costs[place]; });
    if (by == least.end()) {
      least.push_back(place);
      neighbour = false;
      continue;
    }
    const Rational portions = points[place];
    if (neighbour && found.back().by == points[*by]) {
      found.back().first = portions;
    } else {
      found.push_back({portions, portions, points[*by], costs[*by]});
    }
    neighbour = true;
  }
  std::ranges::reverse(found);
  return found;
}

}  // namespace scalepan
