// Why: how a figure of a line of a basket came about, as a tree down to facts and prices.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "costing/costing.hpp"
#include "sheet/why_tree.hpp"

namespace scalepan {

/// A line of provisions, and the recipe that it belongs to.
struct BoughtLine {
  const Recipe& recipe;
  const Provisions& provisions;
  std::size_t index = 0;
};

/// The figures of a line, without its id; those of a line without a price or an amount are fewer.
[[nodiscard]] std::vector<std::string> figure_names(const BoughtLine& line);
/// Whether a line has, or lacks only for want of a price or an amount, such a figure.
[[nodiscard]] bool has_figure(const BoughtLine& line, std::string_view what);
/// Throws `why.unmeasured` and `why.unpriced`.
[[nodiscard]] Why explain_line(const BoughtLine& line, std::string_view what);

}  // namespace scalepan
