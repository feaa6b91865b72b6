// Growth: a sum of constants, slopes, steps and ramps, as a batch grows with its size, and its
// inverse, exactly.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "exact/ramp.hpp"

namespace scalepan {

/// A function of x above 0 that never falls. Steps rise just behind their multiples (a started one
/// counts whole), so that it is continuous from the left everywhere.
class Growth {
 public:
  void add_constant(const Rational& height) { constant_ += height; }
  void add_slope(const Rational& slope) { slope_ += slope; }
  /// `height * ceil(rate * x)`.
  void add_steps(const Rational& height, const Rational& rate);
  /// `height * ramp(x)`.
  void add_ramp(const Rational& height, Ramp ramp);
  /// `height * ceil(inner(x) / width)`.
  void add_steps_of(const Rational& height, Growth inner, const Rational& width);

  /// Throws `ramp.end` where a ramp ends before.
  [[nodiscard]] Rational at(const Rational& x) const;
  /// The limit just behind x.
  [[nodiscard]] Rational above(const Rational& x) const;
  /// Whether it grows just behind x, and not by a step alone.
  [[nodiscard]] bool rises_after(const Rational& x) const;
  /// The first point behind x where it is not straight, or perhaps is not; nothing where it is
  /// straight for ever. Throws `ramp.end` where a ramp ends at x or before.
  [[nodiscard]] std::optional<Rational> next_turn(const Rational& x) const;
  /// Where the first ramp ends; nothing where it goes on for ever.
  [[nodiscard]] std::optional<Rational> end() const;

  /// The largest x whose value is at most the target: 0 where every x has more, the end where
  /// that is not more, nothing where no x has more. The target is met where `at` of it is the
  /// target; else there is a step over it: `at` is below, and any larger x has `above` or more.
  [[nodiscard]] std::optional<Rational> last_at_most(const Rational& target) const;

 private:
  struct Steps {
    Rational height;
    Rational rate;
  };
  struct Ramped {
    Rational height;
    Ramp ramp;
  };
  struct StepsOf {
    Rational height;
    std::shared_ptr<const Growth> inner;
    Rational width;

    [[nodiscard]] Rational count_at(const Rational& x) const;
    [[nodiscard]] Rational count_above(const Rational& x) const;
  };
  struct Breaks;  // the points inside an interval where it is not straight

  /// Without the steps.
  [[nodiscard]] Rational straight_at(const Rational& x) const;
  [[nodiscard]] bool rises_for_ever() const;
  /// Behind it no ramp changes its slope.
  [[nodiscard]] Rational last_point() const;
  [[nodiscard]] std::optional<Rational> beyond(const Rational& target) const;
  [[nodiscard]] std::optional<Rational> middle_break(const Rational& low,
                                                     const Rational& high) const;

  Rational constant_;
  Rational slope_;
  std::vector<Steps> steps_;
  std::vector<Ramped> ramps_;
  std::vector<StepsOf> steps_of_;
};

}  // namespace scalepan
