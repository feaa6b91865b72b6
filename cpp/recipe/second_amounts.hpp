// Amounts in a line beside its own: what a recipe cannot scale, and second measures that the facts
// of the food can check.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "food/catalog.hpp"
#include "recipe/line.hpp"
#include "recipe/written_line.hpp"

namespace scalepan {

/// The words of a text that are preparations, less those that `not` or `to be` stands before.
[[nodiscard]] std::vector<std::string> preparations_in(std::string_view text);

/// Throws `line.second_amount` where a remark of the line holds a further weight or volume, which
/// nothing would scale, and `line.rule` where it holds a rule that lacks its bar, with the offset
/// of the remark in the line's text.
void expect_nothing_beside(const WrittenLine& line, std::string_view text);

/// Checks a measure of another kind against the line's amount by the facts of the food: the doubt
/// in words where the two lie more than a fifth apart, empty where they agree or no fact links
/// them. Throws `line.second_measure` where one is more than twice the other.
[[nodiscard]] std::string doubt_of(const Line& line, const SecondMeasure& second,
                                   const Catalog& catalog);

}  // namespace scalepan
