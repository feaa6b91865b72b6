// Baker's percentages: every weight as a percentage of all flours together, which are 100.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "recipe/recipe.hpp"

namespace scalepan {

/// A line such as `58 % water`, as so many percent of the flour; nothing for another line. Throws
/// what the line's errors are.
[[nodiscard]] std::optional<Line> read_percent_line(const LineInput& input, Reading reading,
                                                    const Quantity& flour, const Catalog& catalog);

/// Where lines are in baker's percent, `20 % starter` of a base could be of either whole. Throws
/// `base.percent` for it; `20 % of the starter` is a share of the base.
void expect_whole_is_told(const Line& base_line, Reading reading, const Quantity& flour);

/// The weight of all flours: a weight above zero. Throws `recipe.flour`.
[[nodiscard]] Quantity parse_flour(std::string_view text, Measures measures);

struct BakersPercent {
  std::string line;
  Rational percent;
};

/// Each line's weight against that of the flours, whose ids are given. Throws `recipe.flour` where
/// none is given or one is not there, and `batch.unknown` for a line without a weight.
[[nodiscard]] std::vector<BakersPercent> bakers_percents(const Recipe& recipe,
                                                         const std::vector<std::string>& flours);

}  // namespace scalepan
