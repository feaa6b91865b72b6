// Lines that take from a base: `300 g white sauce`, `3/5 of the white sauce`, `2 portions of
// pancakes`, `rest of the white sauce`.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "recipe/recipe.hpp"

namespace scalepan {

/// `white sauce` of `white_sauce`.
[[nodiscard]] std::string spoken(std::string_view name);

/// The line, where it takes a share, the rest or portions of one of the bases; else nothing. A
/// share or the rest is settled later. Throws `base.unknown` for the rest of something that is
/// none, `line.amount` for a share of zero, `base.extras` for a stage or state, and `base.rule`.
[[nodiscard]] std::optional<Line> read_base_share(const LineInput& input, Reading reading,
                                                  const std::vector<BaseRecipe>& bases);

/// The line, where its food is one of the bases; else nothing. Throws `base.measure` for an amount
/// by a measure the base does not state, `line.no_amount` for none, `base.extras`, and what the
/// errors of a line are.
[[nodiscard]] std::optional<Line> read_base_amount(const LineInput& input, Reading reading,
                                                   const std::vector<BaseRecipe>& bases,
                                                   const Catalog& catalog);

/// Gives shares and rests of each base their amounts. Throws what `settle_shares` throws, at the
/// place of the last line concerned.
void settle_base_lines(std::vector<Line>& lines, const std::vector<BaseRecipe>& bases);

/// What a line takes at its present amount, in batches of the written base.
[[nodiscard]] Rational batches_of(const Line& line, const BaseRecipe& base);

/// As `weight_of_unit`, of any line of a recipe with these bases; nothing of what is taken out
/// again, whatever it weighed before.
[[nodiscard]] UnitWeight weight_in_batch(const Line& line, const std::vector<BaseRecipe>& bases,
                                         const Catalog& catalog);

}  // namespace scalepan
