// What covers are compared by, in words or in fractions.
#pragma once

#include <algorithm>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <map>
#include <string>

#include "exact/error.hpp"
#include "exact/rational.hpp"
#include "packs/purchase.hpp"

namespace scalepan {

/// In the order in which they decide: price and total, or total and price, then packs.
/// Least leftover and least total are the same, since both cover one need.
template <class Number>
struct CoverKey {
  Number first{};
  Number second{};
  Number packs{};

  CoverKey() = default;
  CoverKey(CoverOrder order, const Number& price, const Number& total, const Number& number)
      : first(order == CoverOrder::price_first ? price : total),
        second(order == CoverOrder::price_first ? total : price),
        packs(number) {}

  [[nodiscard]] const Number& price(CoverOrder order) const {
    return order == CoverOrder::price_first ? first : second;
  }
  [[nodiscard]] const Number& total(CoverOrder order) const {
    return order == CoverOrder::price_first ? second : first;
  }

  CoverKey& operator+=(const CoverKey& other) {
    first += other.first;
    second += other.second;
    packs += other.packs;
    return *this;
  }
  friend CoverKey operator+(CoverKey a, const CoverKey& b) { return a += b; }
  friend CoverKey operator*(CoverKey a, const Number& times) {
    a.first *= times;
    a.second *= times;
    a.packs *= times;
    return a;
  }
  friend bool operator==(const CoverKey&, const CoverKey&) = default;
  friend bool operator<(const CoverKey& a, const CoverKey& b) {
    if (a.first != b.first) return a.first < b.first;
    if (a.second != b.second) return a.second < b.second;
    return a.packs < b.packs;
  }
};

/// A purchase in the numbers of a programme. Things stand in the order of their rows; of one row
/// the one that counts as fewest packs comes first.
template <class Number>
struct PackThing {
  CoverKey<Number> key;
  std::size_t row = 0;
  std::size_t purchase = 0;  // as given
};

using ThingIndex = std::uint32_t;

/// How many of which things; those not named are not taken.
template <class Number>
using ThingCounts = std::map<ThingIndex, Number>;

/// Less: `a` goes before `b` because it takes more of an earlier row.
template <class Number>
std::strong_ordering compare_rows(const std::vector<PackThing<Number>>& things,
                                  const ThingCounts<Number>& a, const ThingCounts<Number>& b) {
  const auto rows_of = [&](const ThingCounts<Number>& counts) {
    std::map<std::size_t, Number> rows;
    for (const auto& [thing, count] : counts) {
      rows[things[thing].row] += count * things[thing].key.packs;
    }
    return rows;
  };
  const auto in_a = rows_of(a);
  const auto in_b = rows_of(b);
  auto left = in_a.begin();
  auto right = in_b.begin();
  for (; left != in_a.end() && right != in_b.end(); ++left, ++right) {
    if (left->first != right->first) {
      return left->first < right->first ? std::strong_ordering::less
                                        : std::strong_ordering::greater;
    }
    if (left->second != right->second) {
      return left->second > right->second ? std::strong_ordering::less
                                          : std::strong_ordering::greater;
    }
  }
  if (left != in_a.end()) return std::strong_ordering::less;
  return right != in_b.end() ? std::strong_ordering::greater : std::strong_ordering::equal;
}

/// What one function may spend, in time and in memory, before it gives up.
class CoverWork {
 public:
  static constexpr std::size_t most_covers = 2'000'000;
  static constexpr std::size_t most_looks = 300'000'000;

  /// `weight`: how many looks in words one look takes.
  explicit CoverWork(std::size_t weight) : weight_(weight) {}

  /// Each throws `cover.too_many` where the work is used up.
  void keep_one() {
    covers_ += weight_;
    if (covers_ > most_covers) fail_too_many();
  }
  void look(std::size_t times) {
    looks_ += times * weight_;
    if (looks_ > most_looks) fail_too_many();
  }
  [[nodiscard]] std::size_t looks() const { return looks_; }

  [[noreturn]] static void fail_too_many();

 private:
  std::size_t weight_;
  std::size_t covers_ = 0;
  std::size_t looks_ = 0;
};

/// The whole part of a / b, for a not below zero and b above zero.
inline std::int64_t whole_part(std::int64_t a, std::int64_t b) { return a / b; }
inline Rational whole_part(const Rational& a, const Rational& b) { return floor(a / b); }

/// A look in fractions beyond words takes about so many looks in words.
template <class Number>
inline constexpr std::size_t look_weight = 1;
template <>
inline constexpr std::size_t look_weight<Rational> = 64;

inline Wide exact_product(std::int64_t a, std::int64_t b) { return wide_product(a, b); }
inline Rational exact_product(const Rational& a, const Rational& b) { return a * b; }

}  // namespace scalepan
