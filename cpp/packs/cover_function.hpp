// Cover functions: the cheapest whole packs whose sum is at least the need, for every need.
//
// Price and packs of one item are a step function of the need. Among covers of one price the one
// with least left over wins, then the one with fewest packs, then the one that takes more of an
// earlier row; or the least leftover goes before the price. All of that is decided inside the
// programme, which works on steps, not on grid points: it takes as long for pounds against grams
// as for kilograms. From some need on every cover is an earlier one and whole fillers, so that
// one division finds it. `stems.hpp` has the argument.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "packs/cover_table.hpp"
#include "packs/purchase.hpp"

namespace scalepan {

struct Cover {
  std::vector<Rational> counts;  // whole packs, one count a row
  Rational price;
  Rational total;                // what the packs hold
  Rational leftover;             // total less need
  std::vector<Rational> bought;  // how many of each purchase, in the order given
};

/// The needs above `after` and up to `upto` are met by one cover, whose leftover is that of `upto`:
/// nothing.
struct CoverStep {
  Rational after;
  Rational upto;
  Cover cover;
};

/// For every need above `from`: the cover is that of a need smaller by `size`, and one purchase.
struct CoverPeriod {
  Rational from;
  Rational size;
  std::size_t purchase = 0;
};

/// Made once for the offers of an item, then asked for any need, from any number of threads: it
/// finds steps as they are asked for, under a lock, and once all are known nothing changes and no
/// lock is taken.
///
/// Time and memory are bounded: `CoverWork` counts covers kept and looked at. Numbers are machine
/// words where no sum can leave one, else fractions; the answers are the same.
class CoverFunction {
 public:
  /// Throws `cover.no_packs`, `cover.pack_size`, `cover.price`, `cover.count`, and `cover.too_many`
  /// where limits and least numbers make too many branches.
  explicit CoverFunction(std::span<const Purchase> purchases,
                         CoverOrder order = CoverOrder::price_first);
  ~CoverFunction();
  CoverFunction(CoverFunction&&) noexcept;
  CoverFunction& operator=(CoverFunction&&) noexcept;

  /// Exact. A need of zero or less takes no packs. Throws `cover.limit` where all purchases are
  /// limited and cannot meet the need, saying the most that can be bought, and `cover.too_many`.
  [[nodiscard]] Cover at(const Rational& need) const;

  /// The step that meets the need, which must be above zero. Throws as `at`, and `cover.need`.
  [[nodiscard]] CoverStep step(const Rational& need) const;
  /// The step that meets the needs right above this one, which must not be below zero; none where
  /// there is not so much to buy. Throws `cover.too_many`.
  [[nodiscard]] std::optional<CoverStep> step_above(const Rational& need) const;
  /// Steps that meet needs above `low`, up to that of `high` or to the last there is.
  /// Throws `cover.need` where low is below zero or high not above it, and `cover.too_many`.
  [[nodiscard]] std::vector<CoverStep> steps(const Rational& low, const Rational& high) const;

  /// None where the function ends. Throws `cover.too_many`.
  [[nodiscard]] std::optional<CoverPeriod> period() const;
  /// All that can be bought, where that has an end.
  [[nodiscard]] std::optional<Rational> most() const;

  /// What it was made for.
  [[nodiscard]] const std::vector<Purchase>& purchases() const;

  /// The way taken and its numbers: `steps in words` where every step is listed, `stems in words`
  /// where those would be too many and each need is met from the stems, `... in fractions`.
  [[nodiscard]] std::string kernel() const;

  /// For many needs: where all steps are known, in words. Else null.
  [[nodiscard]] const CoverTable* table() const;
  /// What needs and prices of the table count.
  [[nodiscard]] const Rational& size_step() const;
  [[nodiscard]] const Rational& price_step() const;

 private:
  class Solver;
  std::unique_ptr<Solver> solver_;
};

/// The error of `at` for needs beyond all limits, in the words of whoever knows the unit.
[[noreturn]] void fail_limit(const std::string& most, const std::string& need);

}  // namespace scalepan
