// The numbers of portions of a curve, and runs of them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "exact/rational.hpp"

namespace scalepan {

/// Whole portions in equal steps upward, or any in any order.
class CurvePoints {
 public:
  struct Even {
    std::int64_t first = 1;  // above zero
    std::int64_t step = 1;   // above zero
  };

  CurvePoints(Even even, std::size_t count) : even_(even), count_(count) {}
  /// Points that are whole and go up in equal steps are taken as such.
  explicit CurvePoints(std::vector<Rational> listed);

  [[nodiscard]] std::size_t size() const { return count_; }
  [[nodiscard]] Rational operator[](std::size_t index) const {
    if (!even_) return listed_[index];
    return even_->first + even_->step * static_cast<std::int64_t>(index);
  }
  [[nodiscard]] const std::optional<Even>& even() const { return even_; }
  /// The places of the points in ascending order, of equal ones the first alone.
  [[nodiscard]] std::vector<std::size_t> ascending() const;

 private:
  std::optional<Even> even_;
  std::size_t count_ = 0;
  std::vector<Rational> listed_;
};

/// Numbers of portions at equal distances.
struct CountRun {
  Rational first;
  Rational last;
  Rational every;  // 0 for a single one

  friend bool operator==(const CountRun&, const CountRun&) = default;
};

/// `12`, `15 to 60`, `12 to 60, every 12`.
[[nodiscard]] std::string text_of(const CountRun& run);

/// Puts numbers, given one by one, into runs.
class CountRuns {
 public:
  void add(const Rational& count);
  [[nodiscard]] const std::vector<CountRun>& runs() const { return runs_; }

 private:
  std::vector<CountRun> runs_;
};

}  // namespace scalepan
