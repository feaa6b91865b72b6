// Why, of a basket: what a dish is charged, and how the packs for all dishes were chosen.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "costing/basket.hpp"
#include "costing/why.hpp"

namespace scalepan {

/// `till`, `used`, `thrown` and `borne` of the basket, the same of each dish (`pea_soup.till`), and
/// the figures of their lines (`pea_soup.onions.buy`).
[[nodiscard]] std::vector<std::string> cell_names(const Basket& basket);

/// Throws `why.unknown_cell` with the nearest names, and what `explain_line` throws.
[[nodiscard]] Why explain(const Basket& basket, std::string_view cell);

}  // namespace scalepan
