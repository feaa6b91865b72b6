// Covers of quantities: a need, and packs with their prices.
#pragma once

#include <memory>
#include <optional>
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

/// A pack, or several at one price, with what limits them.
struct PricedPurchase {
  std::string text;                 // of one pack, as written
  Quantity size;                    // of one pack
  Quantity price;                   // of all its packs
  std::size_t row = 0;              // whose packs they are, counted from 0
  Rational packs = 1;               // bought at once; whole, at least 1
  Rational least = 1;               // so many purchases or none; whole, at least 1
  std::optional<Rational> limit{};  // at most so many purchases; whole, not below `least`
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

/// The needs above `after` and up to `upto` are met by one cover; its leftover is that of `upto`.
struct PricedStep {
  Quantity after;
  Quantity upto;
  PricedCover cover;
};

/// A `CoverFunction` of quantities. Shared by copies, and asked from any number of threads.
class PricedFunction {
 public:
  /// Throws the errors of CoverFunction, `cover.row` where a row has no purchase,
  /// `cover.dimension` where packs are of two dimensions or stages, naming both, and `cover.money`
  /// where prices are not in one currency.
  explicit PricedFunction(std::vector<PricedPurchase> purchases,
                          CoverOrder order = CoverOrder::price_first);

  /// Throws as `CoverFunction::at`, and `cover.dimension`.
  [[nodiscard]] PricedCover at(const Quantity& need) const;
  /// Throws as `CoverFunction::steps`, and `cover.dimension`.
  [[nodiscard]] std::vector<PricedStep> steps(const Quantity& low, const Quantity& high) const;
  /// What the function repeats by, and from which need on; none where it ends.
  [[nodiscard]] std::optional<std::pair<Quantity, Quantity>> period() const;
  /// All that can be bought, where that has an end.
  [[nodiscard]] std::optional<Quantity> most() const;
  [[nodiscard]] std::string kernel() const { return function_->kernel(); }

  [[nodiscard]] const CoverFunction& function() const { return *function_; }
  /// What it was made of.
  [[nodiscard]] const std::vector<PricedPurchase>& purchases() const { return purchases_; }
  [[nodiscard]] CoverOrder order() const { return order_; }
  /// A cover by these packs, its leftover in the unit.
  [[nodiscard]] PricedCover told(const Cover& cover, Unit unit) const;
  /// Throws `cover.dimension` where the packs cannot meet such a need.
  void expect_alike(const Quantity& need) const;

 private:
  std::vector<PricedPurchase> purchases_;
  CoverOrder order_;
  std::vector<std::string> row_texts_;
  std::shared_ptr<const CoverFunction> function_;
};

/// The cheapest whole packs for a need, as a `PricedFunction` finds them.
[[nodiscard]] PricedCover cover(const Quantity& need, std::span<const PricedPack> packs);

}  // namespace scalepan
