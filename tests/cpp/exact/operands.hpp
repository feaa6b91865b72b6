// Random operands for the comparisons with other libraries, from a pinned seed.
#pragma once

#include <array>
#include <cstdint>
#include <random>

#include "exact/big.hpp"
#include "exact/rational.hpp"

#if defined(__SANITIZE_ADDRESS__)
#define SCALEPAN_SLOW_BUILD 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define SCALEPAN_SLOW_BUILD 1
#endif
#endif

namespace scalepan {

/// Sanitizers slow the big numbers down tenfold: a tenth of the operations keeps the time.
#ifdef SCALEPAN_SLOW_BUILD
inline constexpr int operations_divisor = 10;
#else
inline constexpr int operations_divisor = 1;
#endif

/// Not in lowest terms; the denominator is positive.
struct Operand {
  BigInt numerator;
  BigInt denominator;
};

class Operands {
 public:
  explicit Operands(std::uint64_t seed) : random_(seed) {}

  /// Amounts as recipes have them.
  Operand kitchen() {
    constexpr std::array<int, 14> denominators{1, 1, 2, 3, 4, 5, 6, 7, 8, 12, 16, 64, 100, 1000};
    return {between(-100000, 100000), denominators.at(below(denominators.size()))};
  }
  /// Both parts anywhere among the words.
  Operand any_word() { return {between(-word_max, word_max), between(1, word_max)}; }
  /// Both parts within 3 of a place where words or their products overflow.
  Operand at_the_limit() {
    const BigInt numerator = near_limit();
    return {below(2) == 0 ? numerator : BigInt(-numerator), near_limit()};
  }
  /// Parts of up to 200 bits.
  Operand beyond_words() {
    const BigInt numerator = bits(65 + below(136));
    return {below(2) == 0 ? numerator : BigInt(-numerator), bits(1 + below(200)) + 1};
  }
  Operand any() {
    switch (below(4)) {
      case 0:
        return kitchen();
      case 1:
        return any_word();
      case 2:
        return at_the_limit();
      default:
        return beyond_words();
    }
  }

  std::size_t below(std::size_t end) {
    return std::uniform_int_distribution<std::size_t>(0, end - 1)(random_);
  }
  std::int64_t between(std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random_);
  }

 private:
  BigInt near_limit() {
    constexpr std::int64_t root_of_word_max = 3037000499;
    constexpr std::array<std::int64_t, 7> limits{
        word_max, word_max / 2, word_max / 3, root_of_word_max, std::int64_t{1} << 32, 60, 4};
    return BigInt(limits.at(below(limits.size()))) + between(-3, 3);
  }
  BigInt bits(std::size_t count) {
    BigInt value = 0;
    for (std::size_t have = 0; have < count; have += 64) value = (value << 64) + random_();
    return value >> ((64 - count % 64) % 64);
  }

  std::mt19937_64 random_;
};

inline Rational rational_of(const Operand& operand) {
  return make_rational(operand.numerator, operand.denominator);
}

}  // namespace scalepan
