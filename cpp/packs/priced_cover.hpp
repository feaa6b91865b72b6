// Covers of quantities: a need, and packs with their prices.
#pragma once

#include <span>
#include <string>
#include <utility>
#include <vector>

#include "measure/quantity.hpp"
#include "packs/cover_function.hpp"

namespace scalepan {

struct PricedPack {
  std::string text;  // as written
  Quantity size;
  Quantity price;
};

/// How many of which packs, as written.
using PacksTaken = std::vector<std::pair<Rational, std::string>>;

/// `11 x 1 kg + 1 x 500 g`.
[[nodiscard]] std::string text_of(const PacksTaken& packs);

struct PricedCover {
  PacksTaken packs;  // in row order
  Quantity price;
  Quantity leftover;
};

/// The cheapest whole packs for a need. Throws the errors of CoverFunction, `cover.dimension` where
/// a pack is of another dimension or stage than the need, naming both, and `cover.money` where
/// prices are not in one currency.
[[nodiscard]] PricedCover cover(const Quantity& need, std::span<const PricedPack> packs);

}  // namespace scalepan
