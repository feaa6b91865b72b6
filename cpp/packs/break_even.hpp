// Break-even: up to which price a pack is among the cheapest for a need.
//
// With k of the pack at the price p and the rest met by other packs, a need costs k p + rest(k).
// The pack is worth its price where the least of that over k is not above what the others alone
// take, so the highest such p is the greatest (others - rest(k)) / k. It is found by covers: at a
// price that is too low the cheapest k gives a higher one, and the last such price is exact.
#pragma once

#include <optional>
#include <span>

#include "packs/cover_function.hpp"
#include "packs/priced_cover.hpp"

namespace scalepan {

/// Of one purchase of a row: the one of fewest packs, while others of its row are left out.
struct BreakEvenPrice {
  // At more than this it is in no cheapest cover of the need; nothing where it is in none even if
  // it costs nothing, since its limit leaves a rest that comes dearer than what else there is.
  std::optional<Rational> price;
  Cover cover;         // of the need at this price, by the rules for ties
  bool taken = false;  // whether that cover holds it
};

/// `beat` is what else would meet the need, if anything would. Nothing where nothing does without
/// the pack, which is then bought at any price. Throws `cover.need` unless the need is above zero,
/// `cover.row` where no purchase is of the row, and the errors of covers.
[[nodiscard]] std::optional<BreakEvenPrice> break_even_price(
    std::span<const Purchase> purchases, std::size_t row, const Rational& need,
    const std::optional<Rational>& beat = std::nullopt);

/// The price at which the pack costs as much for what it holds as the best of the other rows, as if
/// packs could be divided. Nothing where there are no others. Throws `cover.row`.
[[nodiscard]] std::optional<Rational> break_even_by_size(std::span<const Purchase> purchases,
                                                         std::size_t row);

/// The same of quantities.
struct PricedBreakEven {
  bool only = false;  // no other pack meets the need
  std::optional<Quantity>
      price;           // nothing where it is the only one, or in no cover even for nothing
  PacksTaken packs;    // for the need at this price, by the rules for ties
  bool taken = false;  // whether they hold the pack
  std::optional<Quantity> by_size;  // of what it holds, at the best unit price of the others
};

/// `purchases` are all packs; the price of the row asked for counts for nothing. Throws the errors
/// of `PricedFunction` and of `break_even_price`.
[[nodiscard]] PricedBreakEven break_even(const Quantity& need,
                                         const std::vector<PricedPurchase>& purchases,
                                         std::size_t row);

}  // namespace scalepan
