// Amounts told to people: short where that is exact, else rounded and marked so.
#pragma once

#include <string>

#include "measure/quantity.hpp"

namespace scalepan {

struct Told {
  std::string text;
  Quantity error;  // told less exact; zero where the text is exact

  [[nodiscard]] bool is_exact() const { return error.coherent().is_zero(); }
};

/// In kg or L from 1000 g or mL on, in g or mL below; other units stay.
[[nodiscard]] Quantity in_handy_unit(const Quantity& amount);

/// `5 kg`, `2 1/4 tsp`, `6 eggs` less the noun; without stage. A figure that is neither a decimal
/// of at most 3 places nor a fraction that spoons and cups have (halves, thirds, quarters, sixths,
/// eighths) is rounded half up to 4 digits and begins with `≈`. Money is told as `tell_money` has
/// it, with the `≈` where that is not exact.
[[nodiscard]] Told tell(const Quantity& amount);

/// `11.50 GBP`, rounded half up to the currency's minor unit (ISO 4217); a price in no currency
/// has no code.
[[nodiscard]] Told tell_money(const Quantity& money);

}  // namespace scalepan
