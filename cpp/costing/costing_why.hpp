// Why, of a costing: its sheet tells how a figure came about, down to facts and prices.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "costing/costing.hpp"
#include "sheet/why_tree.hpp"

namespace scalepan {

/// The cells of its sheet that have a figure; `costing/layout.hpp` says what they are.
[[nodiscard]] std::vector<std::string> cell_names(const Costing& costing);

/// Throws `why.unknown_cell` with the nearest names, `why.unmeasured` and `why.unpriced` for a line
/// that has no such figure.
[[nodiscard]] Why explain(const Costing& costing, std::string_view cell);

}  // namespace scalepan
