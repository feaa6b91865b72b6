// Sums of columns against the same sums by Boost's unbounded integers, one number after the other.
#include "exact/column.hpp"

#include <functional>
#include <vector>

#include "check.hpp"
#include "exact/operands.hpp"

namespace scalepan {
namespace {

using Numbers = std::vector<Rational>;

BigRational boost_sum(const Numbers& numbers) {
  BigRational sum = 0;
  for (const Rational& number : numbers) sum += to_boost(number);
  return sum;
}

BigRational boost_sum_of_products(const Numbers& a, const Numbers& b) {
  BigRational sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += to_boost(a[i]) * to_boost(b[i]);
  return sum;
}

Numbers drawn(std::size_t size, const std::function<Rational()>& draw) {
  Numbers numbers(size);
  for (Rational& number : numbers) number = draw();
  return numbers;
}

/// How many of the sums of two columns, and of what they hold, are wrong or not in lowest terms.
int wrong_sums(const Numbers& a, const Numbers& b) {
  const RationalColumn left = RationalColumn::from(a);
  const RationalColumn right = RationalColumn::from(b);
  int wrong = 0;
  for (std::size_t i = 0; i < a.size(); ++i) wrong += left.at(i) == a[i] ? 0 : 1;
  const auto expect = [&](const Rational& ours, const BigRational& boost) {
    if (!is_canonical(ours) || to_boost(ours) != boost) ++wrong;
  };
  expect(left.sum(), boost_sum(a));
  expect(sum_of_products(left, right), boost_sum_of_products(a, b));
  expect(sum_of_products(right, left), boost_sum_of_products(a, b));
  return wrong;
}

TEST_CASE("columns: sums of none and of one") {
  const RationalColumn none = RationalColumn::from({});
  CHECK(none.size() == 0);
  CHECK(none.sum() == Rational(0));
  CHECK(sum_of_products(none, none) == Rational(0));

  const Numbers half{Rational(1, 2)};
  const RationalColumn one = RationalColumn::from(half);
  CHECK(one.size() == 1);
  CHECK(one.sum() == Rational(1, 2));
  CHECK(sum_of_products(one, one) == Rational(1, 4));
}

TEST_CASE("columns: a sum worked by hand") {
  // 3/2 * 4 + (-2/3) * 9/2 + 5 * 1/4 = 6 - 3 + 5/4
  const Numbers amounts{Rational(3, 2), Rational(-2, 3), 5};
  const Numbers prices{4, Rational(9, 2), Rational(1, 4)};
  const RationalColumn a = RationalColumn::from(amounts);
  const RationalColumn b = RationalColumn::from(prices);
  CHECK(a.over_one_denominator());
  CHECK(a.sum() == Rational(35, 6));
  CHECK(sum_of_products(a, b) == Rational(17, 4));
}

TEST_CASE("columns: of different lengths they have no products") {
  const Numbers three{1, 2, 3};
  const RationalColumn a = RationalColumn::from(three);
  const RationalColumn b = RationalColumn::from(std::span(three).first(2));
  CHECK(thrown_by([&] { return sum_of_products(a, b); }) ==
        Thrown{"number.columns", "columns of 3 and 2 numbers have no products line by line"});
}

TEST_CASE("columns: random numbers of every size, of every length") {
  Operands operands(31);
  using Draw = std::function<Rational()>;
  const std::vector<Draw> draws{
      [&] { return rational_of(operands.kitchen()); },
      [&] { return Rational(operands.between(-1000, 1000), 24); },
      [&] { return Rational(operands.between(-word_max, word_max)); },
      [&] { return Rational(operands.between(-(1LL << 40), 1LL << 40), 64); },
      [&] { return rational_of(operands.any_word()); },
      [&] { return rational_of(operands.at_the_limit()); },
      [&] { return rational_of(operands.beyond_words()); },
  };
  int wrong = 0;
  for (int round = 0; round < 2000 / operations_divisor; ++round) {
    const std::size_t size = operands.below(300);
    const Draw& left = draws[operands.below(draws.size())];
    const Draw& right = draws[operands.below(draws.size())];
    // Unlike denominators beyond words grow with every line.
    const bool grows = &left >= &draws[4] || &right >= &draws[4];
    const std::size_t lines = grows ? size / 20 : size;
    wrong += wrong_sums(drawn(lines, left), drawn(lines, right));
  }
  CHECK(wrong == 0);
}

TEST_CASE("columns: the largest products of one sign, on both sides of every bound") {
  // Sums of words end where lines * left * right is past 2^63, sums of 128 bits past 2^126.
  int wrong = 0;
  for (const std::size_t lines : {1U, 2U, 3U, 63U, 64U, 65U, 127U, 128U, 129U, 1000U}) {
    for (unsigned left = 0; left < 63; left += 3) {
      for (unsigned right = left; right < 63; right += 7) {
        for (const std::int64_t off : {-1, 0, 1}) {
          const Numbers a(lines, Rational((std::int64_t{1} << left) + off));
          const Numbers b(lines, Rational(-(std::int64_t{1} << right) - off));
          const Rational product = a[0] * b[0];
          const Rational count(static_cast<std::int64_t>(lines));
          const RationalColumn x = RationalColumn::from(a);
          const RationalColumn y = RationalColumn::from(b);
          if (x.sum() != a[0] * count) ++wrong;
          if (sum_of_products(x, y) != product * count) ++wrong;
        }
      }
    }
  }
  CHECK(wrong == 0);

  for (const std::size_t lines : {1U, 2U, 4U, 5U, 100U}) {
    const Numbers most(lines, Rational(word_max));
    const Numbers least(lines, Rational(-word_max));
    CHECK(wrong_sums(most, most) == 0);
    CHECK(wrong_sums(most, least) == 0);
    CHECK(wrong_sums(least, least) == 0);
  }
}

TEST_CASE("columns: without a common denominator among the words") {
  // The product of the primes up to 53 is beyond 2^63.
  Numbers numbers;
  for (const int prime : {2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53}) {
    numbers.emplace_back(1, prime);
  }
  CHECK_FALSE(RationalColumn::from(numbers).over_one_denominator());
  CHECK(wrong_sums(numbers, numbers) == 0);

  // A common denominator, but not all over it are words.
  const Numbers wide{Rational(word_max), Rational(1, 3)};
  CHECK_FALSE(RationalColumn::from(wide).over_one_denominator());
  CHECK(wrong_sums(wide, wide) == 0);

  // Both denominators are words, their product is none.
  const Numbers fine{Rational(1, word_max), Rational(2, word_max)};
  CHECK(RationalColumn::from(fine).over_one_denominator());
  CHECK(wrong_sums(fine, fine) == 0);

  // One column has a common denominator, the other has none.
  const Numbers whole(numbers.size(), Rational(-7));
  CHECK(wrong_sums(numbers, whole) == 0);
  CHECK(wrong_sums(whole, numbers) == 0);
}

}  // namespace
}  // namespace scalepan
