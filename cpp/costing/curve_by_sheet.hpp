// The curve of a costing with changed figures: its sheet is asked at every point.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "costing/costing.hpp"
#include "costing/curve_counts.hpp"
#include "costing/curve_points.hpp"

namespace scalepan {

struct SheetPoint {
  Costs costs;  // till, used and thrown
  Rational borne;
  std::vector<PacksTaken> packs;  // one a priced item
  std::vector<bool> even;         // whether nothing is left of them
};

struct SheetCurve {
  std::vector<std::string> items;  // the priced ones
  std::vector<SheetPoint> points;
};

/// `pulse` is called at every point. Throws what the figures hold, and `recipe.portions`.
[[nodiscard]] SheetCurve curve_by_sheet(const Costing& costing, const CurvePoints& points,
                                        const std::function<void(std::size_t)>& pulse);

}  // namespace scalepan
