// The till of a curve in machine words: an item whose need is straight is a sum of stairs, and any
// other is followed from cover to cover.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "costing/item_course.hpp"
#include "exact/stairs.hpp"

namespace scalepan {

/// Which way the till goes, decided before any of it is computed.
struct TillKernel {
  std::optional<StairSum> sum;              // in `step`; none: in fractions
  std::vector<const ItemCourse*> by_cover;  // beside it, in `step` too
  Rational step = 1;                        // of money
  std::string text;                         // the way, or why it is not in words
};

[[nodiscard]] TillKernel till_kernel(const std::vector<ItemCourse>& items,
                                     const CurvePoints& points, Unit money);

}  // namespace scalepan
