// Need courses: how the need of an item follows the number of portions, so that a curve need not
// size the recipe at every point.
#pragma once

#include <cstdint>
#include <optional>

#include "costing/plan.hpp"
#include "exact/growth.hpp"
#include "recipe/recipe.hpp"

namespace scalepan {

/// Which numbers of portions are asked for.
enum class Portions : std::uint8_t {
  any,
  whole,  // between which a rule such as one per portion is straight
};

/// What lines need together, in the packs' unit: slope * portions + constant, and the steps and
/// ramps of the rules that are not straight.
class NeedCourse {
 public:
  explicit NeedCourse(Rational serves) : serves_(std::move(serves)) {}

  [[nodiscard]] Rational at(const Rational& portions) const;
  [[nodiscard]] bool is_straight() const { return !bent_; }
  /// The first number of portions behind these at which it turns or steps; none where it does not.
  [[nodiscard]] std::optional<Rational> next_turn(const Rational& portions) const;
  /// Of the straight part.
  [[nodiscard]] const Rational& slope() const { return slope_; }
  [[nodiscard]] const Rational& constant() const { return constant_; }

  /// Adds a line of the recipe itself, so much of the packs' unit for each coherent unit of it.
  void add(const Line& line, const Rational& weight, const Recipe& recipe, Portions portions);

 private:
  Rational serves_;
  Rational slope_;
  Rational constant_;
  std::optional<Growth> bent_;  // of the factor
};

/// Of the lines that a group of offers meets; none where some of them belong to a base that does
/// not grow in proportion, since such a base may be made larger than its uses.
[[nodiscard]] std::optional<NeedCourse> need_course(const OfferGroup& group, const Recipe& recipe,
                                                    Portions portions);

/// Of all lines of the recipe itself together, whatever they count.
[[nodiscard]] NeedCourse course_of_lines(const Recipe& recipe);

/// Whether all bases grow in proportion, so that every group has a course.
[[nodiscard]] bool bases_in_proportion(const Recipe& recipe);

/// The portions up to which all tapers of the recipe's own lines go; none where they do not end.
[[nodiscard]] std::optional<Rational> end_of_tapers(const Recipe& recipe);

}  // namespace scalepan
