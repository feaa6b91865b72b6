// Words that a recipe line has beside amounts and foods. All lists are common practice, no
// published source.
#pragma once

#include <optional>
#include <string_view>

#include "measure/dimension.hpp"

namespace scalepan {

/// The stage that a preparation brings a food to: `peeled` EP, `boiled` cooked, `drained`
/// drained, `washed` none; nothing for a word that is no preparation.
[[nodiscard]] std::optional<Stage> stage_of_preparation(std::string_view word);

/// `small`, `medium`, `large` ...: the size of a piece.
[[nodiscard]] bool is_size_word(std::string_view word);

/// `large` of `lg`; any other word as it is.
[[nodiscard]] std::string_view size_written_out(std::string_view word);

/// `cold`, `fresh`, `stale`: how a food is, which its name does not tell.
[[nodiscard]] bool is_condition(std::string_view word);

/// Words before which a condition is a part of the name: `hot sauce`, `cold cuts`.
[[nodiscard]] bool makes_a_name(std::string_view word);

/// `finely`, `well`, `very`: they go with the word behind them.
[[nodiscard]] bool is_adverb(std::string_view word);

/// A preparation, or any other participle: `smoked`, `chopped`; no `seed` or `weed`.
[[nodiscard]] bool is_participle(std::string_view word);

/// `red`, `sweet`, `English`: no food without the word behind it.
[[nodiscard]] bool is_adjective(std::string_view word);

/// What of a food is wanted, in the singular: `juice`, `rind`, `white`. Empty for other words.
[[nodiscard]] std::string_view part_of_food(std::string_view word);

/// `mix`, `bake`: what a step of the method begins with.
[[nodiscard]] bool is_method_verb(std::string_view word);

/// Whether words joined by `and` make one food: `bread and butter pickles`, `macaroni and cheese`.
[[nodiscard]] bool belong_together(std::string_view first, std::string_view second);

}  // namespace scalepan
