#include "exact/wide.hpp"

#include <array>
#include <cstdint>
#include <numeric>
#include <random>

#include "catch.hpp"
#include "exact/big.hpp"

namespace scalepan {
namespace {

constexpr std::int64_t half_range = std::int64_t{1} << 62;
constexpr std::int64_t root_of_word_max = 3037000499;  // its square is 9223372030926249001

struct WordCase {
  std::int64_t a;
  std::int64_t b;
  bool fits;
  std::int64_t result;
};

TEST_CASE("gcd_words equals std::gcd on words of every size") {
  std::mt19937_64 random(1);
  for (int round = 0; round < 200000; ++round) {
    const std::uint64_t a = (random() >> random() % 64) | 1U << random() % 2;
    const std::uint64_t b = (random() >> random() % 64) | 1U << random() % 2;
    if (gcd_words(a, b) != std::gcd(a, b)) FAIL("gcd_words(" << a << ", " << b << ")");
  }
}

TEST_CASE("gcd_words finds a factor that both were given") {
  constexpr std::array<std::uint64_t, 7> factors{1, 2, 3, 64, 1000, 4294967296, 6700417};
  for (const std::uint64_t factor : factors) {
    // Neighbouring Fibonacci numbers have no common factor and take the most steps.
    CHECK(gcd_words(factor * 1134903170, factor * 701408733) == factor);
    CHECK(gcd_words(factor * 701408733, factor * 1134903170) == factor);
    CHECK(gcd_words(factor, factor) == factor);
  }
}

TEST_CASE("gcd_words at the ends of the range") {
  constexpr std::uint64_t largest = word_max;
  constexpr std::uint64_t top_bit = largest + 1;
  CHECK(gcd_words(1, 1) == 1);
  CHECK(gcd_words(1, largest) == 1);
  CHECK(gcd_words(largest, largest) == largest);
  CHECK(gcd_words(largest, 7) == 7);  // 2^63 - 1 = 7^2 x 73 x 127 x 337 x 92737 x 649657
  CHECK(gcd_words(largest, largest - 1) == 1);
  CHECK(gcd_words(top_bit, top_bit) == top_bit);
  CHECK(gcd_words(top_bit, 48) == 16);
}

TEST_CASE("add_words refuses what is no word") {
  constexpr std::array<WordCase, 10> cases{{
      {word_max, 0, true, word_max},
      {word_max, 1, false, 0},
      {word_max, -1, true, 9223372036854775806},
      {-word_max, 0, true, -word_max},
      {-word_max, -1, false, 0},  // -2^63 cannot change its sign
      {-word_max, 1, true, -9223372036854775806},
      {-word_max, -word_max, false, 0},
      {word_max, -word_max, true, 0},
      {half_range, half_range, false, 0},
      {half_range, half_range - 1, true, word_max},
  }};
  for (const auto& [a, b, fits, result] : cases) {
    CAPTURE(a, b);
    std::int64_t out = 0;
    REQUIRE(add_words(a, b, out) == fits);
    if (fits) CHECK(out == result);
  }
}

TEST_CASE("multiply_words refuses what is no word") {
  constexpr std::array<WordCase, 10> cases{{
      {word_max, 1, true, word_max},
      {word_max, -1, true, -word_max},
      {-word_max, -1, true, word_max},
      {word_max, 0, true, 0},
      {word_max, 2, false, 0},
      {half_range, 2, false, 0},
      {half_range, -2, false, 0},  // -2^63 cannot change its sign
      {root_of_word_max, root_of_word_max, true, 9223372030926249001},
      {root_of_word_max + 1, root_of_word_max + 1, false, 0},
      {-root_of_word_max - 1, root_of_word_max + 1, false, 0},
  }};
  for (const auto& [a, b, fits, result] : cases) {
    CAPTURE(a, b);
    std::int64_t out = 0;
    REQUIRE(multiply_words(a, b, out) == fits);
    if (fits) CHECK(out == result);
  }
}

bool is_word(const BigInt& x) { return x >= -word_max && x <= word_max; }

TEST_CASE("word arithmetic agrees with unbounded integers") {
  std::mt19937_64 random(2);
  const auto word = [&random] {
    const auto x = static_cast<std::int64_t>((random() >> 1U) >> random() % 63);
    return random() % 2 == 0 ? x : -x;
  };
  int overflows = 0;
  for (int round = 0; round < 50000; ++round) {
    const std::int64_t a = word();
    const std::int64_t b = word();
    const BigInt sum = BigInt(a) + b;
    const BigInt product = BigInt(a) * b;
    std::int64_t out = 0;
    const bool sum_fits = add_words(a, b, out);
    if (sum_fits != is_word(sum) || (sum_fits && out != sum)) FAIL(a << " + " << b);
    const bool product_fits = multiply_words(a, b, out);
    if (product_fits != is_word(product) || (product_fits && out != product)) FAIL(a << " x " << b);
    overflows += sum_fits && product_fits ? 0 : 1;
  }
  CHECK(overflows > 10000);
  CHECK(overflows < 40000);
}

TEST_CASE("a wide product holds the largest square of a word") {
  const Wide square = wide_product(word_max, word_max);
  CHECK_FALSE(fits_word(square));
  CHECK(to_word(square / Wide(word_max)) == word_max);
  CHECK(to_word(square % Wide(word_max)) == 0);
  CHECK(to_word(wide_product(-word_max, word_max) + square) == 0);
}

TEST_CASE("fits_word ends at the largest word on both sides") {
  CHECK(fits_word(Wide(word_max)));
  CHECK_FALSE(fits_word(Wide(word_max) + 1));
  CHECK(fits_word(Wide(-word_max)));
  CHECK_FALSE(fits_word(Wide(-word_max) - 1));
  CHECK(to_word(Wide(-word_max)) == -word_max);
}

}  // namespace
}  // namespace scalepan
