#include "sheet/form.hpp"

#include <random>

#include "catch.hpp"

using namespace scalepan;

namespace {

RatioForm line(int a, int b) {
  return RatioForm::input() * RatioForm::constant(a) + RatioForm::constant(b);
}

/// The value of a form by itself, as a check on the parts it was put together from.
Rational at(const RatioForm& form, const Rational& x) { return *form.at(x); }

}  // namespace

TEST_CASE("sheet/form: sums, products and quotients are what they are at every point") {
  std::mt19937 random(7);
  std::uniform_int_distribution<int> small(-5, 5);
  int met = 0;
  for (int i = 0; i < 2000; ++i) {
    const RatioForm f = line(small(random), small(random));
    const RatioForm g = line(small(random), small(random));
    const RatioForm c = RatioForm::constant(Rational(small(random), 3));
    const Rational x(small(random), 7);
    CHECK(at(f + g, x) == at(f, x) + at(g, x));
    CHECK(at(f - g, x) == at(f, x) - at(g, x));
    CHECK(at(f * c, x) == at(f, x) * at(c, x));
    if (at(g, x).is_zero() || (g.is_constant() && g.number().is_zero())) continue;
    ++met;
    const RatioForm quotient = f * inverse_of(g);
    CHECK(at(quotient, x) == at(f, x) / at(g, x));
    CHECK(at(quotient + c, x) == at(f, x) / at(g, x) + at(c, x));
    CHECK(at(quotient * g, x) == at(f, x));
    CHECK(at(quotient + quotient, x) == Rational(2) * at(f, x) / at(g, x));
  }
  CHECK(met > 1500);
}

TEST_CASE("sheet/form: what it would be of a higher degree is refused") {
  CHECK_THROWS_AS(line(1, 2) * line(3, 4), NoForm);
  CHECK_THROWS_AS(inverse_of(line(1, 2)) + inverse_of(line(1, 3)), NoForm);
  CHECK((line(0, 2) * line(3, 4)).direction() == 1);
}

TEST_CASE("sheet/form: it tells where it has a value, and its sign right beyond a point") {
  const RatioForm f = line(2, -6);  // 2 x - 6
  CHECK(*f.where(0) == Rational(3));
  CHECK(f.sign_beyond(3) == 1);
  CHECK((f * RatioForm::constant(-1)).sign_beyond(3) == -1);
  CHECK_FALSE(line(0, 5).where(5));
  const RatioForm g = inverse_of(line(1, -2));  // 1 / (x - 2)
  CHECK(*g.pole() == Rational(2));
  CHECK(g.sign_beyond(2) == 1);
  CHECK((g * RatioForm::constant(-3)).sign_beyond(2) == -1);
  CHECK(g.direction() == -1);
  CHECK(*g.where(Rational(1, 4)) == Rational(6));
}
