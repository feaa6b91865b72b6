// Columns of exact numbers, which are summed without bringing every line into lowest terms.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "exact/rational.hpp"

namespace scalepan {

/// Exact numbers in a row. Where all of them are words over one common denominator, which is a word
/// too, they are held as such, and sums run over words; else they are summed one by one. Which of
/// the two is proven from the column alone, and makes no difference to any sum.
class RationalColumn {
 public:
  [[nodiscard]] static RationalColumn from(std::span<const Rational> numbers);

  [[nodiscard]] std::size_t size() const { return over_one_ ? words_.size() : numbers_.size(); }
  /// The number in the place `i`, which is below `size()`.
  [[nodiscard]] Rational at(std::size_t i) const;
  /// Whether the numbers are words over one common denominator.
  [[nodiscard]] bool over_one_denominator() const { return over_one_; }

  /// Of all numbers; 0 of none. Throws `number.too_large`.
  [[nodiscard]] Rational sum() const;

  /// Of the products of the numbers that stand in the same place. Throws `number.columns` where the
  /// columns differ in length, and `number.too_large`.
  friend Rational sum_of_products(const RationalColumn& a, const RationalColumn& b);

 private:
  bool over_one_ = true;
  std::int64_t denominator_ = 1;
  std::int64_t largest_ = 0;  // of the words, their signs left out
  std::vector<std::int64_t> words_;
  std::vector<Rational> numbers_;  // where there is no common denominator
};

[[nodiscard]] Rational sum_of_products(const RationalColumn& a, const RationalColumn& b);

}  // namespace scalepan
