// GMP's rationals as an oracle: one million random operations, a tenth of it under sanitizers.
#include <gmpxx.h>

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <vector>

#include "check.hpp"
#include "operands.hpp"

namespace scalepan {
namespace {

constexpr int operations = 1000000 / operations_divisor;

void set(mpz_class& out, const BigInt& x) {
  std::vector<std::uint32_t> parts;
  export_bits(x, std::back_inserter(parts), 32);
  mpz_import(out.get_mpz_t(), parts.size(), 1, sizeof(std::uint32_t), 0, 0, parts.data());
  if (x < 0) out = -out;
}

/// GMP's own conversion takes a long, which is no 64-bit word everywhere.
void set(mpz_class& out, std::int64_t x) {
  const std::uint64_t size =
      x < 0 ? 0 - static_cast<std::uint64_t>(x) : static_cast<std::uint64_t>(x);
  mpz_import(out.get_mpz_t(), 1, 1, sizeof size, 0, 0, &size);
  if (x < 0) mpz_neg(out.get_mpz_t(), out.get_mpz_t());
}

class Comparison {
 public:
  bool same(const Rational& ours, const mpq_class& oracle) {
    if (ours.is_word()) {
      set(numerator_, ours.word_numerator());
      set(denominator_, ours.word_denominator());
    } else {
      set(numerator_, ours.big().value.numerator());
      set(denominator_, ours.big().value.denominator());
    }
    return is_canonical(ours) && numerator_ == oracle.get_num() && denominator_ == oracle.get_den();
  }

 private:
  mpz_class numerator_;
  mpz_class denominator_;
};

struct Pair {
  Rational ours;
  mpq_class oracle;
};

Pair pair_of(const Operand& operand) {
  mpq_class oracle;
  set(oracle.get_num(), operand.numerator);
  set(oracle.get_den(), operand.denominator);
  oracle.canonicalize();
  return {rational_of(operand), oracle};
}

std::vector<Pair> draw_pairs(Operands& operands, int count) {
  std::vector<Pair> pairs;
  while (std::ssize(pairs) < count) pairs.push_back(pair_of(operands.any()));
  return pairs;
}

bool same_order(const Pair& a, const Pair& b) {
  const int order = cmp(a.oracle, b.oracle);
  return (a.ours < b.ours) == (order < 0) && (a.ours > b.ours) == (order > 0) &&
         (a.ours == b.ours) == (order == 0);
}

bool agree(char operation, const Pair& a, const Pair& b, Comparison& comparison) {
  switch (operation) {
    case '+':
      return comparison.same(a.ours + b.ours, a.oracle + b.oracle);
    case '-':
      return comparison.same(a.ours - b.ours, a.oracle - b.oracle);
    case '*':
      return comparison.same(a.ours * b.ours, a.oracle * b.oracle);
    case '/':
      if (b.oracle != 0) return comparison.same(a.ours / b.ours, a.oracle / b.oracle);
      return thrown_by([&] { return a.ours / b.ours; }).code == "number.division_by_zero";
    default:
      return same_order(a, b);
  }
}

TEST_CASE("random operations agree with GMP") {
  Operands operands(20240229);
  const std::vector<Pair> pairs = draw_pairs(operands, 20000);
  Comparison comparison;
  for (const Pair& pair : pairs) REQUIRE(comparison.same(pair.ours, pair.oracle));
  const auto beyond_words =
      std::count_if(pairs.begin(), pairs.end(), [](const Pair& p) { return !p.ours.is_word(); });
  CHECK(beyond_words > 4000);
  CHECK(beyond_words < 10000);

  for (int done = 0; done < operations; ++done) {
    const char operation = "+-*/<"[operands.below(5)];
    const Pair& a = pairs[operands.below(pairs.size())];
    const Pair& b = pairs[operands.below(pairs.size())];
    if (!agree(operation, a, b, comparison)) {
      FAIL(a.oracle.get_str() << " " << operation << " " << b.oracle.get_str());
    }
  }
}

TEST_CASE("the comparison with GMP notices a wrong result") {
  Comparison comparison;
  CHECK_FALSE(comparison.same(Rational(1, 3), mpq_class(1, 4)));
  CHECK_FALSE(comparison.same(Rational(-1, 3), mpq_class(1, 3)));
  CHECK_FALSE(comparison.same(whole("18446744073709551617"), mpq_class("18446744073709551616")));
  CHECK(comparison.same(whole("-18446744073709551617"), mpq_class("-18446744073709551617")));
}

}  // namespace
}  // namespace scalepan
