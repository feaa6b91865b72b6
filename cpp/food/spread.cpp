#include "food/spread.hpp"

#include <algorithm>

#include "exact/big.hpp"

namespace scalepan {

namespace {

/// What one step multiplies by.
struct Reach {
  Rational low;
  Rational value;
  Rational high;
};

Reach reach_of(const Step& step) {
  const Fact& fact = *step.fact;
  const Rational value = fact.value.coherent();
  const Rational low = fact.low ? fact.low->coherent() : value;
  const Rational high = fact.high ? fact.high->coherent() : value;
  if (!step.divides) return {low, value, high};
  return {reciprocal(high), reciprocal(value), reciprocal(low)};
}

BigInt root_of(const BigInt& x) { return boost::multiprecision::sqrt(x); }

}  // namespace

Spread worst_case(std::span<const Step> steps) {
  Spread spread;
  for (const Step& step : steps) {
    const Reach reach = reach_of(step);
    spread.low *= reach.low;
    spread.high *= reach.high;
  }
  return spread;
}

Spread root_sum_square(std::span<const Step> steps) {
  Rational factor = 1;
  Rational below = 0;
  Rational above = 0;
  for (const Step& step : steps) {
    const Reach reach = reach_of(step);
    factor *= reach.value;
    below += power(1 - reach.low / reach.value, 2);
    above += power(reach.high / reach.value - 1, 2);
  }
  const Spread worst = worst_case(steps);
  return {std::max(worst.low, factor * (1 - root_up(below))),
          std::min(worst.high, factor * (1 + root_up(above)))};
}

Rational root_up(const Rational& x) {
  if (x.is_zero()) return x;
  const BigRational exact = to_boost(x);
  const BigInt above = root_of(exact.numerator());
  const BigInt below = root_of(exact.denominator());
  if (above * above == exact.numerator() && below * below == exact.denominator()) {
    return make_rational(above, below);
  }
  const BigInt scale = boost::multiprecision::pow(BigInt(10), root_places);
  const BigInt whole = (exact.numerator() * scale * scale + exact.denominator() - 1) /
                       exact.denominator();  // rounded up
  BigInt root = root_of(whole);
  if (root * root < whole) ++root;
  return make_rational(root, scale);
}

}  // namespace scalepan
