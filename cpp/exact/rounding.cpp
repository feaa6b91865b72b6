#include "exact/rounding.hpp"

#include <array>
#include <string>
#include <utility>

#include "exact/big.hpp"
#include "exact/error.hpp"

namespace scalepan {

namespace {

constexpr std::array<std::pair<Rounding, std::string_view>, 7> names{{
    {Rounding::half_up, "half up"},
    {Rounding::half_down, "half down"},
    {Rounding::half_even, "half even"},
    {Rounding::up, "up"},
    {Rounding::down, "down"},
    {Rounding::ceiling, "ceiling"},
    {Rounding::floor, "floor"},
}};

bool is_even(const Rational& whole) { return (whole / 2).is_integer(); }

/// `x` is not negative.
Rational nearest_whole(const Rational& x, Rounding mode) {
  const Rational below = floor(x);
  const Rational rest = x - below;
  const Rational half(1, 2);
  if (rest != half) return rest < half ? below : below + 1;
  const bool goes_up =
      mode == Rounding::half_up || (mode == Rounding::half_even && !is_even(below));
  return goes_up ? below + 1 : below;
}

Rational to_whole(const Rational& x, Rounding mode) {
  const bool negative = x.sign() < 0;
  switch (mode) {
    case Rounding::floor:
      return floor(x);
    case Rounding::ceiling:
      return ceil(x);
    case Rounding::up:
      return negative ? floor(x) : ceil(x);
    case Rounding::down:
      return negative ? ceil(x) : floor(x);
    default:
      return negative ? -nearest_whole(-x, mode) : nearest_whole(x, mode);
  }
}

/// The power of ten of the leading digit of x, which is above zero.
int leading_place(const Rational& x) {
  // Close to the mark from the bit lengths alone: a digit has log2(10) bits, about 4096 / 1233.
  const auto bits = [](const Rational& whole) {
    return static_cast<int>(boost::multiprecision::msb(to_boost(whole).numerator()));
  };
  int place = (bits(numerator(x)) - bits(denominator(x))) * 1233 / 4096;
  while (power(10, place) > x) --place;
  while (power(10, place + 1) <= x) ++place;
  return place;
}

}  // namespace

std::string_view name_of(Rounding mode) {
  for (const auto& [known, name] : names) {
    if (known == mode) return name;
  }
  return {};
}

Rounding rounding_named(std::string_view name) {
  std::string all;
  for (const auto& [mode, known] : names) {
    if (known == name) return mode;
    all += (all.empty() ? "" : ", ") + std::string(known);
  }
  fail("number.rounding_mode", "no rounding is called \"" + excerpt(name) + "\"",
       "there are: " + all);
}

Rounded round_to_multiple(const Rational& x, const Rational& step, Rounding mode) {
  if (step.sign() <= 0) {
    fail("number.rounding_step", "the step to round to must be above zero");
  }
  Rational value = to_whole(x / step, mode) * step;
  Rational error = value - x;
  return {std::move(value), std::move(error)};
}

Rounded round_to_places(const Rational& x, int places, Rounding mode) {
  return round_to_multiple(x, reciprocal(power(10, places)), mode);
}

Rounded round_to_digits(const Rational& x, int digits, Rounding mode) {
  if (digits < 1) fail("number.rounding_step", "a number has at least one significant digit");
  if (x.is_zero()) return {0, 0};
  return round_to_places(x, digits - 1 - leading_place(abs(x)), mode);
}

}  // namespace scalepan
