#include "sheet/interval.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace scalepan {

namespace {

using Bound = std::optional<Rational>;  // empty: beyond all numbers

/// A number, or beyond all of them on one side.
struct Corner {
  Rational value{};
  int beyond = 0;

  friend bool operator<(const Corner& a, const Corner& b) {
    if (a.beyond != 0 || b.beyond != 0) return a.beyond < b.beyond;
    return a.value < b.value;
  }
};

/// Zero times what has no bound is still zero.
Corner corner(const Bound& a, const Bound& b) {
  if (a && b) return {*a * *b, 0};
  const int sign = (a ? a->sign() : 1) * (b ? b->sign() : 1);
  return {Rational(), sign};
}

}  // namespace

bool holds_zero(const Interval& a) { return a.low.sign() <= 0 && (!a.high || a.high->sign() >= 0); }

Interval sum_of(const Interval& a, const Interval& b) {
  Bound high;
  if (a.high && b.high) high = *a.high + *b.high;
  return {a.low + b.low, std::move(high)};
}

MaybeInterval difference_of(const Interval& a, const Interval& b) {
  if (!b.high) return std::nullopt;
  Bound high;
  if (a.high) high = *a.high - b.low;
  return Interval{a.low - *b.high, std::move(high)};
}

MaybeInterval product_of(const Interval& a, const Interval& b) {
  std::array<Corner, 4> corners{corner(a.low, b.low), corner(a.low, b.high), corner(a.high, b.low),
                                corner(a.high, b.high)};
  const auto [low, high] = std::minmax_element(corners.begin(), corners.end());
  if (low->beyond != 0) return std::nullopt;
  Bound top;
  if (high->beyond == 0) top = high->value;
  return Interval{low->value, std::move(top)};
}

Interval reciprocal_of(const Interval& a) {
  Rational low;
  if (a.high) low = reciprocal(*a.high);
  return {std::move(low), reciprocal(a.low)};
}

Interval power_of(const Interval& a, std::uint32_t exponent) {
  const int times_itself = static_cast<int>(exponent);
  if (exponent == 0) return interval_of(1);
  const Interval base = exponent % 2 == 0 ? absolute_of(a) : a;
  Bound high;
  if (base.high) high = power(*base.high, times_itself);
  return Interval{power(base.low, times_itself), std::move(high)};
}

Interval absolute_of(const Interval& a) {
  if (a.low.sign() >= 0) return a;
  if (!a.high) return {Rational(), std::nullopt};
  if (a.high->sign() <= 0) return {-*a.high, -a.low};
  return {Rational(), std::max(-a.low, *a.high)};
}

Interval least_of(const Interval& a, const Interval& b) {
  Bound high = a.high ? a.high : b.high;
  if (a.high && b.high) high = std::min(*a.high, *b.high);
  return {std::min(a.low, b.low), std::move(high)};
}

Interval greatest_of(const Interval& a, const Interval& b) {
  Bound high;
  if (a.high && b.high) high = std::max(*a.high, *b.high);
  return {std::max(a.low, b.low), std::move(high)};
}

std::optional<bool> is_less(const Interval& a, const Interval& b) {
  if (a.high && *a.high < b.low) return true;
  if (b.high && a.low >= *b.high) return false;
  return std::nullopt;
}

std::optional<bool> is_at_most(const Interval& a, const Interval& b) {
  if (a.high && *a.high <= b.low) return true;
  if (b.high && a.low > *b.high) return false;
  return std::nullopt;
}

std::optional<bool> is_equal(const Interval& a, const Interval& b) {
  const bool one = a.high == a.low && b.high == b.low;
  if (one) return a.low == b.low;
  const bool apart = (a.high && *a.high < b.low) || (b.high && *b.high < a.low);
  if (apart) return false;
  return std::nullopt;
}

}  // namespace scalepan
