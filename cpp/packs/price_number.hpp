// Prices and taxes as a price book writes them.
#pragma once

#include <string_view>

#include "exact/rational.hpp"

namespace scalepan {

/// A number not below zero, such as 1.05. Throws `price.unreadable` and `price.negative`, with an
/// offset.
[[nodiscard]] Rational read_price_number(std::string_view text);

/// A tax on the net price, and whether the price has it in it already.
struct PriceTax {
  Rational rate;
  bool included = true;
};

/// `7 %` and `7 % included`, or `19 % added`. Throws `price.tax`.
[[nodiscard]] PriceTax read_price_tax(std::string_view text);

}  // namespace scalepan
