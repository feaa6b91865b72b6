// Selling prices: what a portion is sold for, with and without tax, and what that leaves.
//
//   food cost % = food cost / net price     gross profit % = 100 - food cost %
//   contribution = net price - food cost    gross price = net price * (1 + tax)
#pragma once

#include <optional>

#include "measure/quantity.hpp"

namespace scalepan {

/// What a portion costs and is sold for. Shares, not percentages; money of one currency a portion,
/// or of one portion.
struct Selling {
  Quantity food_cost;
  Quantity net;
  Quantity tax;
  Quantity gross;

  [[nodiscard]] Rational food_cost_share() const;
  [[nodiscard]] Rational gross_profit_share() const;
  [[nodiscard]] Quantity contribution() const;
};

/// At a price with tax in it. Throws `sell.price` unless it is above zero, `sell.tax` for a
/// tax below zero or above 100 %, and `quantity.subtract` for another currency.
[[nodiscard]] Selling selling_at(const Quantity& food_cost, const Quantity& gross,
                                 const Rational& tax);

struct PriceAsked {
  Rational food_cost_share;        // of the net price
  Rational tax;                    // of the net price
  std::optional<Rational> ending;  // of the gross price: 0.95 for prices such as 4.95
  Rational step = 1;               // with an ending of 80, 100 for prices such as 1280
};

struct PriceFound {
  Selling exact;    // at the share asked for
  Selling shelf;    // at the gross price of the ending, or the exact one where none is asked for
  Quantity raised;  // the shelf's gross price less the exact one, never below zero
};

/// The price at which the food cost is such a share, raised to the next price of the ending.
/// Throws `sell.share` unless the share is above 0 and at most 1, `sell.tax`, and `sell.ending`
/// unless it lies from 0 to below the step, both in whole minor units of the currency (ISO 4217).
[[nodiscard]] PriceFound price_for_share(const Quantity& food_cost, const PriceAsked& asked);

}  // namespace scalepan
