// One value has one form: lowest terms, words wherever they fit, equal hashes.
#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <new>
#include <set>
#include <string>
#include <type_traits>

#include "check.hpp"
#include "operands.hpp"

namespace scalepan {
namespace {

constexpr std::int64_t lowest = std::numeric_limits<std::int64_t>::min();
std::size_t hash_of(const Rational& x) { return std::hash<Rational>{}(x); }

static_assert(std::is_nothrow_default_constructible_v<Rational>);
static_assert(std::is_nothrow_move_constructible_v<Rational>);
static_assert(std::is_nothrow_move_assignable_v<Rational>);
static_assert(!std::is_constructible_v<Rational, double>, "a double is not exact");
static_assert(!std::is_constructible_v<Rational, bool>);
static_assert(!std::is_constructible_v<Rational, char>);

TEST_CASE("a fraction is kept in lowest terms with a positive denominator") {
  struct Case {
    Rational x;
    std::int64_t numerator;
    std::int64_t denominator;
  };
  const std::array<Case, 9> cases{{
      {Rational(), 0, 1},
      {Rational(0, -7), 0, 1},
      {Rational(6, 4), 3, 2},
      {Rational(-6, 4), -3, 2},
      {Rational(6, -4), -3, 2},
      {Rational(-6, -4), 3, 2},
      {Rational(1000, 8), 125, 1},
      {Rational(word_max, word_max), 1, 1},
      {Rational(-word_max, word_max), -1, 1},
  }};
  for (const auto& [x, numerator, denominator] : cases) {
    REQUIRE(x.is_word());
    CHECK(x.word_numerator() == numerator);
    CHECK(x.word_denominator() == denominator);
  }
}

TEST_CASE("zeroed memory reads as the value 0") {
  alignas(Rational) std::array<std::byte, sizeof(Rational)> memory{};
  const Rational& x = *std::launder(reinterpret_cast<const Rational*>(memory.data()));
  CHECK(x.is_word());
  CHECK(x.is_zero());
  CHECK(x.word_denominator() == 1);
  CHECK(x == Rational(0));
  CHECK(hash_of(x) == hash_of(Rational(0)));
  CHECK(x + Rational(1, 2) == Rational(1, 2));
  const Rational copy = x;
  CHECK(copy == 0);
}

TEST_CASE("every built-in integer comes in exactly") {
  CHECK(fraction_text(Rational(std::int8_t{-128})) == "-128");
  CHECK(fraction_text(Rational(std::uint16_t{65535})) == "65535");
  CHECK(fraction_text(Rational(4294967295U)) == "4294967295");
  CHECK(fraction_text(Rational(std::numeric_limits<std::int64_t>::max())) == "9223372036854775807");
  CHECK(fraction_text(Rational(lowest)) == "-9223372036854775808");
  CHECK(fraction_text(Rational(std::uint64_t{9223372036854775808U})) == "9223372036854775808");
  CHECK(fraction_text(Rational(std::numeric_limits<std::uint64_t>::max())) ==
        "18446744073709551615");
}

TEST_CASE("the word that cannot change its sign is kept beyond words") {
  const Rational least(lowest);
  CHECK_FALSE(least.is_word());
  CHECK(is_canonical(least));
  CHECK(least + 1 == Rational(-word_max));
  CHECK((least + 1).is_word());
  CHECK(-least == whole("9223372036854775808"));
  CHECK(Rational(-word_max) - 1 == least);
  CHECK(Rational(std::int64_t{1} << 62) * -2 == least);
}

TEST_CASE("fractions of the lowest integer") {
  CHECK(Rational(lowest, lowest) == 1);
  CHECK(Rational(lowest, 2) == Rational(-4611686018427387904));
  CHECK(Rational(lowest, 2).is_word());
  CHECK(Rational(lowest, -1) == whole("9223372036854775808"));
  CHECK(Rational(0, lowest) == 0);
  CHECK(fraction_text(Rational(1, lowest)) == "-1/9223372036854775808");
  CHECK(fraction_text(Rational(-3, lowest)) == "3/9223372036854775808");
  CHECK(fraction_text(Rational(word_max, lowest)) == "-9223372036854775807/9223372036854775808");
  CHECK(is_canonical(Rational(1, lowest)));
}

TEST_CASE("a value promotes beyond words and comes back when it fits") {
  Rational x(word_max);
  x += 1;
  CHECK_FALSE(x.is_word());
  CHECK(fraction_text(x) == "9223372036854775808");
  x -= 1;
  CHECK(x.is_word());
  CHECK(x == Rational(word_max));

  Rational y(1, word_max);
  y /= 3;
  CHECK_FALSE(y.is_word());
  CHECK(fraction_text(y) == "1/27670116110564327421");
  y *= 3;
  CHECK(y.is_word());
  CHECK(y == Rational(1, word_max));
}

TEST_CASE("a sum whose parts overflow though it fits stays in words") {
  // Each product of a numerator and a denominator is beyond words; the terms cancel.
  const Rational a(word_max, 3037000499);
  const Rational b(-word_max, 3037000500);
  const Rational sum = a + b;
  CHECK(sum == Rational(word_max, 3037000499) / 3037000500);
  CHECK(sum.is_word());
  CHECK(is_canonical(sum));
  CHECK((a - a).is_word());
  CHECK(a - a == 0);
}

TEST_CASE("equal values hash alike however they came about") {
  const Rational x =
      Rational((std::int64_t{1} << 62) - 1, 3) + Rational((std::int64_t{1} << 62) - 1, 5);
  const Rational direct = make_rational(big_integer("12297829382473034408"), BigInt(5));
  CHECK(fraction_text(x) == "12297829382473034408/5");
  CHECK(x == direct);
  CHECK(hash_of(x) == hash_of(direct));

  const Rational half = x * Rational(1, 2);
  const Rational half_direct(6148914691236517204, 5);
  CHECK(half.is_word());
  CHECK(half == half_direct);
  CHECK(hash_of(half) == hash_of(half_direct));
}

TEST_CASE("hashes survive a detour beyond words") {
  Operands operands(11);
  const Rational detour = whole("1000000000000000000000000000057");
  for (int round = 0; round < 5000; ++round) {
    const Rational x = rational_of(operands.any());
    const Rational back = (x * detour + 1 - 1) / detour;
    if (!(back == x) || hash_of(back) != hash_of(x) || !is_canonical(back)) {
      FAIL(fraction_text(x));
    }
  }
}

TEST_CASE("hashes tell kitchen fractions apart") {
  std::set<std::size_t> hashes;
  std::size_t values = 0;
  for (std::int64_t denominator = 1; denominator <= 64; ++denominator) {
    for (std::int64_t numerator = -200; numerator <= 200; ++numerator) {
      if (std::gcd(numerator, denominator) != 1) continue;
      hashes.insert(hash_of(Rational(numerator, denominator)));
      ++values;
    }
  }
  CHECK(hashes.size() * 10 >= values * 9);
}

}  // namespace
}  // namespace scalepan
