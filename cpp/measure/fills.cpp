#include "measure/fills.hpp"

#include <algorithm>
#include <numeric>
#include <string>

#include "exact/error.hpp"

namespace scalepan {

namespace {

[[noreturn]] void fail_too_fine() {
  fail("measure.too_fine", "the sizes and steps of the measures have no workable common step",
       "make separate sets of measures whose sizes are no multiples of one step");
}

[[noreturn]] void fail_too_many() {
  fail("measure.too_many",
       "more than " + std::to_string(FillFinder::most_ways) +
           " ways to combine the measures would have to be looked at",
       "say how many of a measure may be used at most, or make smaller sets");
}

std::int64_t word_of(const Rational& whole) {
  // Sums of a few such words stay words.
  constexpr std::int64_t largest = word_max / 8;
  if (whole > largest) fail_too_fine();
  return whole.word_numerator();
}

}  // namespace

FillFinder::FillFinder(std::span<const FillSize> sizes, std::span<const ReadingRange> ranges,
                       std::optional<std::int64_t> most_pieces)
    : rows_(sizes.size()), most_pieces_(most_pieces) {
  put_on_grid(sizes, ranges);
  bound_counts();
  bound_whole_fills();
  build_table();
}

void FillFinder::put_on_grid(std::span<const FillSize> sizes,
                             std::span<const ReadingRange> ranges) {
  step_ = sizes.front().size;
  for (const FillSize& size : sizes) step_ = common_step(step_, size.size);
  for (const ReadingRange& range : ranges) step_ = common_step(step_, range.step);
  for (std::size_t row = 0; row < sizes.size(); ++row) {
    const auto& [size, most] = sizes[row];
    const bool counts = most && *most < most_ways;
    const std::int64_t limit = counts ? most->word_numerator() : most_ways;
    measures_.push_back({row, word_of(size / step_), most ? limit : unlimited});
  }
  for (const auto& [step, first, last] : ranges) {
    marks_.push_back({word_of(step / step_), word_of(ceil(first / step) * step / step_),
                      word_of(floor(last / step) * step / step_)});
  }
  std::ranges::sort(measures_, [](const Measure& a, const Measure& b) {
    return a.size != b.size ? a.size < b.size : a.row > b.row;
  });
}

void FillFinder::bound_counts() {
  const std::vector<Measure> given = measures_;
  for (std::size_t worse = 0; worse < given.size(); ++worse) {
    std::int64_t& most = measures_[worse].most;
    for (std::size_t better = worse + 1; better < given.size(); ++better) {
      if (given[better].most != unlimited) continue;
      const std::int64_t d = given[better].size;
      const std::int64_t bound = d / std::gcd(given[worse].size, d) - 1;
      most = most == unlimited ? bound : std::min(most, bound);
    }
    if (most_pieces_) most = most == unlimited ? *most_pieces_ : std::min(most, *most_pieces_);
  }
}

void FillFinder::bound_whole_fills() {
  for (const Marks& marks : marks_) beside_whole_ = std::max(beside_whole_, Rational(marks.last));
  for (Measure& measure : measures_) {
    if (measure.most == unlimited) {
      whole_ = measure;
    } else {
      beside_whole_ += Rational(measure.most) * measure.size;
    }
  }
  if (!whole_) {
    static_cast<void>(word_of(beside_whole_));
    return;
  }
  // An amount looked up is below B + 2 U, and the next multiple of U at most U above it.
  constexpr int above_bound = 3;
  const Rational most = floor(beside_whole_ / whole_->size) + above_bound;
  static_cast<void>(word_of(most * whole_->size + beside_whole_));
  for (Measure& measure : measures_) {
    if (measure.row == whole_->row) measure.most = most.word_numerator();
  }
}

void FillFinder::build_table() {
  for (const Measure& measure : measures_) table_.push_back(with_next(measure));
}

std::vector<FillFinder::Way> FillFinder::with_next(const Measure& measure) const {
  const std::vector<Way> nothing{{0, 0, 0}};
  const std::vector<Way>& smaller = table_.empty() ? nothing : table_.back();
  const auto known = static_cast<std::int64_t>(smaller.size());
  if (measure.most >= most_ways / known) fail_too_many();
  std::vector<Way> ways;
  ways.reserve(static_cast<std::size_t>(known * (measure.most + 1)));
  for (const Way& way : smaller) {
    for (std::int64_t count = 0; count <= measure.most; ++count) {
      if (!may_hold(way.pieces + count)) break;
      ways.push_back({way.total + count * measure.size, way.pieces + count, count});
    }
  }
  std::ranges::sort(ways, [](const Way& a, const Way& b) {
    if (a.total != b.total) return a.total < b.total;
    return a.pieces != b.pieces ? a.pieces < b.pieces : a.count > b.count;
  });
  const auto repeated = std::ranges::unique(ways, {}, &Way::total);
  ways.erase(repeated.begin(), repeated.end());
  return ways;
}

bool FillFinder::may_hold(std::int64_t pieces) const {
  return !most_pieces_ || pieces <= *most_pieces_;
}

std::int64_t FillFinder::largest_total() const {
  std::int64_t largest = 0;
  for (const Way& way : table_.back()) {
    largest = std::max(largest, way.total);
    if (!may_hold(way.pieces + 1)) continue;
    for (const Marks& marks : marks_) {
      if (marks.first <= marks.last) largest = std::max(largest, way.total + marks.last);
    }
  }
  return largest;
}

Filling FillFinder::nearest(const Rational& amount) const {
  Rational steps = amount / step_;
  Rational taken_off = 0;
  if (whole_) {
    const Rational spare = floor((steps - beside_whole_) / whole_->size) - 1;
    if (spare.sign() > 0) taken_off = spare;
    steps -= taken_off * whole_->size;
  } else {
    steps = std::min(steps, Rational(largest_total()));
  }
  const auto [below, above] = around(steps);
  const bool goes_up = above && Rational(*above) - steps <= steps - below;
  return shortest(goes_up ? *above : below, taken_off);
}

Filling FillFinder::smallest() const {
  const Rational half_a_step(1, 2);
  return shortest(*around(half_a_step).above, 0);
}

/// The sums next to an amount: the largest not above it, and the smallest not below it.
FillFinder::Span FillFinder::around(const Rational& steps) const {
  const std::int64_t low = floor(steps).word_numerator();
  const std::int64_t high = ceil(steps).word_numerator();
  Span span{0, std::nullopt};
  const auto offer = [&](std::int64_t total) {
    if (total <= low) span.below = std::max(span.below, total);
    if (total >= high) span.above = std::min(span.above.value_or(total), total);
  };
  for (const Way& way : table_.back()) {
    offer(way.total);
    if (way.total >= high) break;
    if (!may_hold(way.pieces + 1)) continue;
    for (const auto& [step, first, last] : marks_) {
      if (first > last) continue;
      const std::int64_t mark = (low - way.total) / step * step;
      offer(way.total + std::clamp(mark, first, last));
      offer(way.total + std::clamp(mark + step, first, last));
    }
  }
  return span;
}

Filling FillFinder::shortest(std::int64_t total, const Rational& taken_off) const {
  const Way* best = nullptr;
  std::int64_t best_pieces = 0;
  Filling filling{std::vector<Rational>(rows_, Rational(0)), std::nullopt, 0};
  // From the smallest sum of fills on, so that of equally short ways the larger reading is kept.
  for (const Way& way : table_.back()) {
    const std::int64_t rest = total - way.total;
    if (rest < 0) break;
    const auto fits = std::ranges::find_if(marks_, [rest](const Marks& marks) {
      return rest % marks.step == 0 && rest >= marks.first && rest <= marks.last;
    });
    const bool read = rest > 0;
    const std::int64_t pieces = way.pieces + (read ? 1 : 0);
    if ((read && fits == marks_.end()) || !may_hold(pieces)) continue;
    if (best != nullptr && pieces >= best_pieces) continue;
    best = &way;
    best_pieces = pieces;
    filling.reading.reset();
    if (read) {
      const auto range = static_cast<std::size_t>(fits - marks_.begin());
      filling.reading = MeasureReading{range, Rational(rest) * step_};
    }
  }
  std::int64_t left = best->total;
  for (std::size_t i = measures_.size(); i-- > 0;) {
    const auto way = std::ranges::lower_bound(table_[i], left, {}, &Way::total);
    filling.counts[measures_[i].row] = way->count;
    left -= way->count * measures_[i].size;
  }
  if (whole_) filling.counts[whole_->row] += taken_off;
  filling.total = Rational(total) * step_;
  if (whole_) filling.total += taken_off * whole_->size * step_;
  return filling;
}

}  // namespace scalepan
