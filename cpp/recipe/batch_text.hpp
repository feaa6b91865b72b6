// What a recipe's file says of its batch.
#pragma once

#include <optional>
#include <string_view>

#include "measure/quantity.hpp"

namespace scalepan {

/// `1.2 kg`, `3 L`, `24 pieces`, `24` (pieces), `12 portions`; without a stage. Throws
/// `batch.makes` for anything else or for none, and the errors of the amount reader.
[[nodiscard]] Quantity parse_makes(std::string_view text, Measures measures);

/// As `parse_makes`, of a pan, tray or oven; portions and pieces are whole. Throws `batch.load`
/// too.
[[nodiscard]] Quantity parse_capacity(std::string_view text, Measures measures);

/// `12 % of the raw batch`, `12 % of the cooked batch`: the weight after cooking over the weight
/// before. Throws `batch.loss`, also where it is not said what the percentage is of.
[[nodiscard]] Rational parse_loss(std::string_view text);

/// `2 trays`; nothing for another amount. Throws `batch.load` unless it is a whole number above
/// zero.
[[nodiscard]] std::optional<Rational> parse_trays(std::string_view text);

}  // namespace scalepan
