#include <optional>
#include <string>

#include "check.hpp"
#include "operands.hpp"

namespace scalepan {
namespace {

const char* const two_to_100 = "1267650600228229401496703205376";

TEST_CASE("the fraction form") {
  CHECK(fraction_text(0) == "0");
  CHECK(fraction_text(-7) == "-7");
  CHECK(fraction_text(Rational(6, 4)) == "3/2");
  CHECK(fraction_text(Rational(-1, 3)) == "-1/3");
  CHECK(fraction_text(power(2, 100)) == two_to_100);
  CHECK(fraction_text(power(2, -100)) == std::string("1/") + two_to_100);
}

TEST_CASE("the mixed form") {
  CHECK(mixed_text(0) == "0");
  CHECK(mixed_text(3) == "3");
  CHECK(mixed_text(Rational(1, 2)) == "1/2");
  CHECK(mixed_text(Rational(3, 2)) == "1 1/2");
  CHECK(mixed_text(Rational(-7, 3)) == "-2 1/3");
  CHECK(mixed_text(Rational(-1, 3)) == "-1/3");
  CHECK(mixed_text(power(2, 100) + Rational(1, 3)) == std::string(two_to_100) + " 1/3");
}

TEST_CASE("the decimal form ends or is not there") {
  CHECK(decimal_text(0, 0) == "0");
  CHECK(decimal_text(42, 0) == "42");
  CHECK(decimal_text(Rational(1, 8), 3) == "0.125");
  CHECK(decimal_text(Rational(1, 8), 9) == "0.125");
  CHECK(decimal_text(Rational(1, 8), 2) == std::nullopt);
  CHECK(decimal_text(Rational(-1, 400), 4) == "-0.0025");
  CHECK(decimal_text(Rational(1, 3), 50) == std::nullopt);
  CHECK(decimal_text(Rational(1, 6), 50) == std::nullopt);
  CHECK(decimal_text(power(10, -30), 30) == "0.000000000000000000000000000001");
  CHECK(decimal_text(power(10, -30), 29) == std::nullopt);
  // 2^-20 has as many places as its exponent: 5^20 = 95367431640625.
  CHECK(decimal_text(power(2, -20), 20) == "0.00000095367431640625");
}

TEST_CASE("the exact form is a decimal of at most four places, else mixed") {
  CHECK(exact_text(Rational(5, 4)) == "1.25");
  CHECK(exact_text(Rational(1, 16)) == "0.0625");
  CHECK(exact_text(Rational(33, 32)) == "1 1/32");
  CHECK(exact_text(Rational(-7, 3)) == "-2 1/3");
  CHECK(exact_text(12) == "12");
}

TEST_CASE("the fixed form prints all its places, rounded half up") {
  CHECK(fixed_text(Rational(243, 10), 2) == "24.30");
  CHECK(fixed_text(Rational(1, 3), 2) == "0.33");
  CHECK(fixed_text(Rational(2, 3), 2) == "0.67");
  CHECK(fixed_text(Rational(2, 3), 0) == "1");
  CHECK(fixed_text(Rational(1, 200), 2) == "0.01");
  CHECK(fixed_text(Rational(-1, 200), 2) == "-0.01");
  CHECK(fixed_text(Rational(-1, 201), 2) == "0.00");
  CHECK(fixed_text(Rational(999, 1000), 2) == "1.00");
  CHECK(fixed_text(1250, -2) == "1300");
  CHECK(fixed_text(-49, -2) == "0");
  CHECK(fixed_text(power(2, 100) + Rational(1, 8), 2) == std::string(two_to_100) + ".13");
}

/// Which form does not read back to the value, or nothing.
std::string broken_form(const Rational& x) {
  const std::string fraction = fraction_text(x);
  if (!(parse_amount_number(fraction) == x)) return "fraction as an amount";
  if (!(parse_formula_number(fraction) == x)) return "fraction as a formula";
  if (!(parse_amount_number(mixed_text(x)) == x)) return "mixed";
  if (!(parse_amount_number(exact_text(x)) == x)) return "exact";
  return {};
}

TEST_CASE("fraction, mixed and exact forms read back to the same value") {
  Operands operands(201);
  for (int round = 0; round < 20000 / operations_divisor; ++round) {
    const Rational x = rational_of(operands.any());
    const std::string form = broken_form(x);
    if (!form.empty()) FAIL(form << " of " << fraction_text(x));
  }
}

TEST_CASE("the decimal form reads back to the same value by both grammars") {
  Operands operands(202);
  for (int round = 0; round < 10000 / operations_divisor; ++round) {
    const int places = static_cast<int>(operands.between(0, 40));
    const Rational x = make_rational(operands.any().numerator, BigInt(1)) / power(10, places);
    const std::optional<std::string> text = decimal_text(x, places);
    const bool same = text && parse_amount_number(*text) == x && parse_formula_number(*text) == x;
    if (!same) FAIL(fraction_text(x));
  }
}

TEST_CASE("the fixed form is within half a last place") {
  Operands operands(203);
  for (int round = 0; round < 5000 / operations_divisor; ++round) {
    const Rational x = rational_of(operands.kitchen());
    const int places = static_cast<int>(operands.between(0, 6));
    const Rational read = parse_amount_number(fixed_text(x, places));
    if (abs(read - x) * 2 > power(10, -places)) FAIL(fraction_text(x) << " to " << places);
  }
}

}  // namespace
}  // namespace scalepan
