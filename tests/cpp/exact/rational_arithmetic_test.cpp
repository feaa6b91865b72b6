#include <algorithm>
#include <array>
#include <compare>
#include <vector>

#include "check.hpp"

namespace scalepan {
namespace {

const Thrown division_by_zero{"number.division_by_zero", "division by zero"};
const Thrown zero_denominator{"number.zero_denominator", "the denominator of a fraction is zero"};

TEST_CASE("kitchen arithmetic is exact") {
  CHECK(Rational(1, 3) + Rational(1, 6) == Rational(1, 2));
  CHECK(Rational(3, 4) + Rational(3, 4) == Rational(3, 2));
  CHECK(Rational(1, 8) - Rational(5, 8) == Rational(-1, 2));
  CHECK(Rational(1, 10) + Rational(2, 10) == Rational(3, 10));
  CHECK(Rational(2, 3) * Rational(3, 4) == Rational(1, 2));
  CHECK(Rational(2, 3) / Rational(4, 9) == Rational(3, 2));
  CHECK(-Rational(2, 3) == Rational(-2, 3));
  CHECK(Rational(7) / -2 == Rational(-7, 2));
}

TEST_CASE("assigning operators equal the plain ones") {
  Rational x(1, 2);
  x += Rational(1, 3);
  CHECK(x == Rational(5, 6));
  x -= 1;
  CHECK(x == Rational(-1, 6));
  x *= Rational(3, 5);
  CHECK(x == Rational(-1, 10));
  x /= Rational(-1, 20);
  CHECK(x == 2);
}

TEST_CASE("zero and one are neutral in every form") {
  const Rational zero;
  for (const Rational& x :
       {Rational(-5, 7), Rational(0), whole("340282366920938463463374607431768211456")}) {
    CHECK(x + zero == x);
    CHECK(zero - x == -x);
    CHECK(x * zero == 0);
    CHECK(x * 1 == x);
    CHECK(x / 1 == x);
    CHECK((x - x).is_word());
  }
}

TEST_CASE("values beyond words multiply and divide") {
  // 2^64 + 1 = 274177 x 67280421310721 (Landry 1880 gave it as F6).
  const Rational fermat = Rational(274177) * Rational(67280421310721);
  CHECK(fraction_text(fermat) == "18446744073709551617");
  CHECK(fermat / 274177 == Rational(67280421310721));
  CHECK((fermat / 274177).is_word());
  CHECK(fermat / -fermat == -1);
  CHECK(1 / fermat * fermat == 1);
  CHECK(fraction_text(-1 / fermat) == "-1/18446744073709551617");
}

TEST_CASE("division by zero is refused in every form") {
  const Rational big = whole("18446744073709551616");
  CHECK(thrown_by([] { return Rational(1) / Rational(0); }) == division_by_zero);
  CHECK(thrown_by([] { return Rational(0) / Rational(0); }) == division_by_zero);
  CHECK(thrown_by([&] { return big / Rational(0); }) == division_by_zero);
  CHECK(thrown_by([&] { return big / (big - big); }) == division_by_zero);
  CHECK(thrown_by([] { return Rational(1, 0); }) == zero_denominator);
  CHECK(thrown_by([] { return Rational(0, 0); }) == zero_denominator);
  CHECK(thrown_by([] { return make_rational(BigInt(3), BigInt(0)); }) == zero_denominator);
}

TEST_CASE("a failed division leaves its operand alone") {
  Rational x(2, 3);
  CHECK(thrown_by([&] { return x /= 0; }) == division_by_zero);
  CHECK(x == Rational(2, 3));
}

TEST_CASE("sign, zero and integer are told in every form") {
  const Rational big = whole("18446744073709551616");
  CHECK(Rational(-1, 2).sign() == -1);
  CHECK(Rational(0).sign() == 0);
  CHECK(Rational(1, 2).sign() == 1);
  CHECK(big.sign() == 1);
  CHECK((-big).sign() == -1);
  CHECK(Rational(4, 2).is_integer());
  CHECK_FALSE(Rational(1, 2).is_integer());
  CHECK(big.is_integer());
  CHECK_FALSE((big / 3).is_integer());
  CHECK_FALSE(big.is_zero());
  CHECK(Rational(0, 5).is_zero());
}

TEST_CASE("values in ascending order compare so in every pair") {
  const Rational big = whole("18446744073709551616");
  const std::vector<Rational> ascending{
      -big,
      -big + Rational(1, 3),
      Rational(-word_max),
      Rational(-1, 2),
      Rational(-1, 3),
      -1 / big,
      0,
      1 / big,
      Rational(1, word_max),
      Rational(1, word_max - 1),
      Rational(1, 3),
      Rational(1, 2),
      Rational(word_max - 1, word_max),
      1,
      Rational(word_max, word_max - 1),
      Rational(word_max - 1, 2),
      Rational(word_max, 2),
      Rational(word_max),
      big - Rational(1, 3),
      big,
  };
  for (std::size_t i = 0; i < ascending.size(); ++i) {
    for (std::size_t j = 0; j < ascending.size(); ++j) {
      CAPTURE(ascending[i], ascending[j]);
      CHECK((ascending[i] <=> ascending[j]) == (i <=> j));
      CHECK((ascending[i] == ascending[j]) == (i == j));
      CHECK((ascending[i] < ascending[j]) == (i < j));
      CHECK((ascending[i] >= ascending[j]) == (i >= j));
    }
  }
}

TEST_CASE("fractions that a double cannot tell apart are told apart") {
  // 1/3 and this quotient agree in their first 18 digits.
  const Rational near_third(3074457345618258602, 9223372036854775807);
  CHECK(near_third < Rational(1, 3));
  CHECK(near_third != Rational(1, 3));
  CHECK(Rational(1, 3) - near_third == Rational(1, 3) / word_max);
}

}  // namespace
}  // namespace scalepan
