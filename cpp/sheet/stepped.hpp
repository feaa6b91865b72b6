// A figure along evenly spaced values of one input, as a straight line and stairs upon it: what
// sums, products with constants and roundings to multiples of a straight line come to. It is added
// up in machine words, with all bounds proven beforehand.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exact/word_column.hpp"
#include "sheet/path.hpp"

namespace scalepan {

/// height * ceil(slope * i + start) at the points i = 0, 1, 2 ...
struct Rise {
  Rational height;
  Rational slope;
  Rational start;
};

/// slope * i + start, and the rises.
struct Stepped {
  Rational slope;
  Rational start;
  std::vector<Rise> rises;

  [[nodiscard]] bool is_constant() const { return slope.is_zero() && rises.empty(); }
  [[nodiscard]] bool is_straight() const { return rises.empty(); }
};

/// first, first + step, first + 2 * step ... `step` is not 0.
struct EvenPoints {
  Rational first;
  Rational step;
  std::size_t size = 0;
};

/// What the outputs of a path are along the points, or, in `why_not`, what stands against it.
struct SteppedPath {
  std::vector<Stepped> outputs;
  std::string why_not;
};

[[nodiscard]] SteppedPath stepped_path(const Path& path, const EvenPoints& points);

/// None where a count could leave 63 bits.
[[nodiscard]] std::optional<WordColumn> column_of(const Stepped& stepped, std::size_t points);

}  // namespace scalepan
