// Fields of a row, as price books and stock lists share them.
#pragma once

#include <string>
#include <string_view>

#include "exact/error.hpp"
#include "exact/text.hpp"
#include "measure/quantity.hpp"

namespace scalepan {

[[nodiscard]] inline bool is_there(const PlacedText& field) { return !trimmed(field.text).empty(); }

/// Throws `price.missing`.
void expect_there(const PlacedText& field, std::string_view name);

/// What `read` makes of the field's text; its errors leave with their place.
template <typename Read>
auto read_field(const PlacedText& field, Read read) {
  return located(field.place, field.text, [&] { return read(std::string_view(field.text)); });
}

/// Throws `price.stage`; `field` is the name of the field.
inline constexpr std::string_view keeps_choices = "keeps is yes, no, or a number of days";

[[nodiscard]] Stage read_stage(std::string_view text, std::string_view field);

/// The unit of a currency code; of an empty text that of no currency. Throws `price.currency`.
[[nodiscard]] Unit read_currency(std::string_view text);

/// A day as ISO 8601 has it, `2026-11-24`, without outer spaces; empty stays empty.
/// Throws `price.date` for another form and for days the calendar does not have.
[[nodiscard]] std::string date_text(std::string_view text);

}  // namespace scalepan
