#include "exact/ramp.hpp"

#include <algorithm>

#include "exact/error.hpp"
#include "exact/number_text.hpp"

namespace scalepan {

namespace {

std::string text_of(const Ramp::Point& point) {
  return "(" + exact_text(point.first) + ", " + exact_text(point.second) + ")";
}

}  // namespace

Ramp::Ramp(std::vector<Point> points, std::optional<Rational> further)
    : points_(std::move(points)), further_(std::move(further)) {
  points_.insert(points_.begin(), Point{});
  for (std::size_t i = 1; i < points_.size(); ++i) {
    const Point& before = points_[i - 1];
    if (points_[i].first > before.first && points_[i].second >= before.second) continue;
    fail("ramp.order",
         "the point " + text_of(points_[i]) + " does not lie to the right of " + text_of(before) +
             " and as high or higher",
         "write the points from the smallest size to the largest");
  }
  if (further_ && further_->sign() < 0) {
    fail("ramp.order", "behind the last point it would fall by " + exact_text(-*further_),
         "the further slope must be 0 or above");
  }
}

Rational Ramp::at(const Rational& x) const {
  const Point& last = points_.back();
  if (x.sign() < 0 || (x > last.first && !further_)) {
    fail("ramp.end",
         "the points end at " + exact_text(last.first) + "; " + exact_text(x) + " is asked for");
  }
  if (x > last.first) return last.second + *further_ * (x - last.first);
  const auto right = std::ranges::lower_bound(points_, x, {}, &Point::first);
  if (right->first == x) return right->second;
  const Point& left = *std::prev(right);
  return left.second +
         (right->second - left.second) * (x - left.first) / (right->first - left.first);
}

Rational Ramp::slope_after(const Rational& x) const {
  const auto right = std::ranges::upper_bound(points_, x, {}, &Point::first);
  if (right == points_.end()) return further_.value_or(Rational(0));
  const Point& left = *std::prev(right);
  return (right->second - left.second) / (right->first - left.first);
}

std::optional<Rational> Ramp::end() const {
  return further_ ? std::nullopt : std::optional(points_.back().first);
}

}  // namespace scalepan
