// Ways to buy: what the price and the terms of an offer come to, as purchases of a cover.
#pragma once

#include <string>
#include <vector>

#include "packs/offer.hpp"
#include "packs/purchase.hpp"

namespace scalepan {

/// Whether prices are counted with their tax, or without it by those who get it back.
enum class Taxes { with, without };

/// What one pack costs. A row that states no tax is taken as it stands.
[[nodiscard]] Rational with_taxes(const Rational& price, const Offer& offer, Taxes taxes);

struct WayToBuy {
  Purchase purchase;
  std::string text;  // the terms it goes by; empty for a pack at its price
};

/// The purchases of a row whose packs are of one size. Exactly: of a row with a limit and other
/// terms each number of packs is one purchase at its least price, of which one is made.
/// Throws `price.limit` where those would be too many.
[[nodiscard]] std::vector<WayToBuy> ways_to_buy(const Offer& offer, const Rational& size,
                                                std::size_t row, Taxes taxes);

}  // namespace scalepan
