// Cash: the smallest amount that coins and notes of a currency can pay.
//
// Arithmetic goes by the minor units of ISO 4217; only the total of a bill, paid in cash, is
// rounded to what cash can pay.
#pragma once

#include <string>

#include "exact/rounding.hpp"
#include "measure/quantity.hpp"

namespace scalepan {

struct CashStep {
  Rational step;  // in whole units of the currency
  std::string source;
};

/// Throws `money.currency` for an amount that is not of one currency, or of one without coins.
[[nodiscard]] CashStep cash_step(const Quantity& money);

struct CashTotal {
  Quantity paid;
  Quantity error;  // paid less the exact total
  CashStep step;
};

/// The total of a bill as cash pays it. Which way a tie goes is for the mode to say; New Zealand
/// leaves it to the shop. Throws what `cash_step` throws.
[[nodiscard]] CashTotal cash_total(const Quantity& bill, Rounding mode);
/// By another step than today's, in whole units: 0.50 for Sweden until 2010. Throws
/// `number.rounding_step`.
[[nodiscard]] CashTotal cash_total(const Quantity& bill, Rounding mode, const CashStep& step);

}  // namespace scalepan
