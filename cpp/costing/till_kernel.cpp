#include "costing/till_kernel.hpp"

#include <algorithm>
#include <utility>

namespace scalepan {

namespace {

/// More steps a period than these are found one by one as well.
constexpr std::size_t most_steps = 256;

/// The price rises by `height` where the need goes beyond `after`, and beyond every multiple of
/// `every` behind it; once where there is none.
struct PriceRise {
  Rational height;
  Rational after;
  std::optional<Rational> every;
};

/// Only where its table is known.
std::vector<PriceRise> price_rises(const CoverFunction& covers) {
  const auto period = covers.period();
  const Rational end = period ? period->from + period->size : *covers.most();
  std::vector<PriceRise> rises;
  Rational before;
  for (const CoverStep& step : covers.steps(0, end)) {
    const bool recurs = period && step.after >= period->from;
    if (recurs && step.after >= end) break;
    const Rational height = step.cover.price - before;
    before = step.cover.price;
    if (height.is_zero()) continue;
    rises.push_back({height, step.after, recurs ? std::optional(period->size) : std::nullopt});
  }
  return rises;
}

/// The least whole number that makes both whole.
Rational common_denominator(const Rational& a, const Rational& b) {
  return Rational(1) / common_step(Rational(1) / denominator(a), Rational(1) / denominator(b));
}

struct StraightNeed {
  Rational first;
  Rational step;
};

/// For at least one point; of height 0 where it does not rise up to the last of them. None where
/// its figures are no words.
std::optional<Stair> stair_of(const PriceRise& rise, const StraightNeed& need, std::size_t points,
                              const Rational& price_step) {
  const Rational unit = rise.every.value_or(Rational(1));
  const Rational slope = need.step / unit;
  const Rational start = (need.first - rise.after) / unit;
  Rational width = common_denominator(slope, start);
  const Rational whole_slope = slope * width;
  const Rational whole_start = start * width;
  const Rational reached = whole_slope * Rational(points - 1) + whole_start;
  if (reached.sign() <= 0) return Stair{};
  // So wide that it rises once at most.
  if (!rise.every) width = std::max({Rational(1), whole_slope, reached});
  const Rational height = rise.height / price_step;
  const bool words =
      height.is_word() && whole_slope.is_word() && whole_start.is_word() && width.is_word();
  if (!words) return std::nullopt;
  return Stair{height.word_numerator(), whole_slope.word_numerator(), whole_start.word_numerator(),
               width.word_numerator()};
}

/// So that it fits beside a sum of stairs.
Rational most_till() { return std::int64_t{1} << 61U; }

bool has_tables(const ItemCourse& item) {
  return std::ranges::all_of(item.plan().groups, [](const OfferGroup& group) {
    return group.covers == nullptr || group.covers->table() != nullptr;
  });
}

bool is_stairs(const ItemCourse& item) {
  const auto& covers = item.plan().groups.front().covers;
  return item.is_straight() && item.needs().size() == 1 && covers != nullptr &&
         covers->table()->size() <= most_steps;
}

class KernelMaker {
 public:
  KernelMaker(const std::vector<ItemCourse>& items, const CurvePoints& points)
      : items_(items), points_(points) {}

  TillKernel make(Unit money) {
    if (!points_.even()) {
      return in_fractions("the points are not whole portions in equal steps upward");
    }
    for (const ItemCourse& item : items_) {
      if (!has_tables(item)) return in_fractions(item.plan().item + ": its packs make many covers");
    }
    for (const ItemCourse& item : items_) {
      if (is_stairs(item)) {
        stairs_.push_back({&item, price_rises(*item.plan().groups.front().covers)});
      } else {
        by_cover_.push_back(&item);
      }
    }
    const Rational step = price_step();
    const auto stairs = stairs_in(step);
    auto sum = stairs ? StairSum::over(*stairs, points_.size()) : std::nullopt;
    if (!sum || most_by_cover() > most_till() * step) {
      return in_fractions("its sums do not fit 64-bit words");
    }
    std::string text = way_of(*sum);
    return {std::move(sum), std::move(by_cover_), step / money.ratio(), std::move(text)};
  }

 private:
  struct Item {
    const ItemCourse* course;
    std::vector<PriceRise> rises;
  };

  static TillKernel in_fractions(const std::string& reason) {
    return {std::nullopt, {}, 1, "till in fractions: " + reason};
  }

  [[nodiscard]] std::string way_of(const StairSum& sum) const {
    const auto stairs = [](std::size_t count) {
      return std::to_string(count) + (count == 1 ? " stair" : " stairs");
    };
    std::string text = "till in words: " + stairs(sum.in_lanes()) + " by lanes of " +
                       std::to_string(sum.lane_bits()) + " bits, " + stairs(sum.by_rises()) +
                       " by rises";
    for (const ItemCourse* item : by_cover_) {
      text += (item == by_cover_.front() ? "; from cover to cover: " : ", ") + item->plan().item;
    }
    return text;
  }

  /// What all prices are multiples of.
  [[nodiscard]] Rational price_step() const {
    Rational step;
    for (const Item& item : stairs_) {
      for (const PriceRise& rise : item.rises) step = common_step(step, rise.height);
    }
    for (const ItemCourse* item : by_cover_) {
      for (const OfferGroup& group : item->plan().groups) {
        if (group.covers) step = common_step(step, group.covers->price_step());
      }
    }
    return step.is_zero() ? Rational(1) : step;
  }

  [[nodiscard]] std::optional<std::vector<Stair>> stairs_in(const Rational& price_step) const {
    std::vector<Stair> stairs;
    if (points_.size() == 0) return stairs;
    const CurvePoints::Even even = *points_.even();
    for (const Item& item : stairs_) {
      const NeedCourse& course = *item.course->needs().front().straight();
      const StraightNeed need{course.at(even.first) - item.course->held(0),
                              course.slope() * Rational(even.step)};
      for (const PriceRise& rise : item.rises) {
        const auto stair = stair_of(rise, need, points_.size(), price_step);
        if (!stair) return std::nullopt;
        stairs.push_back(*stair);
      }
    }
    return stairs;
  }

  /// No till of the items that are followed from cover to cover is more: a larger need costs no
  /// less, and of several kinds the cheapest is bought.
  [[nodiscard]] Rational most_by_cover() const {
    Rational most;
    for (const ItemCourse* item : by_cover_) {
      const auto& covers = item->plan().groups.front().covers;
      if (covers) most += covers->at(item->most_to_buy()).price;
    }
    return most;
  }

  const std::vector<ItemCourse>& items_;
  const CurvePoints& points_;
  std::vector<Item> stairs_;
  std::vector<const ItemCourse*> by_cover_;
};

}  // namespace

TillKernel till_kernel(const std::vector<ItemCourse>& items, const CurvePoints& points,
                       Unit money) {
  return KernelMaker(items, points).make(money);
}

}  // namespace scalepan
