// Sums of stairs over many points in a row, in machine words: how a price follows a number of
// portions where whole packs are bought.
//
// No sum can leave its word: that is proven from the stairs alone before the first one is added,
// and where it cannot be, there is no such sum. Nothing is divided on the way. A stair that rises
// often is followed by 32 lanes, each of which keeps the remainder of one point in 32 and takes
// the next one by additions (Bresenham's line); one that rises seldom is followed from rise to
// rise, by additions too, and adds its height where it rises, so that one running sum at the end
// tells all of these at once.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace scalepan {

/// height * max(0, ceil((slope * i + start) / width)) at the points i = 0, 1, 2 ...
struct Stair {
  std::int64_t height = 0;
  std::int64_t slope = 0;  // not below zero
  std::int64_t start = 0;
  std::int64_t width = 1;  // above zero
};

class StairSum {
 public:
  /// For so many points. None where a sum, or a step on the way to one, could leave 64 bits, and
  /// for a stair that begins late and then rises eight times a point or more.
  [[nodiscard]] static std::optional<StairSum> over(const std::vector<Stair>& stairs,
                                                    std::size_t points);

  /// As many sums as there are points, from point 0 on; into no more.
  void fill(std::span<std::int64_t> sums) const;

  /// How many stairs are followed by lanes.
  [[nodiscard]] std::size_t in_lanes() const { return lanes_.size(); }
  /// How many are followed from rise to rise.
  [[nodiscard]] std::size_t by_rises() const { return rises_.size(); }
  /// 32 where all sums of one block of points fit, else 64; wider lanes take twice the time.
  [[nodiscard]] int lane_bits() const { return lane_bits_; }

 private:
  explicit StairSum(const std::vector<Stair>& stairs);

  std::vector<Stair> lanes_;
  std::vector<Stair> rises_;
  int lane_bits_ = 64;
};

}  // namespace scalepan
