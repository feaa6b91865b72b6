// Amounts as written: one number, a range, a sum of units, or so many packs of so much.
//
//   amount   = [ number "x" ] number [ to number ] [ unit { number unit } ]
//   to       = "to" | "-" | "–" | "—"
//
// Units of a sum are of one dimension and grow smaller: `1 lb 4 oz`. `x` may be `×`.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "measure/quantity.hpp"

namespace scalepan {

/// An amount as it was read. `low` and `high` differ for a range only.
struct Amount {
  Rational times = 1;  // of `2 x 400 g`: 2
  Rational low;        // coherent, `times` included
  Rational high;
  std::optional<Unit> unit;  // nothing for a bare number

  [[nodiscard]] bool is_range() const { return !(low == high); }
};

/// How units are read: any unit with stages and products, or one kitchen unit as in a recipe line.
enum class UnitStyle : std::uint8_t { full, kitchen };

/// Reads an amount at `position` and moves past it; nothing where no number starts there.
/// Throws the errors of the number and unit readers, and `amount.doubtful`, with an offset.
[[nodiscard]] std::optional<Amount> read_amount(std::string_view text, std::size_t& position,
                                                Measures measures, UnitStyle style);

/// The whole text as one quantity, `1 1/2 cup`, `5 kg EP`, `1 lb 4 oz`, `2 x 400 g`, `40`.
/// Throws what `read_amount` throws, `amount.unreadable`, and `amount.range` for a range.
[[nodiscard]] Quantity parse_quantity(std::string_view text,
                                      Measures measures = Measures::unstated);

}  // namespace scalepan
