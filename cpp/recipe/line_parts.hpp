// A line cut at its marks, and what may not hide in its parts.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "measure/measures.hpp"

namespace scalepan {

/// Every part is a view into the line's text.
struct LineParts {
  std::string_view main;         // amount and food
  std::string_view preparation;  // behind the first comma outside brackets
  std::string_view note;         // in brackets at the end of main or preparation
  std::string_view rule;         // behind the bar
};

/// Throws `line.bracket` for a bracket that is not closed, with its offset.
[[nodiscard]] LineParts cut_line(std::string_view text);

/// Words of letters and hyphens, in lower case.
[[nodiscard]] std::vector<std::string> words_of(std::string_view text);

/// The words that are preparations, less those that `not` or `to be` stands before.
[[nodiscard]] std::vector<std::string> preparations_in(std::string_view text);

/// Throws `line.second_amount` where a part of the text holds a further weight or volume, which
/// nothing would scale, and `line.rule` where it holds a rule that lacks its bar.
void expect_nothing_hidden(std::string_view text, std::string_view part, Measures measures);

}  // namespace scalepan
