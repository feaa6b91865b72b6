// The exact number: a fraction in lowest terms that never overflows.
//
// While both parts fit a machine word a Rational works on words, with overflow detected on every
// operation and 128-bit intermediates. Beyond a word it owns a boost::rational of unbounded
// integers (exact/big.hpp), and it comes back to words as soon as the value fits again. So one
// value has one form, and equality and hash look at the form alone.
#pragma once

#include <compare>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <utility>

#include "exact/wide.hpp"

namespace scalepan {

struct BigNumber;

template <typename T>
concept WordInteger = std::integral<T> && !std::same_as<T, bool> && !std::same_as<T, char>;

class Rational {
 public:
  Rational() noexcept : num_(0), den_less_one_(0) {}

  /// Any built-in integer, exactly.
  template <WordInteger T>
  Rational(T whole) : Rational() {  // NOLINT(google-explicit-constructor): exact, so silent
    if (std::in_range<std::int64_t>(whole) && static_cast<std::int64_t>(whole) >= -word_max) {
      num_ = static_cast<std::int64_t>(whole);
    } else {
      assign_beyond_word(whole < T{0}, static_cast<std::uint64_t>(whole));
    }
  }

  /// numerator / denominator, put into lowest terms.
  /// Throws `number.zero_denominator`.
  Rational(std::int64_t numerator, std::int64_t denominator);

  /// Takes a value beyond words over; `big` must be in lowest terms and must not fit words.
  explicit Rational(BigNumber* big) noexcept
      : num_(reinterpret_cast<std::intptr_t>(big)), den_less_one_(-1) {}

  Rational(const Rational& other) : num_(other.num_), den_less_one_(other.den_less_one_) {
    if (!other.is_word()) [[unlikely]] {
      copy_big(other);
    }
  }
  Rational(Rational&& other) noexcept : num_(other.num_), den_less_one_(other.den_less_one_) {
    other.num_ = 0;
    other.den_less_one_ = 0;
  }
  Rational& operator=(const Rational& other) {
    if (is_word() && other.is_word()) [[likely]] {
      num_ = other.num_;
      den_less_one_ = other.den_less_one_;
    } else {
      Rational copy(other);
      swap(copy);
    }
    return *this;
  }
  Rational& operator=(Rational&& other) noexcept {
    swap(other);
    return *this;
  }
  ~Rational() {
    if (!is_word()) [[unlikely]] {
      drop_big();
    }
  }
  void swap(Rational& other) noexcept {
    std::swap(num_, other.num_);
    std::swap(den_less_one_, other.den_less_one_);
  }

  /// Whether numerator and denominator are words.
  [[nodiscard]] bool is_word() const noexcept { return den_less_one_ >= 0; }
  /// Only where `is_word()`.
  [[nodiscard]] std::int64_t word_numerator() const noexcept { return num_; }
  /// Only where `is_word()`. Always positive.
  [[nodiscard]] std::int64_t word_denominator() const noexcept { return den_less_one_ + 1; }
  /// Only where not `is_word()`.
  [[nodiscard]] const BigNumber& big() const noexcept {
    return *reinterpret_cast<const BigNumber*>(static_cast<std::intptr_t>(num_));
  }

  [[nodiscard]] bool is_zero() const noexcept { return is_word() && num_ == 0; }
  [[nodiscard]] bool is_integer() const noexcept {
    return is_word() ? den_less_one_ == 0 : big_is_integer();
  }
  /// -1, 0 or 1.
  [[nodiscard]] int sign() const noexcept {
    return is_word() ? (num_ > 0) - (num_ < 0) : big_sign();
  }

  friend Rational operator+(const Rational& a, const Rational& b) { return sum<1>(a, b); }
  friend Rational operator-(const Rational& a, const Rational& b) { return sum<-1>(a, b); }
  friend Rational operator*(const Rational& a, const Rational& b);
  /// Throws `number.division_by_zero`.
  friend Rational operator/(const Rational& a, const Rational& b);
  friend Rational operator-(const Rational& a);
  Rational& operator+=(const Rational& b) { return *this = *this + b; }
  Rational& operator-=(const Rational& b) { return *this = *this - b; }
  Rational& operator*=(const Rational& b) { return *this = *this * b; }
  Rational& operator/=(const Rational& b) { return *this = *this / b; }

  friend bool operator==(const Rational& a, const Rational& b) noexcept {
    if (a.is_word() && b.is_word()) [[likely]] {
      return a.num_ == b.num_ && a.den_less_one_ == b.den_less_one_;
    }
    return equal_big(a, b);
  }
  friend std::strong_ordering operator<=>(const Rational& a, const Rational& b) {
    if (a.is_word() && b.is_word()) [[likely]] {
      if (a.den_less_one_ == b.den_less_one_) return a.num_ <=> b.num_;
      const Wide left = wide_product(a.num_, b.word_denominator());
      const Wide right = wide_product(b.num_, a.word_denominator());
      if (left < right) return std::strong_ordering::less;
      return left > right ? std::strong_ordering::greater : std::strong_ordering::equal;
    }
    return compare_big(a, b);
  }

  /// Equal values hash alike however they came about.
  [[nodiscard]] std::size_t hash() const noexcept;

 private:
  struct LowestTerms {};
  Rational(std::int64_t num, std::int64_t den, LowestTerms /*known*/) noexcept
      : num_(num), den_less_one_(den - 1) {}

  static std::uint64_t magnitude(std::int64_t x) noexcept {
    return x < 0 ? static_cast<std::uint64_t>(-x) : static_cast<std::uint64_t>(x);
  }
  static std::int64_t common(std::int64_t x, std::int64_t den) noexcept {
    return static_cast<std::int64_t>(gcd_words(magnitude(x), static_cast<std::uint64_t>(den)));
  }

  template <int Sign>
  static Rational sum(const Rational& a, const Rational& b);
  static Rational add_slowly(const Rational& a, const Rational& b, bool subtract);
  static Rational multiply_slowly(const Rational& a, const Rational& b);
  static Rational divide_slowly(const Rational& a, const Rational& b);
  static bool equal_big(const Rational& a, const Rational& b) noexcept;
  static std::strong_ordering compare_big(const Rational& a, const Rational& b);

  void assign_beyond_word(bool negative, std::uint64_t bits);
  void copy_big(const Rational& other);
  void drop_big() noexcept;
  [[nodiscard]] bool big_is_integer() const noexcept;
  [[nodiscard]] int big_sign() const noexcept;

  // The numerator, or the address of the BigNumber.
  std::int64_t num_;
  // Denominator less one, so that zeroed memory reads as 0/1; -1 marks a BigNumber.
  std::int64_t den_less_one_;
};

static_assert(sizeof(Rational) == 16);

// Knuth 4.5.1: reduce by the gcd of the denominators first; where that is 1 the sum is already
// in lowest terms.
template <int Sign>
inline Rational Rational::sum(const Rational& a, const Rational& b) {
  if ((a.den_less_one_ | b.den_less_one_) >= 0) [[likely]] {
    const std::int64_t addend = Sign * b.num_;
    if (a.den_less_one_ == b.den_less_one_) {
      std::int64_t num = 0;
      if (add_words(a.num_, addend, num)) [[likely]] {
        const std::int64_t den = a.word_denominator();
        if (den == 1) return {num, den, LowestTerms{}};
        if (num == 0) return {};
        const std::int64_t g = common(num, den);
        return {num / g, den / g, LowestTerms{}};
      }
    } else {
      const std::int64_t a_den = a.word_denominator();
      const std::int64_t b_den = b.word_denominator();
      const std::int64_t g = (a_den == 1 || b_den == 1) ? 1 : common(a_den, b_den);
      const std::int64_t a_rest = g == 1 ? a_den : a_den / g;
      const std::int64_t b_rest = g == 1 ? b_den : b_den / g;
      std::int64_t left = 0;
      std::int64_t right = 0;
      std::int64_t num = 0;
      std::int64_t den = 0;
      if (multiply_words(a.num_, b_rest, left) && multiply_words(addend, a_rest, right) &&
          add_words(left, right, num)) [[likely]] {
        if (g == 1) {
          if (multiply_words(a_den, b_den, den)) [[likely]] {
            return {num, den, LowestTerms{}};
          }
        } else if (num == 0) {
          return {};
        } else {
          const std::int64_t h = common(num, g);
          if (multiply_words(a_rest, b_den / h, den)) [[likely]] {
            return {num / h, den, LowestTerms{}};
          }
        }
      }
    }
  }
  return add_slowly(a, b, Sign < 0);
}

// Cross-reduced, so that the product needs no gcd of its own.
inline Rational operator*(const Rational& a, const Rational& b) {
  if ((a.den_less_one_ | b.den_less_one_) >= 0) [[likely]] {
    std::int64_t a_num = a.num_;
    std::int64_t b_num = b.num_;
    std::int64_t a_den = a.word_denominator();
    std::int64_t b_den = b.word_denominator();
    if (a_num == 0 || b_num == 0) return {};
    if (a_den != b_den) {
      if (b_den != 1) {
        const std::int64_t g = Rational::common(a_num, b_den);
        if (g != 1) {
          a_num /= g;
          b_den /= g;
        }
      }
      if (a_den != 1) {
        const std::int64_t g = Rational::common(b_num, a_den);
        if (g != 1) {
          b_num /= g;
          a_den /= g;
        }
      }
    }
    std::int64_t num = 0;
    std::int64_t den = 0;
    if (multiply_words(a_num, b_num, num) && multiply_words(a_den, b_den, den)) [[likely]] {
      return {num, den, Rational::LowestTerms{}};
    }
  }
  return Rational::multiply_slowly(a, b);
}

inline Rational operator-(const Rational& a) {
  if (a.is_word()) [[likely]] {
    return {-a.num_, a.word_denominator(), Rational::LowestTerms{}};
  }
  return Rational::add_slowly(Rational(), a, true);
}

[[nodiscard]] Rational abs(const Rational& x);
/// Throws `number.division_by_zero`.
[[nodiscard]] Rational reciprocal(const Rational& x);
/// The largest integer at most x.
[[nodiscard]] Rational floor(const Rational& x);
/// The smallest integer at least x.
[[nodiscard]] Rational ceil(const Rational& x);
/// x to an integer power. Throws `number.division_by_zero` for 0 to a negative power and
/// `number.too_large` where the result has too many digits to be worked with.
[[nodiscard]] Rational power(const Rational& x, int exponent);
/// The numerator and the denominator of the lowest terms, as whole Rationals.
[[nodiscard]] Rational numerator(const Rational& x);
[[nodiscard]] Rational denominator(const Rational& x);
/// Greatest common divisor of two fractions: the largest step that divides both.
[[nodiscard]] Rational common_step(const Rational& a, const Rational& b);

}  // namespace scalepan

template <>
struct std::hash<scalepan::Rational> {
  std::size_t operator()(const scalepan::Rational& x) const noexcept { return x.hash(); }
};
