#include "sheet/along.hpp"

#include "exact/rounding.hpp"

namespace scalepan {

RatioForm line_through(const LinePoint& one, const LinePoint& other, const RatioForm& form) {
  const Rational rise = other.figure - one.figure;
  if (rise.is_zero()) return RatioForm::constant(one.figure);
  const Rational slope = rise / (other.form - one.form);
  return RatioForm::constant(one.figure - one.form * slope) + form * RatioForm::constant(slope);
}

Rational Reach::inside() const {
  return end_ ? (from_ + *end_) / Rational(2) : from_ + Rational(1);
}

void Reach::turns_at(const std::optional<Rational>& x) {
  if (x && *x > from_ && (!end_ || *x < *end_)) end_ = x;
}

int Reach::sign_of(const RatioForm& form) {
  turns_at(form.where(Rational()));
  turns_at(form.pole());
  return form.sign_beyond(from_);
}

Rational Reach::ceiling_of(const RatioForm& form) {
  const auto value = form.at(from_);
  if (!value) throw NoForm{"a rounded figure grows beyond all bounds"};
  const int direction = form.direction();
  const Rational level = direction > 0 ? floor(*value) + Rational(1) : ceil(*value);
  if (direction != 0) {
    turns_at(form.where(direction > 0 ? level : level - Rational(1)));
    turns_at(form.pole());
  }
  return level;
}

}  // namespace scalepan
