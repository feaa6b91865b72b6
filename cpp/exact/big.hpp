// Numbers beyond a machine word, and the interchange with Boost's own types.
#pragma once

// Multiprecision must come first: included the other way round, boost::rational misses the
// native gcd and slows down by more than a factor of two.
#include <boost/multiprecision/cpp_int.hpp>
#include <boost/rational.hpp>

#include "exact/rational.hpp"

namespace scalepan {

using BigInt = boost::multiprecision::cpp_int;
using BigRational = boost::rational<BigInt>;

struct BigNumber {
  BigRational value;
};

/// The same value as Boost's rational, always in lowest terms.
[[nodiscard]] BigRational to_boost(const Rational& x);
[[nodiscard]] Rational from_boost(const BigRational& x);

/// numerator / denominator of any size. Throws `number.zero_denominator`, and `number.too_large`
/// beyond `most_bits` bits.
[[nodiscard]] Rational make_rational(const BigInt& numerator, const BigInt& denominator);

/// More bits than this in one part stop with `number.too_large`: no figure of a kitchen has them,
/// and without a limit a short text could ask for hours of work.
inline constexpr unsigned most_bits = 1U << 20U;

}  // namespace scalepan
