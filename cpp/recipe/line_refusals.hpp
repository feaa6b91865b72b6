// Lines whose words give no amount that could be measured, and lines that are no ingredients.
#pragma once

#include <string_view>

namespace scalepan {

/// Throws `line.no_measure` (`butter size of an egg`), `line.relative` (`the weight of 8 eggs`),
/// `line.ratio` (`to every lb.`), `line.per_person`, `line.refers` (`of each of the following`) or
/// `line.rule` (`per portion`), with the offset of the words.
void expect_measurable(std::string_view text);

/// Whether a text without an amount is a heading: `TOPPING`, `For the sauce:`, `Filling for Cake`.
[[nodiscard]] bool is_heading(std::string_view text);

/// Whether a text stands between alternatives: `or`, `---`.
[[nodiscard]] bool is_separator(std::string_view text);

/// Whether what is named is a quality, as joke recipes have it: `kindness`, `patience`.
[[nodiscard]] bool is_quality(std::string_view food);

}  // namespace scalepan
