#include "sheet/form.hpp"

#include <utility>

namespace scalepan {

namespace {

/// How many times the second line p x + q the first one is; none where it is no multiple.
std::optional<Rational> ratio_of(const Rational& a, const Rational& b, const Rational& p,
                                 const Rational& q) {
  if (!(a * q == b * p)) return std::nullopt;
  if (!p.is_zero()) return a / p;
  if (!q.is_zero()) return b / q;
  return std::nullopt;
}

}  // namespace

RatioForm::RatioForm(Rational a, Rational b, Rational c, Rational d)
    : a_(std::move(a)), b_(std::move(b)), c_(std::move(c)), d_(std::move(d)) {
  const bool constant = a_ * d_ == b_ * c_;
  if (constant) {
    b_ = d_.is_zero() ? a_ / c_ : b_ / d_;
    a_ = c_ = Rational();
    d_ = 1;
  } else if (c_.is_zero() && !(d_ == 1)) {
    a_ /= d_;
    b_ /= d_;
    d_ = 1;
  }
}

std::optional<Rational> RatioForm::at(const Rational& x) const {
  const Rational below = c_ * x + d_;
  if (below.is_zero()) return std::nullopt;
  return (a_ * x + b_) / below;
}

int RatioForm::sign_beyond(const Rational& x) const {
  const auto value = at(x);
  if (!value) return (a_ * x + b_).sign() * c_.sign();
  return value->is_zero() ? direction() : value->sign();
}

std::optional<Rational> RatioForm::where(const Rational& value) const {
  const Rational slope = a_ - value * c_;
  if (slope.is_zero()) return std::nullopt;
  return (value * d_ - b_) / slope;
}

std::optional<Rational> RatioForm::pole() const {
  if (c_.is_zero()) return std::nullopt;
  return -d_ / c_;
}

RatioForm operator+(const RatioForm& f, const RatioForm& g) {
  const auto ratio = ratio_of(f.c_, f.d_, g.c_, g.d_);  // of what is divided by
  if (ratio) return {f.a_ + g.a_ * *ratio, f.b_ + g.b_ * *ratio, f.c_, f.d_};
  if (g.is_constant()) return {f.a_ + g.b_ * f.c_, f.b_ + g.b_ * f.d_, f.c_, f.d_};
  if (f.is_constant()) return g + f;
  throw NoForm{"quotients by unlike figures are added"};
}

RatioForm operator*(const RatioForm& f, const RatioForm& g) {
  if (f.is_constant()) return {f.b_ * g.a_, f.b_ * g.b_, g.c_, g.d_};
  if (g.is_constant()) return g * f;
  if (const auto ratio = ratio_of(f.a_, f.b_, g.c_, g.d_)) {
    return {*ratio * g.a_, *ratio * g.b_, f.c_, f.d_};
  }
  if (const auto ratio = ratio_of(g.a_, g.b_, f.c_, f.d_)) {
    return {*ratio * f.a_, *ratio * f.b_, g.c_, g.d_};
  }
  const bool line_over_line =
      (f.a_.is_zero() || g.a_.is_zero()) && (f.c_.is_zero() || g.c_.is_zero());
  if (!line_over_line) throw NoForm{"figures that both follow from it are multiplied"};
  return {f.a_ * g.b_ + f.b_ * g.a_, f.b_ * g.b_, f.c_ * g.d_ + f.d_ * g.c_, f.d_ * g.d_};
}

RatioForm inverse_of(const RatioForm& f) { return {f.c_, f.d_, f.a_, f.b_}; }

}  // namespace scalepan
