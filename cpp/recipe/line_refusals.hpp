// Lines whose words give no amount that could be measured, and lines that are no ingredients.
#pragma once

#include <string_view>

#include "recipe/line_source.hpp"

namespace scalepan {

/// Throws `line.no_measure` (`butter size of an egg`), `line.relative` (`the weight of 8 eggs`),
/// `line.ratio` (`to every lb.`), `line.per_person`, `line.refers` (`of each of the following`) or
/// `line.rule` (`per portion`), with the offset of the words.
void expect_measurable(std::string_view text);

/// Whether a text without an amount is a heading: `TOPPING`, `For the sauce:`, `Filling for Cake`.
[[nodiscard]] bool is_heading(std::string_view text);

/// Whether a text stands between alternatives: `or`, `---`.
[[nodiscard]] bool is_separator(std::string_view text);

/// Throws `line.no_food` or `line.price` for a line whose words show that it is no ingredient:
/// `Serves 4`, `Page 42`, `3 for $5`, an address.
void expect_ingredient(std::string_view body, const LineSource& source);

/// Throws `line.no_food` for a name that cannot be one: it begins with a connecting word or a
/// sign, holds a number that was not read, is a bare unit, or names a quality (`kindness`).
/// `offset` is where it stands in the line.
void expect_food_name(std::string_view food, const LineSource& source, std::size_t offset);

/// `I cup milk`: whether a measure stands among the words of a food.
[[nodiscard]] bool names_measure(std::string_view food, const LineSource& source);

/// Throws `line.no_food` where the food behind a bare count holds a measure, and `unit.unknown`
/// where it begins with a misspelt one: `500 tbps leeks`.
void expect_no_unit_in(std::string_view food, const LineSource& source, std::size_t offset);

}  // namespace scalepan
