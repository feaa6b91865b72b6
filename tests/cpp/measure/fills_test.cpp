// Fills: the nearest sum in fewest pieces, against worked figures and a search of every way.
#include "measure/fills.hpp"

#include <chrono>
#include <random>
#include <tuple>

#include "check.hpp"

namespace scalepan {
namespace {

/// US spoons and cups in eighths of a teaspoon: 1, 1/2, 1/3, 1/4 cup; tbsp; 1, 1/2, 1/4, 1/8 tsp.
const std::vector<FillSize> spoons_and_cups{{384, {}}, {192, {}}, {128, {}}, {96, {}}, {24, {}},
                                            {8, {}},   {4, {}},   {2, {}},   {1, {}}};

using Counts = std::vector<Rational>;

Filling nearest(const std::vector<FillSize>& sizes, const Rational& amount,
                const std::vector<ReadingRange>& ranges = {},
                std::optional<std::int64_t> most = {}) {
  return FillFinder(sizes, ranges, most).nearest(amount);
}

TEST_CASE("fills: the sums of spoons that add up exactly, in fewest pieces") {
  // 47/12 tbsp = 94 eighths = 3 tbsp (72) + 2 tsp (16) + 1/2 tsp (4) + 1/4 tsp (2): 7 pieces.
  CHECK(nearest(spoons_and_cups, Rational(47 * 24, 12)).counts ==
        Counts{0, 0, 0, 0, 3, 2, 1, 1, 0});
  // 2/3 cup is twice 1/3; 3/4 cup is 1/2 + 1/4.
  CHECK(nearest(spoons_and_cups, 256).counts == Counts{0, 0, 2, 0, 0, 0, 0, 0, 0});
  CHECK(nearest(spoons_and_cups, 288).counts == Counts{0, 1, 0, 1, 0, 0, 0, 0, 0});
}

TEST_CASE("fills: of two equally near sums the larger, and nothing below half of the smallest") {
  CHECK(nearest(spoons_and_cups, Rational(5, 2)).total == 3);
  CHECK(nearest(spoons_and_cups, Rational(1, 2)).total == 1);
  CHECK(nearest(spoons_and_cups, Rational(49, 100)).total == 0);
  CHECK(nearest(spoons_and_cups, 0).total == 0);
  CHECK(FillFinder(spoons_and_cups, {}).smallest().total == 1);
}

TEST_CASE("fills: equal ways go to the larger measure, equal measures to the earlier") {
  // 1 + 1/3 and 2/3 + 2/3 are two pieces each.
  CHECK(nearest({{2, {}}, {3, {}}, {1, {}}}, 4).counts == Counts{0, 1, 1});
  CHECK(nearest({{5, {}}, {5, {}}}, 15).counts == Counts{3, 0});
  CHECK(nearest({{5, 1}, {5, {}}}, 15).counts == Counts{1, 2});
}

TEST_CASE("fills: the largest measure first would not be the shortest") {
  // By the largest first 6 = 4 + 1 + 1, in fewest pieces 3 + 3.
  CHECK(nearest({{4, {}}, {3, {}}, {1, {}}}, 6).counts == Counts{0, 2, 0});
}

TEST_CASE("fills: limits hold, and what is beyond them all is told as the most there is") {
  CHECK(nearest({{10, 2}, {1, 3}}, 17).counts == Counts{2, 0});
  CHECK(nearest({{10, 2}, {1, 3}}, 1000000).counts == Counts{2, 3});
  CHECK(nearest({{10, 2}, {1, 3}}, power(10, 40)).total == 23);
  CHECK(nearest(spoons_and_cups, 94, {}, 1).counts == Counts{0, 0, 0, 1, 0, 0, 0, 0, 0});
  CHECK(nearest(spoons_and_cups, 94, {}, 4).total == 94 + 2);
}

TEST_CASE("fills: a graduated measure is filled whole and read once") {
  // A scale to 5000 by 1 up to 1000 and by 5 above; a jug of 1000 by 50 with spoons of 15 and 5.
  const std::vector<ReadingRange> scale{{1, 1, 1000}, {5, 1000, 5000}};
  const Filling three = nearest({{5000, {}}}, 3003, scale);
  CHECK(three.reading->amount == 3005);
  CHECK(three.reading->range == 1);
  CHECK(nearest({{5000, {}}}, 12003, scale).counts == Counts{2});
  CHECK(nearest({{5000, {}}}, 12003, scale).total == 12005);
  CHECK(nearest({{5000, {}}}, 2, {{5, 5, 5000}}).total == 0);
  const Filling jug = nearest({{1000, {}}, {15, {}}, {5, {}}}, 1235, {{50, 50, 1000}});
  CHECK(jug.counts == Counts{1, 2, 1});
  CHECK(jug.reading->amount == 200);
  CHECK(jug.total == 1235);
}

TEST_CASE("fills: any amount, however large, in no time") {
  const FillFinder finder(spoons_and_cups, {});
  const auto start = std::chrono::steady_clock::now();
  const Rational huge = power(10, 60) * 384 + Rational(2001, 1000);
  CHECK(finder.nearest(huge).total == power(10, 60) * 384 + 2);
  // 40 gallons are 640 cups.
  CHECK(finder.nearest(640 * 384).counts.front() == 640);
  for (int amount = 0; amount < 1000; ++amount) CHECK(finder.nearest(amount).total == amount);
  CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(10));
}

// Every way there is, one by one.
struct Every {
  std::vector<FillSize> sizes;
  std::vector<ReadingRange> ranges;
  std::int64_t most_pieces;
  Rational wanted;
  std::optional<Filling> best{};

  using Rank = std::tuple<Rational, Rational, Rational, Rational>;
  [[nodiscard]] Rank rank(const Filling& filling) const {
    Rational pieces = filling.reading ? 1 : 0;
    for (const Rational& count : filling.counts) pieces += count;
    return {abs(filling.total - wanted), -filling.total, pieces,
            filling.reading ? -filling.reading->amount : Rational(0)};
  }

  /// More of the larger size first; the sizes of these tests are in descending order.
  [[nodiscard]] bool better(const Filling& a, const Filling& b) const {
    return rank(a) != rank(b) ? rank(a) < rank(b) : a.counts > b.counts;
  }

  void consider(const Filling& filling) {
    if (!best || better(filling, *best)) best = filling;
  }

  void with_readings(Filling filling, std::int64_t pieces) {
    consider(filling);
    if (pieces == most_pieces) return;
    const Rational filled = filling.total;
    for (std::size_t i = 0; i < ranges.size(); ++i) {
      const auto& [step, first, last] = ranges[i];
      for (Rational mark = ceil(first / step) * step; mark <= last; mark += step) {
        filling.reading = MeasureReading{i, mark};
        filling.total = filled + mark;
        consider(filling);
      }
    }
  }

  void from(std::size_t row, Filling filling, std::int64_t pieces) {
    if (row == sizes.size()) return with_readings(filling, pieces);
    const auto& [size, most] = sizes[row];
    const Rational enough = wanted + 2 * sizes.front().size;
    for (;;) {
      from(row + 1, filling, pieces);
      const bool at_limit = most && filling.counts[row] >= *most;
      if (at_limit || pieces == most_pieces || filling.total > enough) return;
      filling.counts[row] += 1;
      filling.total += size;
      ++pieces;
    }
  }
};

TEST_CASE("fills: as every way tried one by one, on random measures") {
  std::mt19937 random(20251124);
  const auto draw = [&](int from, int to) {
    return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
  };
  for (int round = 0; round < 1500; ++round) {
    std::vector<FillSize> sizes;
    for (int i = draw(1, 4); i > 0; --i) {
      sizes.push_back({Rational(draw(1, 12), draw(1, 3)), {}});
      if (draw(0, 3) == 0) sizes.back().most = draw(1, 3);
    }
    std::ranges::stable_sort(sizes, std::ranges::greater{}, &FillSize::size);
    std::vector<ReadingRange> ranges;
    if (draw(0, 1) == 0) ranges.push_back({Rational(1, draw(1, 2)), draw(1, 3), draw(1, 6)});
    const std::int64_t most = draw(0, 1) == 0 ? 1000 : draw(1, 4);
    const Rational wanted(draw(0, 240), draw(1, 12));
    Every every{sizes, ranges, most, wanted};
    every.from(0, {Counts(sizes.size(), 0), {}, 0}, 0);
    const std::optional<std::int64_t> limit =
        most == 1000 ? std::nullopt : std::optional<std::int64_t>(most);
    const Filling found = nearest(sizes, wanted, ranges, limit);
    CAPTURE(round, wanted, most);
    CHECK(found.total == every.best->total);
    CHECK(found.counts == every.best->counts);
    CHECK(found.reading.has_value() == every.best->reading.has_value());
  }
}

TEST_CASE("fills: measures without a workable common step are refused at once") {
  const Rational a(1, 4294967291);
  const Rational b(1, 4294967279);
  const Rational c(1, 4294967231);
  const Thrown too_fine{"measure.too_fine",
                        "the sizes and steps of the measures have no workable common step",
                        "make separate sets of measures whose sizes are no multiples of one step"};
  CHECK(thrown_by([&] { return nearest({{a, {}}, {b, {}}, {c, {}}}, 1); }) == too_fine);
  const Thrown too_many{"measure.too_many",
                        "more than 2000000 ways to combine the measures would have to be looked at",
                        "say how many of a measure may be used at most, or make smaller sets"};
  CHECK(thrown_by([&] { return nearest({{a, {}}, {b, {}}}, 1); }) == too_fine);
  CHECK(thrown_by([&] { return nearest({{1000003, {}}, {999983, {}}, {7, {}}}, 1); }) == too_many);
}

}  // namespace
}  // namespace scalepan
