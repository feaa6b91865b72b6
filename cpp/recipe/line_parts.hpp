// Parts of a food named before its amount: `juice of 2 lemons`.
#pragma once

#include <optional>
#include <string_view>

#include "recipe/number_phrase.hpp"

namespace scalepan {

/// `juice of`, `Grated rind and juice` where a number follows; moves to it. Empty where none is.
[[nodiscard]] std::string_view read_part_lead(Cursor& cursor, DecimalMark mark);

/// As `read_number_phrase`; nothing, and no error, for a number that cannot be read.
[[nodiscard]] std::optional<NumberPhrase> number_or_nothing(Cursor& cursor, DecimalMark mark);
/// The number that a text begins with.
[[nodiscard]] std::optional<NumberPhrase> number_or_nothing(std::string_view text,
                                                            DecimalMark mark = DecimalMark::point);

}  // namespace scalepan
