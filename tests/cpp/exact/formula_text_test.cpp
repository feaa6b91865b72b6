// The formula grammar of number_text.hpp: each production, each limit, each error.
#include <string>
#include <string_view>
#include <vector>

#include "check.hpp"

namespace scalepan {
namespace {

struct Read {
  std::string text;
  Rational value;
};

void check_all(const std::vector<Read>& cases) {
  for (const auto& [text, value] : cases) {
    CAPTURE(text);
    CHECK(parse_formula_number(text) == value);
    CHECK(parse_formula_number("-(" + text + ")") == -value);
    CHECK(parse_formula_number(" ( " + text + " ) ") == value);
  }
}

Thrown formula_error(std::string_view text) {
  return thrown_by([&] { return parse_formula_number(text); });
}

Thrown unreadable(const std::string& rest, std::size_t offset) {
  return {"number.unreadable", "no number is written in \"" + rest + "\"", "", offset};
}

Thrown missing(std::size_t offset) {
  return {"number.unreadable", "a number is missing at the end", "", offset};
}

TEST_CASE("a hyphen is a mixed number in an amount and a minus in a formula") {
  CHECK(parse_amount_number("1-1/2") == Rational(3, 2));
  CHECK(parse_formula_number("1-1/2") == Rational(1, 2));
}

TEST_CASE("formulas: literals") {
  check_all({{"3", 3},
             {"2.5", Rational(5, 2)},
             {".35", Rational(7, 20)},
             {"1e3", 1000},
             {"1E3", 1000},
             {"1e+3", 1000},
             {"25e-1", Rational(5, 2)},
             {"2.5e-3", Rational(1, 400)},
             {".5e1", 5},
             {"1e0", 1},
             {"1e007", 10000000},
             {"1e19", whole("10000000000000000000")}});
}

TEST_CASE("formulas: products and quotients from the left") {
  check_all({{"2*3", 6},
             {"1/3", Rational(1, 3)},
             {"6/4", Rational(3, 2)},
             {"1/2/3", Rational(1, 6)},
             {"12/2*3", 18},
             {"2*-3", -6},
             {"6/-4", Rational(-3, 2)},
             {" 2 * 3 / 4 ", Rational(3, 2)}});
}

TEST_CASE("formulas: sums from the left, after products") {
  check_all({{"1+2*3", 7},
             {"2*3+1", 7},
             {"10-4-3", 3},
             {"1+1/2", Rational(3, 2)},
             {"1--1", 2},
             {"1+-1/2", Rational(1, 2)},
             {"0.1+0.2", Rational(3, 10)},
             {"1 + 1/2 - 1/3 * 3", Rational(1, 2)}});
}

TEST_CASE("formulas: signs and brackets") {
  check_all({{"-3", -3},
             {"--3", 3},
             {"- - -3", -3},
             {"(1+2)*3", 9},
             {"3/(1/2)", 6},
             {"((((7))))", 7},
             {"-(2-5)", 3},
             {"(1+2)/(3+4)", Rational(3, 7)}});
}

TEST_CASE("formulas: the exponent is read up to its limit") {
  const Thrown too_large{"number.exponent", "the exponent of a number is too large",
                         "at most 1000 is read", 2};
  CHECK(parse_formula_number("1e1000") == power(10, 1000));
  CHECK(parse_formula_number("1e-1000") == power(10, -1000));
  CHECK(formula_error("1e1001") == too_large);
  CHECK(formula_error("1e99999999999999999999") == too_large);
  Thrown negative = too_large;
  negative.offset = 3;
  CHECK(formula_error("1e-1001") == negative);
}

TEST_CASE("formulas: digits are read up to their limit") {
  const std::string most(1000, '9');
  const std::string more(1001, '9');
  const auto too_many = [](std::size_t offset) {
    return Thrown{"number.too_many_digits", "a number of 1001 digits is too long",
                  "at most 1000 digits are read", offset};
  };
  CHECK(parse_formula_number(most) == power(10, 1000) - 1);
  CHECK(formula_error(more) == too_many(0));
  CHECK(formula_error("1+." + more) == too_many(3));
  CHECK(formula_error("1e" + more) == too_many(2));
}

TEST_CASE("formulas: brackets are read up to their limit") {
  const auto nested = [](std::size_t depth) {
    return std::string(depth, '(') + "1" + std::string(depth, ')');
  };
  CHECK(parse_formula_number(nested(100)) == 1);
  CHECK(formula_error(nested(101)) ==
        Thrown{"number.depth", "more than 100 brackets are open at once", "", 101});
  CHECK(formula_error(nested(1000000)).code == "number.depth");
  // Closed brackets no longer count.
  CHECK(parse_formula_number(nested(100) + "+" + nested(100)) == 2);
}

TEST_CASE("formulas: long rows of signs and terms need no depth") {
  CHECK(parse_formula_number(std::string(100001, '-') + "1") == -1);
  std::string ones = "1";
  for (int n = 1; n < 20000; ++n) ones += "+1";
  CHECK(parse_formula_number(ones) == 20000);
}

TEST_CASE("formulas: division by zero is refused at the divisor") {
  const auto zero = [](std::size_t offset) {
    return Thrown{"number.zero_denominator", "the denominator of a fraction is zero", "", offset};
  };
  CHECK(formula_error("1/0") == zero(2));
  CHECK(formula_error("1 / 0.00") == zero(4));
  CHECK(formula_error("1/(2-2)") == zero(2));
  CHECK(formula_error("2+1/-0") == zero(4));
}

TEST_CASE("formulas: something missing at the end") {
  CHECK(formula_error("") == missing(0));
  CHECK(formula_error("  ") == missing(2));
  CHECK(formula_error("1+") == missing(2));
  CHECK(formula_error("2 * ") == missing(4));
  CHECK(formula_error("-") == missing(1));
  CHECK(formula_error("(1") == missing(2));
  CHECK(formula_error("(") == missing(1));
}

TEST_CASE("formulas: what is no number is refused where it stands") {
  CHECK(formula_error("two") == unreadable("two", 0));
  CHECK(formula_error("1 1/2") == unreadable("1/2", 2));
  CHECK(formula_error("1½") == unreadable("½", 1));
  CHECK(formula_error("1,5") == unreadable(",5", 1));
  CHECK(formula_error("1e") == unreadable("e", 1));
  CHECK(formula_error("1e+") == unreadable("e+", 1));
  CHECK(formula_error("1)") == unreadable(")", 1));
  CHECK(formula_error("()") == unreadable(")", 1));
  CHECK(formula_error("*2") == unreadable("*2", 0));
  CHECK(formula_error("1**2") == unreadable("*2", 2));
  CHECK(formula_error("+1") == unreadable("+1", 0));
}

TEST_CASE("formulas: a point needs a digit after it") {
  CHECK(formula_error("5.") == unreadable(".", 1));
  CHECK(formula_error("5.e1") == unreadable(".e1", 1));
  CHECK(formula_error("1.+2") == unreadable(".+2", 1));
  CHECK(formula_error(".") == unreadable(".", 0));
  CHECK(formula_error("1..2") == unreadable("..2", 1));
  CHECK(formula_error("1.2.3") == unreadable(".3", 3));
}

TEST_CASE("formulas: a number that grows too large is refused") {
  std::string huge = "1e1000";
  for (int n = 1; n < 320; ++n) huge += "*1e1000";
  CHECK(formula_error(huge) ==
        Thrown{"number.too_large", "a number of more than 1048576 bits is too large to work with"});
}

}  // namespace
}  // namespace scalepan
