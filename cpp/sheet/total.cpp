#include "sheet/total.hpp"

#include <string>

namespace scalepan {

namespace {

constexpr std::size_t minus_one = static_cast<std::size_t>(-1);

}  // namespace

Heard heard_of(const Figures& figures, Cell cell) {
  const Condition condition = figures.condition(cell);
  if (condition != Condition::number && condition != Condition::interval) return {condition, {}};
  return {condition, figures.value(cell)};
}

void Total::replace(const Heard& before, const Heard& after) {
  count(before, minus_one);
  count(after, 1);
}

/// Counts wrap around, as the sums of them do not.
void Total::count(const Heard& heard, std::size_t one) {
  const Rational sign = one == 1 ? Rational(1) : Rational(-1);
  if (heard.condition == Condition::failed) {
    missing_ += one;
  } else if (heard.condition == Condition::number) {
    const Rational& number = std::get<Rational>(heard.value);
    low_ += sign * number;
    if (number.sign() < 0) below_zero_ += one;
  } else if (heard.condition == Condition::interval) {
    const Interval& interval = std::get<Interval>(heard.value);
    low_ += sign * interval.low;
    if (interval.low.sign() < 0) below_zero_ += one;
    if (interval.high) {
      width_ += sign * (*interval.high - interval.low);
    } else {
      unbounded_ += one;
    }
  }
}

void Total::fail_rows() const {
  fail("sheet.rows",
       "there is no sum: " + std::to_string(missing_) +
           (missing_ == 1 ? " row has no value" : " rows have no value") + " and " +
           std::to_string(below_zero_) + (below_zero_ == 1 ? " is" : " are") + " below zero",
       "mend the rows without a value");
}

Value Total::known_value() const {
  if (missing_ > 0 || unbounded_ > 0) return Interval{low_, std::nullopt};
  if (width_.is_zero()) return low_;
  return Interval{low_, low_ + width_};
}

}  // namespace scalepan
