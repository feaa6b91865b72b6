#include "exact/growth.hpp"

#include <algorithm>
#include <utility>

namespace scalepan {

namespace {

/// The number of the step that begins just behind x.
Rational step_after(const Rational& x) { return floor(x) + Rational(1); }

}  // namespace

Rational Growth::StepsOf::count_at(const Rational& x) const { return ceil(inner->at(x) / width); }

Rational Growth::StepsOf::count_above(const Rational& x) const {
  const Rational filled = inner->above(x) / width;
  return inner->rises_after(x) ? step_after(filled) : ceil(filled);
}

/// Of several kinds of points the kind with most of them inside, and its middle one.
struct Growth::Breaks {
  Rational count;
  Rational middle;

  void offer(const Rational& number, const Rational& point) {
    if (number <= count) return;
    count = number;
    middle = point;
  }
};

void Growth::add_steps(const Rational& height, const Rational& rate) {
  if (!height.is_zero() && !rate.is_zero()) steps_.push_back({height, rate});
}

void Growth::add_ramp(const Rational& height, Ramp ramp) {
  ramps_.push_back({height, std::move(ramp)});
}

void Growth::add_steps_of(const Rational& height, Growth inner, const Rational& width) {
  if (height.is_zero()) return;
  steps_of_.push_back({height, std::make_shared<const Growth>(std::move(inner)), width});
}

Rational Growth::straight_at(const Rational& x) const {
  Rational value = constant_ + slope_ * x;
  for (const Ramped& part : ramps_) value += part.height * part.ramp.at(x);
  return value;
}

Rational Growth::at(const Rational& x) const {
  Rational value = straight_at(x);
  for (const Steps& steps : steps_) value += steps.height * ceil(steps.rate * x);
  for (const StepsOf& steps : steps_of_) value += steps.height * steps.count_at(x);
  return value;
}

Rational Growth::above(const Rational& x) const {
  Rational value = straight_at(x);
  for (const Steps& steps : steps_) value += steps.height * step_after(steps.rate * x);
  for (const StepsOf& steps : steps_of_) value += steps.height * steps.count_above(x);
  return value;
}

std::optional<Rational> Growth::next_turn(const Rational& x) const {
  std::optional<Rational> next;
  const auto offer = [&](const std::optional<Rational>& turn) {
    if (turn && *turn > x && (!next || *turn < *next)) next = turn;
  };
  for (const Steps& steps : steps_) offer(step_after(steps.rate * x) / steps.rate);
  for (const Ramped& part : ramps_) {
    for (const Ramp::Point& point : part.ramp.points()) offer(point.first);
  }
  for (const StepsOf& steps : steps_of_) {
    offer(steps.inner->last_at_most(steps.count_above(x) * steps.width));
  }
  return next;
}

std::optional<Rational> Growth::end() const {
  std::optional<Rational> first;
  const auto take = [&](const std::optional<Rational>& end) {
    if (end && (!first || *end < *first)) first = end;
  };
  for (const Ramped& part : ramps_) take(part.ramp.end());
  for (const StepsOf& steps : steps_of_) take(steps.inner->end());
  return first;
}

bool Growth::rises_after(const Rational& x) const {
  return !slope_.is_zero() || std::ranges::any_of(ramps_, [&](const Ramped& part) {
    return !part.height.is_zero() && !part.ramp.slope_after(x).is_zero();
  });
}

bool Growth::rises_for_ever() const {
  const bool ramps = std::ranges::any_of(ramps_, [](const Ramped& part) {
    return !part.height.is_zero() && !part.ramp.further().value_or(Rational(0)).is_zero();
  });
  const bool inner = std::ranges::any_of(
      steps_of_, [](const StepsOf& steps) { return steps.inner->rises_for_ever(); });
  return !slope_.is_zero() || !steps_.empty() || ramps || inner;
}

Rational Growth::last_point() const {
  Rational last;
  for (const Ramped& part : ramps_) last = std::max(last, part.ramp.points().back().first);
  for (const StepsOf& steps : steps_of_) last = std::max(last, steps.inner->last_point());
  return last;
}

/// Some x with more than the target; the end where there is none.
std::optional<Rational> Growth::beyond(const Rational& target) const {
  const std::optional<Rational> last = end();
  Rational x = std::max(Rational(1), last_point());
  if (!last && !rises_for_ever()) {
    return at(x) > target ? std::optional(x) : std::nullopt;
  }
  while (!last || x < *last) {
    if (at(x) > target) return x;
    x *= Rational(2);
  }
  return last;
}

std::optional<Rational> Growth::middle_break(const Rational& low, const Rational& high) const {
  Breaks breaks;
  const Rational half(1, 2);
  for (const Steps& steps : steps_) {
    const Rational first = step_after(steps.rate * low);
    const Rational last = ceil(steps.rate * high) - Rational(1);
    breaks.offer(last - first + Rational(1), floor((first + last) * half) / steps.rate);
  }
  for (const Ramped& part : ramps_) {
    for (const auto& [x, y] : part.ramp.points()) {
      if (x > low && x < high) breaks.offer(1, x);
    }
  }
  for (const StepsOf& steps : steps_of_) {
    const Rational first = steps.count_above(low);
    const Rational last = steps.count_at(high) - Rational(1);
    const Rational filled = floor((first + last) * half) * steps.width;
    if (last >= first) breaks.offer(last - first + 1, *steps.inner->last_at_most(filled));
  }
  return breaks.count.is_zero() ? std::nullopt : std::optional(breaks.middle);
}

std::optional<Rational> Growth::last_at_most(const Rational& target) const {
  Rational low = 0;
  if (above(low) > target) return low;
  const std::optional<Rational> found = beyond(target);
  if (!found) return std::nullopt;
  Rational high = *found;
  if (at(high) <= target) return high;
  while (const auto middle = middle_break(low, high)) {
    (at(*middle) <= target ? low : high) = *middle;
  }
  // No break lies between, so it is straight from `above(low)` to `at(high)`.
  const Rational start = above(low);
  if (start >= target) return low;
  return low + (high - low) * (target - start) / (at(high) - start);
}

}  // namespace scalepan
