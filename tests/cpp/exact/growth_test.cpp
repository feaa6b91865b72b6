#include "exact/growth.hpp"

#include <algorithm>
#include <functional>
#include <set>

#include "check.hpp"
#include "exact/operands.hpp"
#include "exact/rounding.hpp"

namespace scalepan {
namespace {

/// A growth beside the same sum as plain closures, with every place up to the horizon where the
/// sum is not straight.
class Model {
 public:
  Growth growth;

  void constant(const Rational& height) {
    growth.add_constant(height);
    parts_.push_back([=](const Rational&) { return height; });
  }
  void slope(const Rational& slope) {
    growth.add_slope(slope);
    parts_.push_back([=](const Rational& x) { return slope * x; });
  }
  void steps(const Rational& height, const Rational& rate) {
    growth.add_steps(height, rate);
    parts_.push_back([=](const Rational& x) { return height * ceil(rate * x); });
    for (std::int64_t k = 1; !rate.is_zero() && Rational(k) <= rate * horizon; ++k) {
      breaks_.insert(Rational(k) / rate);
    }
  }
  void ramp(const Rational& height, const std::vector<Ramp::Point>& points,
            const std::optional<Rational>& further) {
    growth.add_ramp(height, Ramp(points, further));
    parts_.push_back([=](const Rational& x) { return height * along(points, further, x); });
    for (const auto& point : points) breaks_.insert(point.first);
    if (!further) end_ = end_ ? std::min(*end_, points.back().first) : points.back().first;
  }
  void steps_of(const Rational& height, const Model& inner, const Rational& width) {
    growth.add_steps_of(height, inner.growth, width);
    parts_.push_back([=](const Rational& x) { return height * ceil(inner.value(x) / width); });
    const Rational stop = inner.end_ ? std::min(horizon, *inner.end_) : horizon;
    for (std::int64_t k = 1; Rational(k) * width <= inner.value(stop); ++k) {
      if (const auto crossing = inner.last_at_most(Rational(k) * width)) breaks_.insert(*crossing);
    }
    breaks_.insert(inner.breaks_.begin(), inner.breaks_.end());
    if (inner.end_) end_ = end_ ? std::min(*end_, *inner.end_) : *inner.end_;
  }

  [[nodiscard]] Rational value(const Rational& x) const {
    Rational sum;
    for (const auto& part : parts_) sum += part(x);
    return sum;
  }

  /// By walking over every stretch from one break to the next; nothing where the horizon has no
  /// more than the target.
  [[nodiscard]] std::optional<Rational> last_at_most(const Rational& target) const {
    const Rational stop = end_ ? std::min(horizon, *end_) : horizon;
    std::set<Rational> stretches(breaks_.begin(), breaks_.upper_bound(stop));
    stretches.insert(stop);
    stretches.erase(Rational(0));
    Rational left = 0;
    for (const Rational& right : stretches) {
      if (value(right) <= target) {
        left = right;
        continue;
      }
      // Straight between two inner points, hence in the whole open stretch.
      const Rational third = (right - left) / Rational(3);
      const Rational slope = (value(right) - value(right - third)) / third;
      const Rational start = value(right) - slope * (right - left);
      return start >= target ? left : left + (target - start) / slope;
    }
    return end_ && *end_ <= horizon ? std::optional(*end_) : std::nullopt;
  }

  /// Inside of both.
  [[nodiscard]] std::vector<Rational> breaks_between(const Rational& low,
                                                     const Rational& high) const {
    return {breaks_.upper_bound(low), breaks_.lower_bound(high)};
  }
  [[nodiscard]] const std::optional<Rational>& end() const { return end_; }

  inline static const Rational horizon = 12;

 private:
  static Rational along(const std::vector<Ramp::Point>& points,
                        const std::optional<Rational>& further, const Rational& x) {
    Ramp::Point left{0, 0};
    for (const auto& right : points) {
      if (x <= right.first) {
        const Rational share = (x - left.first) / (right.first - left.first);
        return left.second + (right.second - left.second) * share;
      }
      left = right;
    }
    return left.second + further.value_or(Rational(0)) * (x - left.first);
  }

  std::vector<std::function<Rational(const Rational&)>> parts_;
  std::set<Rational> breaks_;
  std::optional<Rational> end_;
};

class RandomModels {
 public:
  explicit RandomModels(std::uint64_t seed) : random_(seed) {}

  Rational small(std::int64_t low, std::int64_t high) {
    return {random_.between(low, high), random_.between(1, 4)};
  }

  Model model(bool may_nest) {
    Model made;
    const std::size_t parts = 1 + random_.below(4);
    for (std::size_t i = 0; i < parts; ++i) add_part(made, may_nest);
    return made;
  }

 private:
  void add_part(Model& made, bool may_nest) {
    switch (random_.below(may_nest ? 5 : 4)) {
      case 0:
        return made.constant(small(0, 6));
      case 1:
        return made.slope(small(0, 6));
      case 2:
        return made.steps(small(0, 6), small(0, 3));
      case 3:
        return add_ramp(made);
      default:
        return made.steps_of(small(1, 6), model(false), small(2, 9));
    }
  }

  void add_ramp(Model& made) {
    std::vector<Ramp::Point> points;
    Ramp::Point last{0, 0};
    const std::size_t count = 1 + random_.below(3);
    for (std::size_t i = 0; i < count; ++i) {
      last = {last.first + small(1, 5), last.second + small(0, 3)};
      points.push_back(last);
    }
    const bool ends = random_.below(3) == 0;
    made.ramp(small(0, 5), points, ends ? std::nullopt : std::optional(small(0, 2)));
  }

  Operands random_;
};

TEST_CASE("growth: a random sum is the sum of its parts") {
  RandomModels random(0x5ca1e);
  for (int i = 0; i < 500 / operations_divisor; ++i) {
    const Model model = random.model(true);
    for (int j = 0; j < 6; ++j) {
      const Rational x = random.small(1, 48);
      if (model.growth.end() && x > *model.growth.end()) continue;
      CHECK(model.growth.at(x) == model.value(x));
    }
  }
}

TEST_CASE("growth: the largest size with at most the target, against trying every stretch") {
  RandomModels random(0x6a0d);
  int compared = 0;
  for (int i = 0; i < 3000 / operations_divisor; ++i) {
    const Model model = random.model(true);
    for (int j = 0; j < 4; ++j) {
      // Half of the targets are values of the sum, so that jumps begin or end exactly at them.
      Rational target = random.small(0, 60);
      if (j % 2 == 1) {
        Rational x = random.small(1, 12);
        if (model.growth.end()) x = std::min(x, *model.growth.end());
        target = model.value(x);
      }
      const auto expected = model.last_at_most(target);
      if (!expected) continue;  // beyond the horizon of the brute search
      ++compared;
      REQUIRE(model.growth.last_at_most(target) == expected);
    }
  }
  CHECK(compared > 4000 / operations_divisor);
}

TEST_CASE("growth: behind the answer there is more, and `above` is where it goes on") {
  RandomModels random(0xab0e);
  for (int i = 0; i < 1000 / operations_divisor; ++i) {
    const Model model = random.model(true);
    const Rational target = random.small(0, 40);
    const auto x = model.growth.last_at_most(target);
    if (!x) continue;
    if (!x->is_zero()) CHECK(model.value(*x) <= target);
    if (model.growth.end() == x) continue;
    const Rational above = model.growth.above(*x);
    CHECK(above >= target);
    // Short enough to hold no other break: every one lies on a grid no finer than this.
    const Rational just_behind = *x + Rational(1, 1'000'000'000);
    CHECK(model.value(just_behind) > target);
    CHECK(model.value(just_behind) >= above);
    CHECK(model.value(just_behind) - above <= Rational(1, 1'000'000));
  }
}

TEST_CASE("growth: 100 g a portion and 50 g for each started four") {
  Growth growth;
  growth.add_slope(100);
  growth.add_steps(50, Rational(1, 4));
  CHECK(growth.last_at_most(900) == Rational(8));
  CHECK(growth.at(8) == Rational(900));
  // Nothing lies between 900 and 950, and 950 itself is of no size: at 8 it is 900.
  CHECK(growth.last_at_most(940) == Rational(8));
  CHECK(growth.last_at_most(950) == Rational(8));
  CHECK(growth.above(8) == Rational(950));
  CHECK(growth.last_at_most(Rational(9501, 10)) == Rational(8001, 1000));
  CHECK(growth.last_at_most(899) == Rational(799, 100));
  // The smallest size has more than 50.
  CHECK(growth.above(0) == Rational(50));
  CHECK(growth.last_at_most(49) == Rational(0));
  CHECK(growth.last_at_most(50) == Rational(0));
  CHECK(growth.last_at_most(51) == Rational(1, 100));
}

TEST_CASE("growth: what never grows has no largest size") {
  Growth growth;
  growth.add_constant(7);
  growth.add_slope(0);
  growth.add_steps(0, 3);
  growth.add_steps(3, 0);
  CHECK(growth.last_at_most(7) == std::nullopt);
  CHECK(growth.last_at_most(8) == std::nullopt);
  CHECK(growth.last_at_most(6) == Rational(0));
}

TEST_CASE("growth: steps of no height do not grow for ever") {
  Growth inner;
  inner.add_slope(1);
  Growth growth;
  growth.add_constant(1);
  growth.add_steps_of(0, inner, 2);
  CHECK(growth.last_at_most(5) == std::nullopt);
}

TEST_CASE("growth: steps of a sum that levels out far behind size 1") {
  Growth inner;
  inner.add_ramp(100, Ramp({{1, 1}, {40, 40}}, Rational(0)));
  Growth loads;
  loads.add_steps_of(10, inner, 1000);
  // One load holds 1000, so ten of the size; at forty of it four loads are the most there are.
  CHECK(loads.last_at_most(10) == Rational(10));
  CHECK(loads.last_at_most(15) == Rational(10));
  CHECK(loads.last_at_most(39) == Rational(30));
  CHECK(loads.last_at_most(40) == std::nullopt);
}

TEST_CASE("growth: a ramp that ends is where the search ends") {
  Growth growth;
  growth.add_slope(1);
  growth.add_ramp(2, Ramp({{1, 1}, {4, 2}}, std::nullopt));
  CHECK(growth.end() == Rational(4));
  CHECK(growth.at(4) == Rational(8));
  CHECK(growth.last_at_most(8) == Rational(4));
  CHECK(growth.last_at_most(100) == Rational(4));
  CHECK(growth.last_at_most(3) == Rational(1));
  CHECK(growth.last_at_most(Rational(11, 2)) == Rational(5, 2));
}

TEST_CASE("growth: a target far away is found in a moment") {
  Growth growth;
  growth.add_slope(Rational(1, 1'000'000'000));
  growth.add_steps(Rational(1, 1'000'000), Rational(7, 3));
  growth.add_steps(Rational(1, 1'000'000), Rational(1, 1'000'003));
  const Rational far = 1'000'000'000'000;
  const auto x = growth.last_at_most(far);
  REQUIRE(x);
  CHECK(growth.at(*x) <= far);
  CHECK(growth.above(*x) >= far);
}

TEST_CASE("growth: it is straight up to the next turn, whatever lies between") {
  RandomModels random(0x7042);
  std::size_t turns = 0;
  for (int i = 0; i < 500 / operations_divisor; ++i) {
    const Model model = random.model(true);
    const Rational stop = std::min(Model::horizon, model.end().value_or(Model::horizon));
    for (Rational x = 0; x < stop;) {
      const Rational turn = std::min(stop, model.growth.next_turn(x).value_or(stop));
      REQUIRE(turn > x);
      const Rational third = (turn - x) / Rational(3);
      const Rational start = model.value(x + third);
      const Rational slope = (model.value(x + third * Rational(2)) - start) / third;
      const Rational near = third / Rational(1000);
      std::vector<Rational> points{x + near, turn - near};
      for (const Rational& point : model.breaks_between(x, turn)) {
        for (const Rational& beside : {-near, Rational(), near}) points.push_back(point + beside);
      }
      for (const Rational& point : points) {
        if (point <= x || point >= turn) continue;
        CHECK(model.value(point) == start + slope * (point - x - third));
      }
      x = turn;
      ++turns;
    }
  }
  CHECK(turns > 3000 / operations_divisor);
}

}  // namespace
}  // namespace scalepan
