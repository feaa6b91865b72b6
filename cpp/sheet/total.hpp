// Totals of columns, kept up by differences: a sum of exact numbers may add what changed instead of
// reading all its rows again, since nothing is ever rounded.
#pragma once

#include <cstddef>

#include "sheet/figures.hpp"

namespace scalepan {

/// What a total has heard from one row.
struct Heard {
  Condition condition = Condition::unknown;
  Value value{};  // of a number or an interval
};

[[nodiscard]] Heard heard_of(const Figures& figures, Cell cell);

class Total {
 public:
  /// A row's number was the first and is the second.
  void replace(const Rational& before, const Rational& after) {
    low_ += after - before;
    below_zero_ += static_cast<std::size_t>(after.sign() < 0);
    below_zero_ -= static_cast<std::size_t>(before.sign() < 0);
  }
  void replace(const Heard& before, const Heard& after);
  /// Rows without a value.
  [[nodiscard]] std::size_t missing() const { return missing_; }
  /// A number, or an interval where rows are intervals, or have no value and none of the others is
  /// below zero: then the total is at least the sum of those. Throws `sheet.rows` where rows have
  /// no value and others are below zero.
  [[nodiscard]] Value value() const {
    if (missing_ > 0 && below_zero_ > 0) [[unlikely]]
      fail_rows();
    return known_value();
  }

 private:
  void count(const Heard& heard, std::size_t one);
  [[nodiscard]] Value known_value() const;
  [[noreturn]] void fail_rows() const;

  Rational low_;
  Rational width_;  // of all intervals with an upper bound
  std::size_t unbounded_ = 0;
  std::size_t missing_ = 0;
  std::size_t below_zero_ = 0;
};

}  // namespace scalepan
