// Temperatures inside the text of a method.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exact/number_text.hpp"

namespace scalepan {

/// The text with the other scale behind each temperature: one with a degree sign, or a scale
/// written out, or `180C` and `425 F` where three figures are attached to the letter or `at` or
/// `to` stands before them, so that no cup can be meant. A difference, `by 10 °C`, `within 5 °C
/// of`, `a drop of 5 °F`, `20 °C hotter`, is told as a difference. What may be either stays.
/// Throws `temperature.below_zero` and `temperature.pair` with the offset.
[[nodiscard]] std::string with_both_scales(std::string_view text,
                                           DecimalMark mark = DecimalMark::point);

/// What looks like a temperature and stays in one scale or in none: `350 degrees`, `gas mark 4`,
/// `1,5 °C` where a comma parts no decimals. Throws what `with_both_scales` throws.
[[nodiscard]] std::vector<std::string> untold_temperatures(std::string_view text,
                                                           DecimalMark mark = DecimalMark::point);

}  // namespace scalepan
