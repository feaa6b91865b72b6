// Sums of stairs against 128-bit arithmetic point by point, up to the bounds that rule out
// overflow.
#include "exact/stairs.hpp"

#include <random>

#include "catch.hpp"
#include "exact/wide.hpp"

namespace scalepan {
namespace {

constexpr std::int64_t bit(unsigned n) { return std::int64_t{1} << n; }

/// By one 128-bit division a stair.
Wide sum_at(const std::vector<Stair>& stairs, std::int64_t i) {
  Wide sum = 0;
  for (const Stair& stair : stairs) {
    const Wide above = wide_product(stair.slope, i) + Wide(stair.start);
    if (above <= Wide(0)) continue;
    sum += (above + Wide(stair.width) - Wide(1)) / Wide(stair.width) * Wide(stair.height);
  }
  return sum;
}

struct Filled {
  std::size_t lanes;
  int bits;
  std::size_t wrong;

  friend bool operator==(const Filled&, const Filled&) = default;
};

/// Checked at every point.
Filled filled(const std::vector<Stair>& stairs, std::size_t points) {
  const auto sum = StairSum::over(stairs, points);
  REQUIRE(sum);
  std::vector<std::int64_t> sums(points, -1);
  sum->fill(sums);
  std::size_t wrong = 0;
  for (std::size_t i = 0; i < points; ++i) {
    if (Wide(sums[i]) != sum_at(stairs, static_cast<std::int64_t>(i))) ++wrong;
  }
  return {sum->in_lanes(), sum->lane_bits(), wrong};
}

TEST_CASE("stairs: three packs at 70 portions, four at 71") {
  // 30 g EP at 70 % edible are 300/7 g, of 1 kg packs 3/70; at 2 a pack.
  const auto sum = StairSum::over({{2, 3, 0, 70}}, 100);
  REQUIRE(sum);
  std::vector<std::int64_t> sums(100);
  sum->fill(sums);
  CHECK(sums[70] == 6);
  CHECK(sums[71] == 8);
}

TEST_CASE("stairs: sums equal 128-bit arithmetic at every point") {
  std::mt19937_64 random(20);
  const auto between = [&](std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random);
  };
  for (int round = 0; round < 60; ++round) {
    std::vector<Stair> stairs;
    for (std::int64_t count = between(0, 25); count > 0; --count) {
      const std::int64_t width = between(1, round % 3 == 0 ? bit(34) : 5000);
      stairs.push_back(
          {between(-20, 900), between(0, 2 * width), between(-3 * width, 3 * width), width});
    }
    INFO("round " << round);
    CHECK(filled(stairs, static_cast<std::size_t>(between(0, 9000))).wrong == 0);
  }
}

TEST_CASE("stairs: a stair that rises often is followed by lanes of 32 bits while its width fits") {
  const std::int64_t widest = bit(30);
  CHECK(filled({{7, widest - 1, 3, widest}}, 10'000) == Filled{1, 32, 0});
  CHECK(filled({{7, widest - 1, widest - 2, widest}}, 10'000) == Filled{1, 32, 0});
  CHECK(filled({{7, widest - 1, 3, widest + 1}}, 10'000) == Filled{1, 64, 0});
}

TEST_CASE("stairs: lanes are of 32 bits while all that a block adds fits") {
  // A block of 2048 points and 32 more, one rise a point and two to spare.
  const std::int64_t most = bit(30) / (2048 + 32 + 1);
  CHECK(filled({{most, 1, 0, 1}}, 10'000) == Filled{1, 32, 0});
  CHECK(filled({{most + 1, 1, 0, 1}}, 10'000) == Filled{1, 64, 0});
  CHECK(filled({{-most, 1, 5, 1}}, 10'000) == Filled{1, 32, 0});
  CHECK(filled({{most / 2, 1, 0, 1}, {most - most / 2 + 1, 1, 0, 1}}, 10'000) == Filled{2, 64, 0});
}

TEST_CASE("stairs: sums go up to 2^62, and what could go beyond is no sum") {
  // Whole blocks are filled: 10,000 points may become 12,080.
  const std::int64_t points = 10'000;
  const std::int64_t reached = points + 2048 + 32;
  const std::int64_t most = bit(62) / (reached + 1);
  CHECK(filled({{most, 1, 0, 1}}, points) == Filled{1, 64, 0});
  CHECK_FALSE(StairSum::over({{most + 1, 1, 0, 1}}, points));
  CHECK_FALSE(StairSum::over({{most, 1, 0, 1}, {1, 1, 0, 1}}, points));
  CHECK_FALSE(StairSum::over({{-most - 1, 1, 0, 1}}, points));
}

TEST_CASE("stairs: slopes, starts and widths go up to 2^62 together") {
  const std::int64_t points = 5000;
  const std::int64_t slope = bit(61) / (points + 2048 + 32);
  CHECK(filled({{1, slope, 0, bit(61)}}, points).wrong == 0);
  CHECK(filled({{1, slope, bit(60), bit(60)}}, points).wrong == 0);
  CHECK(filled({{1, slope, -bit(60), bit(60)}}, points).wrong == 0);
  CHECK(filled({{5, slope, 0, slope}}, points) == Filled{1, 64, 0});
  CHECK_FALSE(StairSum::over({{1, slope, bit(61), bit(61)}}, points));
  CHECK_FALSE(StairSum::over({{1, word_max, 0, word_max}}, points));
  CHECK_FALSE(StairSum::over({{word_max, word_max, word_max, 1}}, points));
}

TEST_CASE("stairs: one that begins late, one that never rises, and none at all") {
  CHECK(filled({{3, 2, -4000, 5}, {11, 0, 7, 3}, {5, 0, -7, 3}}, 5000) == Filled{0, 32, 0});
  CHECK(filled({}, 3000) == Filled{0, 32, 0});
  CHECK(filled({{1, 1, 1, 1}}, 0).wrong == 0);
}

TEST_CASE("stairs: what is no stair makes no sum") {
  CHECK_FALSE(StairSum::over({{1, -1, 0, 1}}, 10));
  CHECK_FALSE(StairSum::over({{1, 1, 0, 0}}, 10));
  CHECK_FALSE(StairSum::over({{1, 1, 0, -3}}, 10));
}

}  // namespace
}  // namespace scalepan
