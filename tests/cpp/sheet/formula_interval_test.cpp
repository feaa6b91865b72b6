// Formulas of intervals against the same formulas of numbers taken from inside them.
#include <random>

#include "check.hpp"
#include "sheet/cells.hpp"

using namespace scalepan;

namespace {

Interval interval_in(const Value& value) {
  if (const auto* number = std::get_if<Rational>(&value)) return {*number, *number};
  return std::get<Interval>(value);
}

bool holds(const Interval& interval, const Rational& x) {
  return interval.low <= x && (!interval.high || x <= *interval.high);
}

/// The figures of one trial: intervals, and numbers inside them.
class Trial {
 public:
  explicit Trial(std::uint32_t seed) : random_(seed) {}

  Interval interval(bool open_ended) {
    const Rational low = number(-6, 6);
    if (open_ended && pick(4) == 0) return {low, std::nullopt};
    return {low, low + number(0, 6)};
  }
  Rational inside(const Interval& interval) {
    switch (pick(4)) {
      case 0:
        return interval.low;
      case 1:
        return interval.high.value_or(interval.low + number(0, 1000));
      default:
        if (!interval.high) return interval.low + number(0, 20);
        return interval.low + (*interval.high - interval.low) * Rational(pick(13)) / 12;
    }
  }
  /// Over the names `a` to `d`, each of which may come again.
  std::string formula(int depth) {
    if (depth == 0) return std::string(1, static_cast<char>('a' + pick(4)));
    const auto part = [&] { return "(" + formula(depth - 1) + ")"; };
    static const std::vector<std::string> signs{" + ", " - ", " * ", " / "};
    switch (pick(8)) {
      case 0:
        return "min(" + part() + ", " + part() + ", " + part() + ")";
      case 1:
        return "max(" + part() + ", " + part() + ")";
      case 2:
        return "abs(" + part() + ")";
      case 3:
        return part() + "^" + std::to_string(pick(4));
      case 4:
        return "down_to_multiple(" + part() + ", 2/3)";
      default:
        return part() + signs[pick(4)] + part();
    }
  }

  std::uint32_t pick(std::uint32_t below) { return static_cast<std::uint32_t>(random_() % below); }

 private:
  Rational number(int from, int to) {
    return {
        from * 3 + static_cast<std::int64_t>(pick(static_cast<std::uint32_t>(to - from) * 3 + 1)),
        3};
  }

  std::mt19937 random_;
};

Cells cells_of(const std::array<Interval, 4>& intervals) {
  Cells cells({});
  for (std::size_t i = 0; i < 4; ++i) {
    cells.add(std::string(1, static_cast<char>('a' + i)), intervals[i], quantity_type(Unit()));
  }
  return cells;
}

Value run_at(const Cells& cells, const std::string& text, const std::vector<Rational>& points) {
  const Formula formula = cells.compile(text);
  RunSpace space;
  return run_on_values(
      *formula.programme, [&](std::size_t input) { return points[formula.inputs[input]]; }, space);
}

}  // namespace

TEST_CASE("sheet/intervals: what numbers inside come to lies inside the result") {
  int compared = 0;
  int refused = 0;
  for (std::uint32_t seed = 0; seed < 4000; ++seed) {
    Trial trial(seed);
    std::array<Interval, 4> intervals;
    for (Interval& interval : intervals) interval = trial.interval(true);
    const Cells cells = cells_of(intervals);
    const std::string text = trial.formula(1 + static_cast<int>(seed % 3));
    INFO(text);
    Interval result;
    try {
      result = interval_in(cells.run_values(cells.compile(text)));
    } catch (const Error& error) {
      const bool expected =
          error.code() == "formula.unbounded" || error.code() == "number.division_by_zero";
      CHECK(expected);
      ++refused;
      continue;
    }
    for (int sample = 0; sample < 12; ++sample) {
      std::vector<Rational> points;
      for (const Interval& interval : intervals) points.push_back(trial.inside(interval));
      CHECK(holds(result, std::get<Rational>(run_at(cells, text, points))));
    }
    ++compared;
  }
  CHECK(compared > 2000);
  CHECK(refused > 200);
}

// An operation on names that come once each is at its ends where they are at theirs, or at 0.
TEST_CASE("sheet/intervals: each end is reached") {
  for (const std::string text :
       {"a + b", "a - b", "a * b", "a / b", "min(a, b)", "max(a, b)", "abs(a)", "-a", "a^2", "a^3",
        "a^0", "b^-1", "b^-2", "up_to_multiple(a, 1/2)", "down_to_multiple(a, 1/2)",
        "nearest_multiple(a, 1/2)"}) {
    for (std::uint32_t seed = 0; seed < 200; ++seed) {
      Trial trial(seed);
      std::array<Interval, 4> intervals;
      for (Interval& interval : intervals) interval = trial.interval(false);
      const Cells cells = cells_of(intervals);
      INFO(text);
      Interval result;
      try {
        result = interval_in(cells.run_values(cells.compile(text)));
      } catch (const Error& error) {
        CHECK(error.code() == "number.division_by_zero");
        CHECK(holds(intervals[1], 0));
        continue;
      }
      std::vector<Rational> reached;
      for (const Rational& a : {intervals[0].low, *intervals[0].high, Rational(0)}) {
        for (const Rational& b : {intervals[1].low, *intervals[1].high}) {
          if (!holds(intervals[0], a)) continue;
          reached.push_back(std::get<Rational>(run_at(cells, text, {a, b, 0, 0})));
        }
      }
      CHECK(result.low == *std::ranges::min_element(reached));
      CHECK(result.high == *std::ranges::max_element(reached));
    }
  }
}

TEST_CASE("sheet/intervals: what has no upper bound") {
  const Cells cells{{"some", "at least 3 kg"},
                    {"spread", "2 kg to 5 kg"},
                    {"one", "4 kg to 4 kg"},
                    {"share", "1/2 to 3/4"},
                    {"below", "-2 to 1"}};
  CHECK(cells.told("some + spread") == "at least 5 kg");
  CHECK(cells.told("some * share") == "at least 1.5 kg");
  CHECK(cells.told("some * 0") == "0 kg");
  CHECK(cells.told("1 kg / some") == "0 to 1/3");
  CHECK(cells.told("some / share") == "at least 4 kg");
  CHECK(cells.told("min(some, spread)") == "2 to 5 kg");
  CHECK(cells.told("max(some, spread)") == "at least 3 kg");
  CHECK(cells.told("abs(some)") == "at least 3 kg");
  CHECK(cells.told("some^2 / (1 kg)") == "at least 9000 g");
  CHECK(cells.told("up_to_multiple(some, 2 kg)") == "at least 4 kg");
  CHECK(cells.told("spread - one") == "-2 to 1 kg");
  CHECK(cells.told("one") == "4 kg");
  CHECK(cells.told("one = 4 kg") == "yes");
  CHECK(cells.told("below * below") == "-2 to 4");
  CHECK(cells.told("below^2") == "0 to 4");
}

TEST_CASE("sheet/intervals: bounds that decide") {
  const Cells cells{{"some", "at least 3 kg"}, {"spread", "2 kg to 5 kg"}};
  CHECK(cells.told("some > 2 kg") == "yes");
  CHECK(cells.told("some >= 3 kg") == "yes");
  CHECK(cells.told("some < 3 kg") == "no");
  CHECK(cells.told("spread <= 5 kg and spread >= 2 kg") == "yes");
  CHECK(cells.told("spread < 2 kg or spread > 5 kg") == "no");
  CHECK(cells.told("spread = 6 kg") == "no");
  CHECK(cells.told("some <> 1 kg") == "yes");
  CHECK(cells.told("if some > 2 kg then spread else 0") == "2 to 5 kg");
}
