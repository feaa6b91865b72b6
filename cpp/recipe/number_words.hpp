// Numbers written in words: `two`, `half`, `three quarters`, `one and a half`.
#pragma once

#include <optional>
#include <string_view>

#include "exact/rational.hpp"
#include "recipe/cursor.hpp"

namespace scalepan {

/// `one` to `twenty`, the tens, `hundred`.
[[nodiscard]] std::optional<Rational> cardinal(std::string_view word);

/// `third`, `quarters`: the name of a fraction.
[[nodiscard]] bool is_fraction_name(std::string_view word);

/// Reads the `half-` of `half-pint`, a fraction bound to a unit, and moves past it.
[[nodiscard]] std::optional<Rational> read_bound_fraction(Cursor& cursor);

/// Reads a number in words and moves past it; nothing where none starts. Throws `number.doubtful`
/// for two numbers in one word (`two-three`), with its offset. An article alone is no
/// number here, `a half` and `half a` are.
[[nodiscard]] std::optional<Rational> read_number_words(Cursor& cursor);

/// Reads `and a half`, `and 1/2`, `and one half` behind a whole number; nothing where none starts.
[[nodiscard]] std::optional<Rational> read_fraction_in_words(Cursor& cursor);

}  // namespace scalepan
