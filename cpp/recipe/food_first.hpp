// Lines with the food in front and the amount behind, as in two columns.
#pragma once

#include <optional>
#include <string_view>

#include "recipe/line_source.hpp"

namespace scalepan {

/// An amount at the end of a line: `1 small (about 1 pound)`, `As desired`.
struct Tail {
  MeasurePhrase phrase;   // vague where the amount is left to the cook
  std::string_view rest;  // a size, brackets, remarks behind commas, or the wish
};

struct FoodFirst {
  std::string_view food;
  std::string_view tail;
  Tail amount;
};

/// The whole text as an amount with what may stand behind one; nothing where it is none. Throws
/// `line.two_units`, `line.sum` and `amount.doubtful`, with the offset.
[[nodiscard]] std::optional<Tail> read_tail(std::string_view text, const LineSource& source);

/// Cuts the body at a wide gap, a tab, a dash, a colon or before a number, the first of these that
/// leaves an amount behind it. Throws what `read_tail` throws.
[[nodiscard]] std::optional<FoodFirst> read_food_first(std::string_view body,
                                                       const LineSource& source);

/// Throws `line.sum` where the text adds something of another kind: `+ 9 cups` behind cans.
void expect_no_sum(std::string_view rest, const LineSource& source);

/// Whether a number stands in the text behind a wide gap, or with a unit of weight, volume or
/// count.
[[nodiscard]] bool holds_amount(std::string_view text);

/// Whether a number starts the text; a number that cannot be read is none.
[[nodiscard]] bool starts_with_number(std::string_view text, std::size_t& position,
                                      DecimalMark mark = DecimalMark::point);

}  // namespace scalepan
