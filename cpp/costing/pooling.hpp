// Pooling: which lines of an item several dishes buy together.
//
// One lot of all lines is best where one kind of pack meets them all. Where it does not, because a
// line cannot be had by that kind (bunches beside grams) or because one dish alone would take a
// cheaper kind, lines are bought with those of the same kind, or by each dish for itself. So
// nothing is ever dearer, or without a price, that would not be so if bought apart.
#pragma once

#include <memory>
#include <vector>

#include "costing/costing.hpp"

namespace scalepan {

/// What the pools are chosen for.
struct PooledLines {
  std::vector<Line> lines;  // of all dishes
  std::vector<LineTerms> terms;
  std::vector<std::size_t> dish_of;                     // one a line
  std::vector<std::shared_ptr<const Costing>> apart{};  // one a dish, with its lines in this order
};

/// The lines bought together in the pools that come cheapest at the till; of pools that cost the
/// same, in the largest.
[[nodiscard]] Provisions pooled(const PooledLines& pooled,
                                const std::shared_ptr<const NamedPrices>& prices,
                                CostOptions options);

}  // namespace scalepan
