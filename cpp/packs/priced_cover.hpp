// Covers of quantities: a need, and packs with their prices.
#pragma once

#include <span>
#include <string>
#include <utility>
#include <vector>

#include "measure/quantity.hpp"
#include "packs/cover.hpp"

namespace scalepan {

struct PricedPack {
  std::string text;  // as written
  Quantity size;
  Quantity price;
};

struct PricedCover {
  std::vector<std::pair<Rational, std::string>> packs;  // those taken, in row order
  Quantity price;
  Quantity leftover;
};

/// The cheapest whole packs for a need. Throws the errors of CoverFinder, `cover.dimension` where
/// a pack is of another dimension or stage than the need, naming both, and `cover.money` where
/// prices are not in one currency.
[[nodiscard]] PricedCover cover(const Quantity& need, std::span<const PricedPack> packs);

}  // namespace scalepan
