// Whether a cover function runs on machine words, and the steps they count.
#pragma once

#include <span>
#include <vector>

#include "packs/cover_programme.hpp"

namespace scalepan {

/// Words count common steps of all sizes and of all prices. They are taken where the size, price
/// and number of packs of every purchase, and of all that a limit or a least number bundles, stay
/// at or below 2^40 steps: at most 2^21 covers are kept, and each adds at most that much to an
/// earlier one or to a filler, so that no sum reaches 2^62.
struct CoverNumbers {
  static constexpr std::int64_t most_steps = std::int64_t{1} << 40U;

  bool words = false;
  Rational size_step = 1;
  Rational price_step = 1;
};

[[nodiscard]] CoverNumbers numbers_for(std::span<const Purchase> purchases);

/// Only where `numbers.words`.
[[nodiscard]] std::vector<LimitedThing<std::int64_t>> word_things(
    std::span<const Purchase> purchases, const CoverNumbers& numbers, CoverOrder order);
[[nodiscard]] std::vector<LimitedThing<Rational>> fraction_things(
    std::span<const Purchase> purchases, CoverOrder order);

}  // namespace scalepan
