// Digits of a text as numbers, for the readers of both grammars.
#pragma once

#include <cstddef>
#include <string_view>

#include "exact/rational.hpp"

namespace scalepan {

[[nodiscard]] bool digit_at(std::string_view text, std::size_t position);

/// The digits at `position`, which moves past them. Throws `number.too_many_digits`.
[[nodiscard]] std::string_view read_digits(std::string_view text, std::size_t& position);

/// The number the digits write; 0 where there are none.
[[nodiscard]] Rational whole_of(std::string_view digits);

/// The digits before the point have been read as `whole`; `position` stands on the point.
/// Throws `number.too_many_digits`.
[[nodiscard]] Rational read_after_point(std::string_view text, std::size_t& position,
                                        const Rational& whole);

/// Throws `number.zero_denominator` with the offset.
[[nodiscard]] Rational nonzero(Rational bottom, std::size_t offset);

}  // namespace scalepan
