// Boost.Rational over unbounded integers as an oracle, at the places where words overflow.
#include <array>
#include <compare>
#include <string>

#include "check.hpp"
#include "operands.hpp"

namespace scalepan {
namespace {

BigRational boost_of(const Operand& operand) { return {operand.numerator, operand.denominator}; }

/// Does not use to_boost, which is under test itself.
bool same(const Rational& ours, const BigRational& oracle) {
  if (!is_canonical(ours)) return false;
  if (!ours.is_word()) {
    return ours.big().value.numerator() == oracle.numerator() &&
           ours.big().value.denominator() == oracle.denominator();
  }
  return ours.word_numerator() == oracle.numerator() &&
         ours.word_denominator() == oracle.denominator();
}

int order_of(const BigRational& x, const BigRational& y) { return x < y ? -1 : x > y ? 1 : 0; }
int order_of(const Rational& x, const Rational& y) {
  const auto order = x <=> y;
  return order < 0 ? -1 : order > 0 ? 1 : 0;
}

/// The first operation that disagrees, or nothing.
std::string disagreement(const Operand& left, const Operand& right) {
  const Rational a = rational_of(left);
  const Rational b = rational_of(right);
  const BigRational x = boost_of(left);
  const BigRational y = boost_of(right);
  if (!same(a, x) || !same(b, y)) return "construction";
  if (!same(a + b, x + y)) return "+";
  if (!same(a - b, x - y)) return "-";
  if (!same(a * b, x * y)) return "*";
  if (!b.is_zero() && !same(a / b, x / y)) return "/";
  if (!same(-a, -x)) return "negation";
  if (order_of(a, b) != order_of(x, y)) return "<=>";
  if ((a == b) != (x == y)) return "==";
  return {};
}

template <typename Draw>
void compare_with_boost(Draw draw) {
  for (int round = 0; round < 40000 / operations_divisor; ++round) {
    const Operand left = draw();
    const Operand right = draw();
    const std::string operation = disagreement(left, right);
    if (!operation.empty()) {
      FAIL(operation << " of " << left.numerator << "/" << left.denominator << " and "
                     << right.numerator << "/" << right.denominator);
    }
  }
}

TEST_CASE("words at their limits agree with Boost.Rational") {
  Operands operands(101);
  compare_with_boost([&] { return operands.at_the_limit(); });
}

TEST_CASE("kitchen fractions agree with Boost.Rational") {
  Operands operands(102);
  compare_with_boost([&] { return operands.kitchen(); });
}

TEST_CASE("operands of every kind agree with Boost.Rational") {
  Operands operands(103);
  compare_with_boost([&] { return operands.any(); });
}

TEST_CASE("values go to Boost.Rational and back") {
  Operands operands(104);
  for (int round = 0; round < 10000 / operations_divisor; ++round) {
    const Operand operand = operands.any();
    const BigRational oracle = boost_of(operand);
    const BigRational there = to_boost(rational_of(operand));
    const bool equal = there.numerator() == oracle.numerator() &&
                       there.denominator() == oracle.denominator() &&
                       same(from_boost(oracle), oracle);
    if (!equal) FAIL(operand.numerator << "/" << operand.denominator);
  }
}

TEST_CASE("make_rational takes any signs") {
  const BigInt big = big_integer("1267650600228229401496703205376");
  CHECK(fraction_text(make_rational(big, BigInt(-6))) == "-633825300114114700748351602688/3");
  CHECK(fraction_text(make_rational(BigInt(-6), -big)) == "3/633825300114114700748351602688");
  CHECK(make_rational(BigInt(-4), BigInt(-6)) == Rational(2, 3));
  CHECK(make_rational(BigInt(0), -big) == 0);
}

}  // namespace
}  // namespace scalepan
