// A figure as a function of one input, on a stretch where nothing turns: (a x + b) / (c x + d).
#pragma once

#include <optional>
#include <string>

#include "exact/rational.hpp"

namespace scalepan {

/// Thrown where a figure has no such form.
struct NoForm {
  std::string reason;
};

class RatioForm {
 public:
  /// The constant 0.
  RatioForm() = default;
  static RatioForm constant(const Rational& number) {
    return {Rational(), number, Rational(), Rational(1)};
  }
  /// The input itself.
  static RatioForm input() { return {Rational(1), Rational(), Rational(), Rational(1)}; }

  [[nodiscard]] bool is_constant() const { return a_.is_zero() && c_.is_zero(); }
  /// Of a constant.
  [[nodiscard]] const Rational& number() const { return b_; }

  /// None at a pole.
  [[nodiscard]] std::optional<Rational> at(const Rational& x) const;
  /// -1, 0 or 1: whether it falls or rises, on both sides of a pole alike.
  [[nodiscard]] int direction() const { return (a_ * d_ - b_ * c_).sign(); }
  /// Its sign right beyond x.
  [[nodiscard]] int sign_beyond(const Rational& x) const;
  /// Where it has this value; none where it never has, or has it everywhere.
  [[nodiscard]] std::optional<Rational> where(const Rational& value) const;
  [[nodiscard]] std::optional<Rational> pole() const;

  /// Throw `NoForm` where the result is of a higher degree.
  friend RatioForm operator+(const RatioForm& f, const RatioForm& g);
  friend RatioForm operator-(const RatioForm& f, const RatioForm& g) {
    return f + g * constant(Rational(-1));
  }
  friend RatioForm operator*(const RatioForm& f, const RatioForm& g);
  /// `f` must not be the constant 0.
  friend RatioForm inverse_of(const RatioForm& f);

 private:
  RatioForm(Rational a, Rational b, Rational c, Rational d);

  // d is 1 where c is 0; a constant has neither a nor c.
  Rational a_;
  Rational b_;
  Rational c_;
  Rational d_ = 1;
};

}  // namespace scalepan
