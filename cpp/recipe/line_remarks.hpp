// What stands beside amount and food in a line, told apart by its words.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "measure/dimension.hpp"

namespace scalepan {

struct SecondMeasure;
struct WrittenLine;

/// `optional`, `if desired`.
[[nodiscard]] bool is_optional_mark(std::string_view text);

/// `to taste`, `as needed`: an amount left to the cook.
[[nodiscard]] bool is_wish(std::string_view text);

/// `more if liked`, `or more`: the amount is a least.
[[nodiscard]] bool is_more_mark(std::string_view text);

/// `or less`: the amount is a most.
[[nodiscard]] bool is_less_mark(std::string_view text);

/// Words for parts of a food and nothing else: `juice and rind`, `whites`, `the rinds of 2`.
[[nodiscard]] bool names_parts(std::string_view text);

/// `EP`, `A.P.`.
[[nodiscard]] std::optional<Stage> stage_mark(std::string_view text);

/// `peeled weight`: the stage that an amount is measured at.
[[nodiscard]] std::optional<Stage> measured_stage(std::string_view text);

/// `No. 107`, `p. 18`, `#1613`, `USDA`.
[[nodiscard]] bool is_reference(std::string_view text);

/// `e.g. pepper`, `such as cod`, `for dusting`.
[[nodiscard]] bool is_note(std::string_view text);

/// What `with`, `plus` or `and` adds where that has an amount of its own; else empty.
[[nodiscard]] std::string_view added_food(std::string_view text);

/// Whether two weights or two volumes of one amount lie more than a fifth of the larger apart
/// under all measures that could be meant.
[[nodiscard]] bool contradicts(const WrittenLine& line, const SecondMeasure& second);

/// The amount for a message: `1.5 L`, `2 to 3 cup`.
[[nodiscard]] std::string amount_text(const WrittenLine& line);

}  // namespace scalepan
