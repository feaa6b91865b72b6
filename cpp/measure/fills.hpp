// Fills: the amount nearest to a wanted one that measures can give, in fewest fills.
//
// A measure is filled whole, any number of times or a limited one; a graduated one (a jug, a
// scale) is also read once at a mark below full. A fill or a reading counts as one piece.
//
// Of all sums the one nearest to the amount wins, of two equally near the larger (half up); of the
// ways to that sum the one with fewest pieces, then the larger reading, then the one with more of
// the larger measure, of two measures of one size the earlier.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "exact/rational.hpp"

namespace scalepan {

/// A measure filled whole: size above zero, `most` a whole number above zero.
struct FillSize {
  Rational size;
  std::optional<Rational> most;
};

/// The marks of a graduated measure below full: multiples of `step`, from `first` to `last`.
struct ReadingRange {
  Rational step;  // above zero
  Rational first;
  Rational last;
};

struct MeasureReading {
  std::size_t range = 0;  // in the order given
  Rational amount;
};

struct Filling {
  std::vector<Rational> counts;  // whole numbers, one a size, in the order given
  std::optional<MeasureReading> reading;
  Rational total;
};

/// Prepared once for the measures of a kitchen, then asked for any amount.
///
/// Why the answer is the nearest and the shortest. Call a measure better than another if it is
/// larger, or as large and earlier. Let c be any measure and d a better one that may be filled
/// without limit: d / gcd(c, d) fills of c make c / gcd(c, d) fills of d, which are no more pieces,
/// and the way with more of the better measure goes first. So a best way holds at most
/// d / gcd(c, d) - 1 fills of c, for every such d. Every measure but the best unlimited one, U, is
/// thereby bounded, and so is all that a best way holds beside U, by a figure B. The table lists
/// every sum the bounds allow (up to B, with a few U) with its best way; it is built measure by
/// measure, smallest first, keeping for each sum the fewest pieces, then most of the measure in
/// hand. Multiples of U are reachable, so the nearest sum lies within U / 2 of the amount; for an
/// amount above B + U its best way holds fills of U that can be taken off first and put back after,
/// and what is left is looked up. Without an unlimited measure the table lists every sum there is.
class FillFinder {
 public:
  /// At least one size. `most_pieces`, above zero, limits the pieces of an answer. Throws
  /// `measure.too_fine` where the sizes and steps have no common step that machine words can
  /// count, and `measure.too_many` where the table would take more than `most_ways` steps.
  FillFinder(std::span<const FillSize> sizes, std::span<const ReadingRange> ranges,
             std::optional<std::int64_t> most_pieces = {});

  /// Exact. The amount is not below zero.
  [[nodiscard]] Filling nearest(const Rational& amount) const;
  /// The smallest amount above nothing.
  [[nodiscard]] Filling smallest() const;

  static constexpr std::int64_t most_ways = 2'000'000;

 private:
  /// Sizes and limits on the common grid.
  struct Measure {
    std::size_t row;
    std::int64_t size;
    std::int64_t most;  // `unlimited` where there is no limit
  };
  struct Marks {
    std::int64_t step;
    std::int64_t first;
    std::int64_t last;
  };
  /// The best way to a sum by the measures so far: how often the last of them is in it.
  struct Way {
    std::int64_t total;
    std::int64_t pieces;
    std::int64_t count;
  };
  struct Span {
    std::int64_t below;
    std::optional<std::int64_t> above;
  };

  static constexpr std::int64_t unlimited = -1;

  void put_on_grid(std::span<const FillSize> sizes, std::span<const ReadingRange> ranges);
  void bound_counts();
  void bound_whole_fills();
  void build_table();
  [[nodiscard]] std::vector<Way> with_next(const Measure& measure) const;
  [[nodiscard]] bool may_hold(std::int64_t pieces) const;
  [[nodiscard]] std::int64_t largest_total() const;
  [[nodiscard]] Span around(const Rational& steps) const;
  [[nodiscard]] Filling shortest(std::int64_t total, const Rational& taken_off) const;

  Rational step_;
  std::size_t rows_ = 0;
  std::vector<Measure> measures_;  // the worst first
  std::vector<Marks> marks_;
  std::optional<std::int64_t> most_pieces_;
  std::optional<Measure> whole_;  // U, where an answer may hold any number of it
  Rational beside_whole_ = 0;     // B
  std::vector<std::vector<Way>> table_;
};

}  // namespace scalepan
