// Lines as written, over the tests' pantry.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "exact/number_text.hpp"
#include "recipe/reading.hpp"

namespace scalepan {

inline WrittenLine written_of(std::string_view text, Measures measures = Measures::metric,
                              DecimalMark decimal = DecimalMark::point) {
  return read_written_line(text, Reading{measures, decimal}, *shared_pantry());
}

/// `3/2`; empty for a bound that is open.
inline std::string bound_text(const std::optional<Rational>& bound) {
  return bound ? fraction_text(*bound) : std::string();
}

}  // namespace scalepan
