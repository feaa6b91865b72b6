// Covers: the cheapest whole packs whose sum is at least the need.
//
// Among covers of one price the one with least left over wins, then the one with fewest packs,
// then the one that takes more of an earlier row.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "exact/rational.hpp"

namespace scalepan {

/// One pack on offer; size above zero, price not below zero, each in one unit for all packs.
struct Pack {
  Rational size;
  Rational price;
};

struct Cover {
  std::vector<Rational> counts;  // whole numbers, one a pack, in the order given
  Rational price;
  Rational total;     // what the packs hold
  Rational leftover;  // total less need
};

/// Prepared once for a list of packs, then asked for any need.
///
/// An optimal cover is some packs other than the one with the best unit price, filled up with
/// that one. Of the others it holds fewer than the best pack has grid steps: any more would
/// contain a part that whole best packs replace at no more cost. So the search is a dynamic
/// programme over the total of the others, in ascending order, cut off where the price so far
/// plus the best unit price for the rest exceeds the best cover known.
class CoverFinder {
 public:
  /// Throws `cover.no_packs`, `cover.pack_size`, `cover.price`, and `cover.too_fine` where the
  /// sizes or prices have no common step that machine words can count.
  explicit CoverFinder(std::span<const Pack> packs);

  /// Exact. A need of zero or less takes no packs. Throws `cover.too_many` where more than
  /// `most_totals` totals would have to be looked at.
  [[nodiscard]] Cover cheapest(const Rational& need) const;

  static constexpr std::size_t most_totals = 2'000'000;

 private:
  struct Candidate;
  class Search;

  /// Sizes and prices in grid steps, without the packs that no best cover holds.
  struct Choice {
    std::size_t row;
    std::int64_t size;
    std::int64_t price;
  };

  void choose_best();
  void drop_beaten();
  [[nodiscard]] Cover cover_of(const std::vector<Rational>& counts, const Rational& need) const;

  std::vector<Pack> packs_;
  Rational size_step_;
  Rational price_step_;
  Choice best_{};
  std::vector<Choice> others_;  // in row order
};

/// One need, one list of packs.
[[nodiscard]] Cover cheapest_cover(const Rational& need, std::span<const Pack> packs);

}  // namespace scalepan
