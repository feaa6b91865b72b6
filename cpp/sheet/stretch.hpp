// Figures on the stretch right beyond one value of their input, as far as nothing turns there: no
// choice goes another way, and no rounding comes to another multiple.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheet/form.hpp"
#include "sheet/path.hpp"

namespace scalepan {

struct PathStretch {
  /// Of the first output; none where it has no figure on the whole stretch.
  std::optional<RatioForm> output;
  std::optional<Rational> end;  // the stretch ends before it; none: never
};

/// Throws `NoForm` where the output does not follow from the input by such forms.
[[nodiscard]] PathStretch stretch_beyond(const Path& path, const Rational& input);

}  // namespace scalepan
