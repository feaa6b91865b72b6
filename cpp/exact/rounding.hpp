// The only lossy operations: each is named, and each returns its error with its value.
#pragma once

#include <string_view>

#include "exact/rational.hpp"

namespace scalepan {

enum class Rounding {
  half_up,    // to the nearest, a tie away from zero
  half_down,  // to the nearest, a tie towards zero
  half_even,  // to the nearest, a tie to the even multiple
  up,         // away from zero
  down,       // towards zero
  ceiling,    // towards plus infinity
  floor,      // towards minus infinity
};

struct Rounded {
  Rational value;
  Rational error;  // value less the exact figure
};

/// The name as it is written: `half up`, `half even`, `up`, ...
[[nodiscard]] std::string_view name_of(Rounding mode);
/// Throws `number.rounding_mode` with the names there are.
[[nodiscard]] Rounding rounding_named(std::string_view name);

/// To a multiple of `step` (`to the next 5 g`: step 5, mode up). Throws `number.rounding_step`
/// where the step is not above zero.
[[nodiscard]] Rounded round_to_multiple(const Rational& x, const Rational& step, Rounding mode);
/// To so many decimal places; a negative count rounds to tens, hundreds and so on.
[[nodiscard]] Rounded round_to_places(const Rational& x, int places, Rounding mode);
/// To so many significant digits. Throws `number.rounding_step` for fewer than one.
[[nodiscard]] Rounded round_to_digits(const Rational& x, int digits, Rounding mode);

}  // namespace scalepan
