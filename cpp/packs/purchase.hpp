// What can be bought of one item: packs, and whatever else an offer makes of them.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "exact/rational.hpp"

namespace scalepan {

/// A thing that can be bought any number of times. A plain pack is a purchase that counts as one
/// pack of its row; `3 for 2` is one more purchase that counts as three packs of the same row.
struct Purchase {
  Rational size;                    // above zero, in one unit for all purchases
  Rational price;                   // of this purchase, not below zero; in one unit as well
  std::size_t row = 0;              // counted from 0
  Rational packs = 1;               // of that row; whole, at least 1
  Rational least = 1;               // bought so many times or not at all; whole, at least 1
  std::optional<Rational> limit{};  // at most so many times; whole, not below `least`
  // Of the purchases with one such number only one is bought, once, whatever `least` and `limit`.
  std::optional<std::size_t> one_of{};
};

/// Throws `cover.no_packs`, `cover.pack_size`, `cover.price` and `cover.count`.
void expect_valid(std::span<const Purchase> purchases);

/// What decides between covers, one thing after the other; last comes more of an earlier row.
enum class CoverOrder {
  price_first,     // price, leftover, number of packs
  leftover_first,  // leftover, price, number of packs
};

}  // namespace scalepan
