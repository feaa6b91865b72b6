#include <array>
#include <limits>

#include "check.hpp"

namespace scalepan {
namespace {

const Thrown division_by_zero{"number.division_by_zero", "division by zero"};
const Thrown too_large{"number.too_large",
                       "a number of more than 1048576 bits is too large to work with"};
const char* const two_to_100 = "1267650600228229401496703205376";

TEST_CASE("floor and ceil enclose a value on both sides of zero") {
  struct Case {
    Rational x;
    Rational floor;
    Rational ceil;
  };
  const std::array<Case, 11> cases{{
      {Rational(7, 2), 3, 4},
      {Rational(-7, 2), -4, -3},
      {Rational(1, word_max), 0, 1},
      {Rational(-1, word_max), -1, 0},
      {3, 3, 3},
      {-3, -3, -3},
      {0, 0, 0},
      {Rational(word_max, 2), 4611686018427387903, 4611686018427387904},
      {Rational(-word_max, 2), -4611686018427387904, -4611686018427387903},
      {whole(two_to_100) / 3, whole("422550200076076467165567735125"),
       whole("422550200076076467165567735126")},
      {-whole(two_to_100) / 3, whole("-422550200076076467165567735126"),
       whole("-422550200076076467165567735125")},
  }};
  for (const auto& [x, below, above] : cases) {
    CAPTURE(x);
    CHECK(floor(x) == below);
    CHECK(ceil(x) == above);
  }
}

TEST_CASE("floor and ceil of a big fraction return to words") {
  const Rational x = 1 + 1 / whole(two_to_100);
  CHECK_FALSE(x.is_word());
  CHECK(floor(x) == 1);
  CHECK(floor(x).is_word());
  CHECK(ceil(x) == 2);
  CHECK(floor(-x) == -2);
  CHECK(floor(whole(two_to_100)) == whole(two_to_100));
}

TEST_CASE("powers of either sign") {
  CHECK(power(Rational(2, 3), 3) == Rational(8, 27));
  CHECK(power(Rational(2, 3), -3) == Rational(27, 8));
  CHECK(power(Rational(-1, 2), 5) == Rational(-1, 32));
  CHECK(power(7, 1) == 7);
  CHECK(power(7, 0) == 1);
  CHECK(power(0, 0) == 1);
  CHECK(power(0, 5) == 0);
  CHECK(power(2, 62) == Rational(std::int64_t{1} << 62));
  CHECK(power(2, 100) == whole(two_to_100));
  CHECK(power(10, -2) == Rational(1, 100));
  CHECK(power(1, std::numeric_limits<int>::max()) == 1);
}

TEST_CASE("powers with the lowest exponent") {
  constexpr int lowest = std::numeric_limits<int>::min();
  CHECK(power(1, lowest) == 1);
  CHECK(power(-1, lowest) == 1);
  CHECK(thrown_by([] { return power(0, lowest); }) == division_by_zero);
  CHECK(thrown_by([] { return power(2, lowest); }) == too_large);
}

TEST_CASE("a number stops growing at the limit of bits") {
  CHECK_FALSE(power(2, 1048575).is_word());
  CHECK(thrown_by([] { return power(2, 1048576); }) == too_large);
  CHECK(thrown_by([] { return power(2, -1048576); }) == too_large);
  CHECK(thrown_by([] { return power(Rational(10), 1000000); }) == too_large);
  CHECK(thrown_by([] { return power(0, -1); }) == division_by_zero);
}

TEST_CASE("reciprocal turns a fraction over and keeps its sign") {
  CHECK(reciprocal(Rational(3, 4)) == Rational(4, 3));
  CHECK(reciprocal(Rational(-3, 4)) == Rational(-4, 3));
  CHECK(reciprocal(Rational(-word_max)) == Rational(-1, word_max));
  CHECK(fraction_text(reciprocal(-whole(two_to_100))) == "-1/1267650600228229401496703205376");
  CHECK(thrown_by([] { return reciprocal(0); }) == division_by_zero);
}

TEST_CASE("abs, numerator and denominator in every form") {
  const Rational big = -whole(two_to_100) / 3;
  CHECK(abs(Rational(-3, 4)) == Rational(3, 4));
  CHECK(abs(Rational(3, 4)) == Rational(3, 4));
  CHECK(abs(big) == -big);
  CHECK(numerator(Rational(-6, 8)) == -3);
  CHECK(denominator(Rational(-6, 8)) == 4);
  CHECK(numerator(big) == -whole(two_to_100));
  CHECK(denominator(big) == 3);
  CHECK(denominator(big).is_word());
}

TEST_CASE("the common step is the largest that divides both") {
  CHECK(common_step(12, 18) == 6);
  CHECK(common_step(Rational(1, 4), Rational(1, 6)) == Rational(1, 12));
  CHECK(common_step(Rational(3, 4), Rational(9, 8)) == Rational(3, 8));
  CHECK(common_step(Rational(-3, 4), Rational(9, 8)) == Rational(3, 8));
  CHECK(common_step(0, Rational(2, 5)) == Rational(2, 5));
  CHECK(common_step(Rational(-2, 5), 0) == Rational(2, 5));
  CHECK(common_step(0, 0) == 0);
  CHECK(common_step(whole(two_to_100), whole(two_to_100) * 3) == whole(two_to_100));
  CHECK(common_step(1 / whole(two_to_100), 1) == 1 / whole(two_to_100));
  // Two primes below 2^32 and one below 2^31: 1/(p q) in words, 1/(p q r) beyond them.
  CHECK(common_step(Rational(1, 4294967291), Rational(1, 2147483647)) ==
        Rational(1, 4294967291 * 2147483647));
  CHECK(common_step(Rational(1, 4294967291 * 2147483647), Rational(1, 4294967279)) ==
        Rational(1, 4294967291 * 2147483647) / 4294967279);
}

}  // namespace
}  // namespace scalepan
