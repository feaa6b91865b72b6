// Ramps: piecewise-linear functions through given points, from 0 on.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "exact/rational.hpp"

namespace scalepan {

/// Straight lines between points, the first of them (0, 0). Behind the last point it goes on with
/// the slope `further`, or ends where none is given.
class Ramp {
 public:
  using Point = std::pair<Rational, Rational>;

  /// Throws `ramp.order` unless every point lies to the right of the one before and none below it,
  /// and for a falling `further`.
  Ramp(std::vector<Point> points, std::optional<Rational> further);

  /// Throws `ramp.end` behind the end, and before 0.
  [[nodiscard]] Rational at(const Rational& x) const;
  /// The slope just behind x; 0 at the end.
  [[nodiscard]] Rational slope_after(const Rational& x) const;
  /// Where it ends; nothing where it goes on for ever.
  [[nodiscard]] std::optional<Rational> end() const;
  [[nodiscard]] const std::vector<Point>& points() const { return points_; }
  [[nodiscard]] const std::optional<Rational>& further() const { return further_; }

  friend bool operator==(const Ramp&, const Ramp&) = default;

 private:
  std::vector<Point> points_;  // with (0, 0)
  std::optional<Rational> further_;
};

}  // namespace scalepan
