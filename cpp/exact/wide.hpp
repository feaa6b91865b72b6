// The 128-bit integer that holds every intermediate result, in this one place.
//
// Where the compiler has no __int128 (or with SCALEPAN_PORTABLE_WIDE defined) Boost's fixed
// 128-bit integer stands in; nothing outside this header knows which one is used.
#pragma once

#include <bit>
#include <cstdint>
#include <limits>

#if !defined(__SIZEOF_INT128__) && !defined(SCALEPAN_PORTABLE_WIDE)
#define SCALEPAN_PORTABLE_WIDE 1
#endif

#ifdef SCALEPAN_PORTABLE_WIDE
#include <boost/multiprecision/cpp_int.hpp>
#endif

namespace scalepan {

#ifdef SCALEPAN_PORTABLE_WIDE
using Wide = boost::multiprecision::int128_t;
#else
__extension__ using Wide = __int128;
#endif

/// The largest word: words run from -word_max to word_max, so that every word can change its sign.
inline constexpr std::int64_t word_max = std::numeric_limits<std::int64_t>::max();

[[nodiscard]] inline Wide wide_product(std::int64_t a, std::int64_t b) { return Wide(a) * Wide(b); }

[[nodiscard]] inline bool fits_word(const Wide& x) {
  return x <= Wide(word_max) && x >= Wide(-word_max);
}

/// Call only where `fits_word`.
[[nodiscard]] inline std::int64_t to_word(const Wide& x) { return static_cast<std::int64_t>(x); }

// Each returns false where the exact result is no word.

[[nodiscard]] inline bool add_words(std::int64_t a, std::int64_t b, std::int64_t& out) {
#ifdef SCALEPAN_PORTABLE_WIDE
  const Wide exact = Wide(a) + Wide(b);
  if (!fits_word(exact)) return false;
  out = to_word(exact);
  return true;
#else
  return !__builtin_add_overflow(a, b, &out) && out != std::numeric_limits<std::int64_t>::min();
#endif
}

[[nodiscard]] inline bool multiply_words(std::int64_t a, std::int64_t b, std::int64_t& out) {
#ifdef SCALEPAN_PORTABLE_WIDE
  const Wide exact = wide_product(a, b);
  if (!fits_word(exact)) return false;
  out = to_word(exact);
  return true;
#else
  return !__builtin_mul_overflow(a, b, &out) && out != std::numeric_limits<std::int64_t>::min();
#endif
}

/// Greatest common divisor of two positive words.
///
/// Powers of two go first: kitchen fractions are mostly over 2, 4, 8 and 16, and then no
/// division is needed at all. What is left alternates one remainder with the stripping.
[[nodiscard]] inline std::uint64_t gcd_words(std::uint64_t a, std::uint64_t b) {
  const int twos_a = std::countr_zero(a);
  const int twos_b = std::countr_zero(b);
  const int shift = twos_a < twos_b ? twos_a : twos_b;
  a >>= twos_a;
  b >>= twos_b;
  while (a != 1 && b != 1) {
    if (a < b) {
      const std::uint64_t larger = b;
      b = a;
      a = larger;
    }
    a %= b;
    if (a == 0) return b << shift;
    a >>= std::countr_zero(a);
  }
  return std::uint64_t{1} << shift;
}

}  // namespace scalepan
