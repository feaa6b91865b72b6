// What the tests share: readable failures, whole errors, the invariants.
#pragma once

#include <cstddef>
#include <numeric>
#include <ostream>
#include <string>
#include <string_view>

#include "catch.hpp"
#include "exact/big.hpp"
#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/rational.hpp"

namespace scalepan {

/// Everything an error says, so that one comparison checks all of it.
struct Thrown {
  std::string code;
  std::string message;
  std::string hint{};
  std::size_t offset = Place::no_offset;

  friend bool operator==(const Thrown&, const Thrown&) = default;
  friend std::ostream& operator<<(std::ostream& out, const Thrown& thrown) {
    out << thrown.code << ": " << thrown.message << " (" << thrown.hint << ")";
    if (thrown.offset != Place::no_offset) out << " at " << thrown.offset;
    return out;
  }
};

template <typename Action>
Thrown thrown_by(Action&& action) {
  try {
    static_cast<void>(action());
  } catch (const Error& error) {
    return {error.code(), error.message(), error.hint(), error.place().offset};
  }
  return {"nothing", "no error was thrown"};
}

/// The promise of rational.hpp: lowest terms, positive denominator, words wherever both parts
/// fit, and never the one word that cannot change its sign.
inline bool is_canonical(const Rational& x) {
  if (x.is_word()) {
    const std::int64_t top = x.word_numerator();
    const std::int64_t bottom = x.word_denominator();
    return bottom >= 1 && top >= -word_max && std::gcd(top, bottom) == 1;
  }
  const BigInt& top = x.big().value.numerator();
  const BigInt& bottom = x.big().value.denominator();
  const bool fits = top >= -word_max && top <= word_max && bottom <= word_max;
  return bottom >= 1 && !fits && gcd(top, bottom) == 1;
}

/// An integer too long for a word, from its digits, without the reader under test.
inline BigInt big_integer(std::string_view digits) {
  const bool negative = digits.starts_with('-');
  BigInt size = 0;
  for (const char digit : digits.substr(negative ? 1 : 0)) size = size * 10 + (digit - '0');
  return negative ? BigInt(-size) : size;
}
inline Rational whole(std::string_view digits) {
  return make_rational(big_integer(digits), BigInt(1));
}

}  // namespace scalepan

template <>
struct Catch::StringMaker<scalepan::Rational> {
  static std::string convert(const scalepan::Rational& x) { return scalepan::fraction_text(x); }
};
