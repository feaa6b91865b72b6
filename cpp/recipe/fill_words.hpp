// Words for how full a measure is or how large a piece: `heaping`, `scant`, `thick`.
#pragma once

#include <string_view>

#include "recipe/cursor.hpp"

namespace scalepan {

/// Takes the word where a unit follows (`heaping tbsp`, `thick slices`, `lg. can`), and moves past
/// it; empty where none does.
[[nodiscard]] std::string_view take_fill(Cursor& cursor);

/// `scant`, `heaping`: the whole text is such a word.
[[nodiscard]] bool is_fill(std::string_view text);

/// Takes the word where a number follows: `scant 1/4 tsp`.
[[nodiscard]] std::string_view take_fill_before_number(Cursor& cursor);

}  // namespace scalepan
