#include "exact/rational.hpp"

#include <cstdlib>
#include <limits>
#include <memory>

#include "exact/big.hpp"
#include "exact/error.hpp"

namespace scalepan {

namespace {

[[noreturn]] void fail_division_by_zero() { fail("number.division_by_zero", "division by zero"); }

void expect_workable(const BigInt& part) {
  if (part != 0 && boost::multiprecision::msb(boost::multiprecision::abs(part)) >= most_bits) {
    fail("number.too_large",
         "a number of more than " + std::to_string(most_bits) + " bits is too large to work with");
  }
}

bool fits_word(const BigInt& x) { return x <= word_max && x >= -word_max; }

/// Wraps a value known to be in lowest terms, back in words where it fits.
Rational settle(const BigRational& value) {
  if (fits_word(value.numerator()) && fits_word(value.denominator())) {
    return {static_cast<std::int64_t>(value.numerator()),
            static_cast<std::int64_t>(value.denominator())};
  }
  expect_workable(value.numerator());
  expect_workable(value.denominator());
  return Rational(std::make_unique<BigNumber>(BigNumber{value}).release());
}

BigInt big_floor(const BigRational& x) {
  BigInt quotient;
  BigInt rest;
  boost::multiprecision::divide_qr(x.numerator(), x.denominator(), quotient, rest);
  return rest < 0 ? BigInt(quotient - 1) : quotient;
}

}  // namespace

Rational::Rational(std::int64_t numerator, std::int64_t denominator) : Rational() {
  if (denominator == 0) fail("number.zero_denominator", "the denominator of a fraction is zero");
  constexpr std::int64_t lowest = std::numeric_limits<std::int64_t>::min();
  if (numerator == lowest || denominator == lowest) {
    Rational result = make_rational(BigInt(numerator), BigInt(denominator));
    swap(result);
    return;
  }
  if (numerator == 0) return;
  if (denominator < 0) {
    numerator = -numerator;
    denominator = -denominator;
  }
  const std::int64_t g = common(numerator, denominator);
  num_ = numerator / g;
  den_less_one_ = denominator / g - 1;
}

Rational Rational::add_slowly(const Rational& a, const Rational& b, bool subtract) {
  return settle(subtract ? BigRational(to_boost(a) - to_boost(b))
                         : BigRational(to_boost(a) + to_boost(b)));
}

Rational Rational::multiply_slowly(const Rational& a, const Rational& b) {
  return settle(to_boost(a) * to_boost(b));
}

Rational Rational::divide_slowly(const Rational& a, const Rational& b) {
  return settle(to_boost(a) / to_boost(b));
}

Rational operator/(const Rational& a, const Rational& b) {
  if (b.is_zero()) fail_division_by_zero();
  if (!b.is_word()) return Rational::divide_slowly(a, b);
  const bool negative = b.num_ < 0;
  const Rational turned(negative ? -b.word_denominator() : b.word_denominator(),
                        negative ? -b.num_ : b.num_, Rational::LowestTerms{});
  return a * turned;
}

bool Rational::equal_big(const Rational& a, const Rational& b) noexcept {
  if (a.is_word() != b.is_word()) return false;
  return a.big().value.numerator() == b.big().value.numerator() &&
         a.big().value.denominator() == b.big().value.denominator();
}

std::strong_ordering Rational::compare_big(const Rational& a, const Rational& b) {
  const BigRational x = to_boost(a);
  const BigRational y = to_boost(b);
  const BigInt left = x.numerator() * y.denominator();
  const BigInt right = y.numerator() * x.denominator();
  return left.compare(right) <=> 0;
}

std::size_t Rational::hash() const noexcept {
  const auto mix = [](std::size_t seed, std::size_t part) {
    return seed ^ (part + 0x9e3779b97f4a7c15ULL + (seed << 6U) + (seed >> 2U));
  };
  if (is_word()) {
    return mix(std::hash<std::int64_t>{}(num_), std::hash<std::int64_t>{}(den_less_one_));
  }
  return mix(hash_value(big().value.numerator()), hash_value(big().value.denominator()));
}

void Rational::assign_beyond_word(bool negative, std::uint64_t bits) {
  const BigInt value = negative ? -BigInt(static_cast<std::uint64_t>(0) - bits) : BigInt(bits);
  Rational result = settle(BigRational(value));
  swap(result);
}

void Rational::copy_big(const Rational& other) {
  den_less_one_ = 0;  // an ordinary value, should the copy throw
  num_ = reinterpret_cast<std::intptr_t>(std::make_unique<BigNumber>(other.big()).release());
  den_less_one_ = -1;
}

void Rational::drop_big() noexcept { const std::unique_ptr<const BigNumber> owner(&big()); }

bool Rational::big_is_integer() const noexcept { return big().value.denominator() == 1; }

int Rational::big_sign() const noexcept { return big().value.numerator().sign(); }

BigRational to_boost(const Rational& x) {
  if (!x.is_word()) return x.big().value;
  return {BigInt(x.word_numerator()), BigInt(x.word_denominator())};
}

Rational from_boost(const BigRational& x) { return settle(x); }

Rational make_rational(const BigInt& numerator, const BigInt& denominator) {
  if (denominator == 0) fail("number.zero_denominator", "the denominator of a fraction is zero");
  // boost::rational refuses a negative denominator of an unbounded type.
  return denominator < 0 ? settle(BigRational(BigInt(-numerator), BigInt(-denominator)))
                         : settle(BigRational(numerator, denominator));
}

Rational abs(const Rational& x) { return x.sign() < 0 ? -x : x; }

Rational reciprocal(const Rational& x) { return Rational(1) / x; }

Rational floor(const Rational& x) {
  if (!x.is_word()) return settle(BigRational(big_floor(x.big().value)));
  const std::int64_t quotient = x.word_numerator() / x.word_denominator();
  const std::int64_t rest = x.word_numerator() % x.word_denominator();
  return rest < 0 ? quotient - 1 : quotient;
}

Rational ceil(const Rational& x) { return -floor(-x); }

Rational power(const Rational& x, int exponent) {
  Rational result = 1;
  Rational square = exponent < 0 ? reciprocal(x) : x;
  // Halved with its sign, since the lowest exponent has no opposite.
  while (exponent != 0) {
    if (exponent % 2 != 0) result *= square;
    exponent /= 2;
    if (exponent != 0) square *= square;
  }
  return result;
}

Rational numerator(const Rational& x) {
  return x.is_word() ? Rational(x.word_numerator())
                     : settle(BigRational(x.big().value.numerator()));
}

Rational denominator(const Rational& x) {
  return x.is_word() ? Rational(x.word_denominator())
                     : settle(BigRational(x.big().value.denominator()));
}

namespace {

/// In lowest terms: what divides a denominator divides no numerator. False beyond words.
bool common_step_in_words(const Rational& a, const Rational& b, Rational& out) {
  if (!a.is_word() || !b.is_word()) return false;
  const auto magnitude = [](const Rational& x) {
    return static_cast<std::uint64_t>(std::abs(x.word_numerator()));
  };
  const std::uint64_t top_a = magnitude(a);
  const std::uint64_t top_b = magnitude(b);
  const auto common =
      static_cast<std::int64_t>(gcd_words(static_cast<std::uint64_t>(a.word_denominator()),
                                          static_cast<std::uint64_t>(b.word_denominator())));
  std::int64_t den = 0;
  if (!multiply_words(a.word_denominator() / common, b.word_denominator(), den)) return false;
  const std::uint64_t top = top_a == 0 ? top_b : top_b == 0 ? top_a : gcd_words(top_a, top_b);
  out = Rational(static_cast<std::int64_t>(top), den);
  return true;
}

}  // namespace

Rational common_step(const Rational& a, const Rational& b) {
  Rational step;
  if (common_step_in_words(a, b, step)) return step;
  const BigRational x = to_boost(a);
  const BigRational y = to_boost(b);
  const BigInt top =
      gcd(BigInt(x.numerator() * y.denominator()), BigInt(y.numerator() * x.denominator()));
  return make_rational(top, x.denominator() * y.denominator());
}

}  // namespace scalepan
