#include "costing/curve_points.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

#include "exact/number_text.hpp"

namespace scalepan {

namespace {

/// So that the last of up to 2^22 points, too, is a word.
constexpr std::int64_t most_first_or_step = std::int64_t{1} << 40U;

bool may_be_even(const Rational& x) {
  return x.is_integer() && x.sign() > 0 && x <= Rational(most_first_or_step);
}

std::optional<CurvePoints::Even> even_steps(const std::vector<Rational>& points) {
  if (points.empty()) return std::nullopt;
  const Rational step = points.size() == 1 ? Rational(1) : points[1] - points[0];
  if (!may_be_even(points[0]) || !may_be_even(step)) return std::nullopt;
  for (std::size_t i = 2; i < points.size(); ++i) {
    if (points[i] - points[i - 1] != step) return std::nullopt;
  }
  return CurvePoints::Even{points[0].word_numerator(), step.word_numerator()};
}

}  // namespace

CurvePoints::CurvePoints(std::vector<Rational> listed)
    : even_(even_steps(listed)), count_(listed.size()) {
  if (!even_) listed_ = std::move(listed);
}

std::vector<std::size_t> CurvePoints::ascending() const {
  std::vector<std::size_t> places(size());
  std::iota(places.begin(), places.end(), std::size_t{0});
  if (even_) return places;
  const auto point = [this](std::size_t place) { return listed_[place]; };
  std::ranges::stable_sort(places, {}, point);
  const auto rest = std::ranges::unique(places, {}, point);
  places.erase(rest.begin(), rest.end());
  return places;
}

std::string text_of(const CountRun& run) {
  if (run.first == run.last) return exact_text(run.first);
  const std::string text = exact_text(run.first) + " to " + exact_text(run.last);
  return run.every == Rational(1) ? text : text + ", every " + exact_text(run.every);
}

void CountRuns::add(const Rational& count) {
  if (runs_.empty()) {
    runs_.push_back({count, count, 0});
    return;
  }
  CountRun& run = runs_.back();
  const Rational step = count - run.last;
  if (run.every.is_zero()) {
    run.every = step;
  } else if (run.every != step) {
    // Two make no run where the second belongs with the third.
    const bool pair = run.first + run.every == run.last;
    const CountRun next = pair ? CountRun{run.last, count, step} : CountRun{count, count, 0};
    if (pair) run = {run.first, run.first, 0};
    runs_.push_back(next);
    return;
  }
  run.last = count;
}

}  // namespace scalepan
