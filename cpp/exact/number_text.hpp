// Numbers as text: the amount grammar (as a cook writes), the formula grammar, and printing.
//
// Amount grammar, one number:
//
//   amount   = [ "-" ] ( mixed | fraction | decimal | whole )
//   mixed    = whole joint fraction                          "1 1/2", "1-1/2", "1&1/2", "1½"
//   joint    = " " { " " } | "-" | { " " } "&" { " " } | ""  "" only before vulgar and raised ones
//   fraction = digits slash digits | vulgar | raised         "1/3", "⅓", "¹⁄₃"; of a mixed number:
//                                                            below 1
//   raised   = raised digits slash ( lowered digits | digits )
//   decimal  = digits point digits | point digits            "2.5", ".35"
//   whole    = digits
//   slash    = "/" | U+2044 | U+2215
//   point    = ".", or "," where the text's own file says so
//
// The other mark inside a number is refused: it means thousands to one reader and a decimal to
// another.
//
// Formula grammar (here `1-1/2` is a half):
//
//   sum      = product { ( "+" | "-" ) product }
//   product  = signed { ( "*" | "/" ) signed }
//   signed   = { "-" } atom
//   atom     = "(" sum ")" | literal
//   literal  = digits [ "." digits ] [ ( "e" | "E" ) [ "+" | "-" ] digits ] | "." digits [ ... ]
//
// Limits of both: `most_digits` digits on either side of the point, `most_exponent`, `most_depth`
// open brackets.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "exact/rational.hpp"

namespace scalepan {

inline constexpr std::size_t most_digits = 1000;
inline constexpr int most_exponent = 1000;
inline constexpr int most_depth = 100;

/// What stands before the decimals of a number.
enum class DecimalMark : std::uint8_t { point, comma };

/// Reads one amount number at `position`, at most the text's size, and moves past it; nothing where
/// no number starts there. Throws `number.zero_denominator`, `number.too_many_digits`,
/// `number.comma`, `number.point` or `number.doubtful`, with the offset of the culprit.
[[nodiscard]] std::optional<Rational> read_amount_number(std::string_view text,
                                                         std::size_t& position,
                                                         DecimalMark mark = DecimalMark::point);

/// The whole text as one amount number. Throws what `read_amount_number` throws, and
/// `number.unreadable`.
[[nodiscard]] Rational parse_amount_number(std::string_view text);

/// The whole text as a formula of numbers. Throws `number.unreadable`, `number.zero_denominator`,
/// `number.too_many_digits`, `number.exponent` or `number.depth`, with the offset of the culprit,
/// and `number.too_large` for a result beyond all use.
[[nodiscard]] Rational parse_formula_number(std::string_view text);

/// Printing. The first three read back to the same value by either grammar (the mixed form by the
/// amount grammar only).

/// `n/d`, or `n` where d is 1.
[[nodiscard]] std::string fraction_text(const Rational& x);
/// `1 1/2`, `-2 1/3`, `1/2`, `3`.
[[nodiscard]] std::string mixed_text(const Rational& x);
/// The exact decimal, or nothing where it does not end within `most_places` places.
[[nodiscard]] std::optional<std::string> decimal_text(const Rational& x, int most_places);
/// The handier way to write it exactly: a decimal of at most 4 places, else whichever is shorter of
/// a decimal of at most 12 places and the mixed form.
[[nodiscard]] std::string exact_text(const Rational& x);
/// Rounded half up to so many places, which are all printed: `24.30`.
[[nodiscard]] std::string fixed_text(const Rational& x, int places);

}  // namespace scalepan
