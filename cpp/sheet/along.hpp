// Values along a stretch of one input: what formulas and functions come to right beyond one of its
// values, as far as nothing turns there.
#pragma once

#include <memory>
#include <optional>
#include <utility>
#include <variant>

#include "sheet/form.hpp"
#include "sheet/value.hpp"

namespace scalepan {

/// A thing that goes with the input, as the function that made it keeps it for others of its kind.
class MovingThing {
 public:
  virtual ~MovingThing() = default;
};

using MovingPointer = std::shared_ptr<const MovingThing>;

/// More than one figure all along the stretch: "at least".
struct ManyFigures {};
/// An error all along the stretch.
struct NoFigure {};

/// A number as it follows from the input, or a thing that stays or goes with it.
using Along = std::variant<RatioForm, ThingPointer, MovingPointer, ManyFigures, NoFigure>;

/// A figure that is a straight line of a form all along the stretch, by two of its points: what the
/// form is there, and what the figure is.
struct LinePoint {
  Rational form;
  Rational figure;
};
[[nodiscard]] RatioForm line_through(const LinePoint& one, const LinePoint& other,
                                     const RatioForm& form);

/// Where the stretch begins, and how far it goes as known so far.
class Reach {
 public:
  explicit Reach(Rational from) : from_(std::move(from)) {}

  [[nodiscard]] const Rational& from() const { return from_; }
  [[nodiscard]] const std::optional<Rational>& end() const { return end_; }
  /// A value of the input on the stretch.
  [[nodiscard]] Rational inside() const;

  void turns_at(const std::optional<Rational>& x);
  /// All along the stretch, which ends where the sign is another.
  int sign_of(const RatioForm& form);
  /// The smallest whole number that is not below the form, all along the stretch.
  Rational ceiling_of(const RatioForm& form);

 private:
  Rational from_;
  std::optional<Rational> end_;
};

}  // namespace scalepan
