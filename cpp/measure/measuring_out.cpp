#include "measure/measuring_out.hpp"

#include <algorithm>
#include <utility>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/told.hpp"

namespace scalepan {

namespace {

std::string quoted(const std::string& name) { return "\"" + excerpt(name) + "\""; }

bool measures_food(Dimension kind) {
  return kind == dimension::mass() || kind == dimension::volume();
}

void expect_kind(const std::string& set, const KitchenMeasure& first, const KitchenMeasure& other) {
  const Dimension kind = other.size.dimension();
  if (!measures_food(kind)) {
    fail("measure.kind",
         "a measure gives a weight or a volume, and " + quoted(other.name) + " of the set " +
             quoted(set) + " is of " + (kind.is_number() ? "plain numbers" : kind.name()),
         "write its size as 15 mL or 1/2 cup_us");
  }
  if (kind == first.size.dimension()) return;
  fail("measure.kind",
       "the set " + quoted(set) + " has " + first.size.dimension().name() + " with " +
           quoted(first.name) + " and " + kind.name() + " with " + quoted(other.name),
       "make a set of each");
}

void expect_graduated(const KitchenMeasure& measure) {
  for (const auto& [step, from, to] : measure.graduations) {
    for (const Quantity& mark : {step, from, to}) {
      if (mark.dimension() == measure.size.dimension()) continue;
      fail_dimensions("measure.step", "the measure " + quoted(measure.name) + " has marks of", mark,
                      measure.size);
    }
    if (step.coherent().sign() <= 0 || to < step || from.coherent().sign() < 0 || to < from) {
      fail("measure.step",
           quoted(measure.name) + " cannot be read at every " + step.text() + " from " +
               from.text() + " to " + to.text(),
           "the step lies above zero, and the range is as long as a step at least");
    }
  }
}

void expect_valid(const std::string& set, const std::vector<KitchenMeasure>& measures) {
  if (measures.empty()) fail("measure.none", "the set " + quoted(set) + " has no measure");
  for (const KitchenMeasure& measure : measures) {
    if (measure.name.empty()) fail("measure.name", "a measure of " + quoted(set) + " has no name");
    expect_kind(set, measures.front(), measure);
    if (measure.size.coherent().sign() <= 0) {
      fail("measure.size", "the size of " + quoted(measure.name) + " must be above zero, and is " +
                               measure.size.text());
    }
    expect_graduated(measure);
    if (!measure.most) continue;
    if (!measure.graduations.empty()) {
      fail("measure.most", quoted(measure.name) + " is graduated, and has no most");
    }
    if (!measure.most->is_integer() || measure.most->sign() <= 0) {
      fail("measure.most", "the most of " + quoted(measure.name) +
                               " must be a whole number above zero, and is " +
                               exact_text(*measure.most));
    }
  }
}

std::vector<KitchenMeasure> in_order(const std::string& set, std::vector<KitchenMeasure> measures) {
  expect_valid(set, measures);
  std::ranges::stable_sort(measures, std::ranges::greater{},
                           [](const KitchenMeasure& measure) { return measure.size.coherent(); });
  return measures;
}

std::vector<FillSize> sizes_of(std::span<const KitchenMeasure> measures) {
  std::vector<FillSize> sizes;
  for (const KitchenMeasure& measure : measures) {
    sizes.push_back({measure.size.coherent(), measure.most});
  }
  return sizes;
}

/// The highest mark that is not the full measure, which counts as a fill.
Rational below_full(const KitchenMeasure& measure, const Quantity& step) {
  return (ceil(measure.size.coherent() / step.coherent()) - 1) * step.coherent();
}

std::vector<ReadingRange> ranges_of(std::span<const KitchenMeasure> measures) {
  std::vector<ReadingRange> ranges;
  for (const KitchenMeasure& measure : measures) {
    for (const auto& [step, from, to] : measure.graduations) {
      const Rational first = std::max(from.coherent(), step.coherent());
      ranges.push_back(
          {step.coherent(), first, std::min(to.coherent(), below_full(measure, step))});
    }
  }
  return ranges;
}

FillFinder finder_of(std::span<const KitchenMeasure> measures,
                     std::optional<std::int64_t> most_pieces = {}) {
  return FillFinder(sizes_of(measures), ranges_of(measures), most_pieces);
}

Rational pieces_of(const Filling& filling) {
  Rational pieces = filling.reading ? 1 : 0;
  for (const Rational& count : filling.counts) pieces += count;
  return pieces;
}

/// The nearest by `finder`, which knows no limit, where that has few pieces enough.
Filling nearest_by(const FillFinder& finder, std::span<const KitchenMeasure> measures,
                   const Rational& amount, const std::optional<Rational>& most_pieces) {
  Filling filling = finder.nearest(amount);
  if (!most_pieces || pieces_of(filling) <= *most_pieces) return filling;
  const Rational limit = std::min(*most_pieces, Rational(FillFinder::most_ways));
  return finder_of(measures, limit.word_numerator()).nearest(amount);
}

bool is_metric(Unit unit) {
  const auto written = {"mg", "g", "kg", "mL", "cL", "dL", "L"};
  return std::ranges::find(written, unit.symbol()) != written.end();
}

/// Whether a scale with such steps is read in halves, quarters and so on, not in decimals.
bool read_in_fractions(const Quantity& step) {
  constexpr int finest = 48;
  return !is_metric(step.unit()) && (finest / denominator(step.value())).is_integer();
}

std::string in_unit(const Quantity& amount, bool in_fractions) {
  const Rational number = amount.value();
  const Unit unit = amount.unit();
  return (in_fractions ? mixed_text(number) : exact_text(number)) + " " +
         (number > 1 ? unit.plural() : unit.label());
}

/// A mark in the unit of its step: `1.25 kg`, `4 lb 5 1/2 oz`, `2 1/8 lb`.
std::string mark_text(const Rational& coherent, const Quantity& step) {
  const bool in_fractions = read_in_fractions(step);
  const Quantity mark = in_handy_unit(Quantity::of_coherent(coherent, step.unit()));
  const Quantity pound(1, Unit::named("lb"));
  if (!(step.unit() == Unit::named("oz")) || mark < pound) return in_unit(mark, in_fractions);
  const Quantity pounds = pound * floor(mark.to(pound.unit()).value());
  const Quantity ounces = (mark - pounds).to(step.unit());
  const std::string whole = in_unit(pounds, in_fractions);
  return ounces.coherent().is_zero() ? whole : whole + " " + in_unit(ounces, in_fractions);
}

/// `2 tbsp`, `1/2 cup`, `2 x 1/2 cup`.
std::string fills_text(const KitchenMeasure& measure, const Rational& count) {
  const std::string& name = count > 1 ? measure.plural : measure.name;
  if (!is_digit(measure.name.front())) return exact_text(count) + " " + name;
  return count == 1 ? name : exact_text(count) + " x " + name;
}

/// As a measure is called when filled: a jug by what it holds.
KitchenMeasure when_full(const KitchenMeasure& measure) {
  if (measure.graduations.empty()) return measure;
  KitchenMeasure full = measure;
  full.name = full.plural = in_unit(measure.size, read_in_fractions(measure.size));
  return full;
}

struct Listed {
  Rational size;
  MeasuredPiece piece;
  std::string text;
};

Listed listed_reading(const std::vector<KitchenMeasure>& measures, const MeasureReading& reading) {
  std::size_t range = reading.range;
  for (const KitchenMeasure& measure : measures) {
    if (range >= measure.graduations.size()) {
      range -= measure.graduations.size();
      continue;
    }
    const std::string mark = mark_text(reading.amount, measure.graduations[range].step);
    return {reading.amount, {1, mark}, mark};
  }
  return {};
}

/// The pieces, the largest first; of one size in the order of the set.
std::vector<Listed> listed(const std::vector<KitchenMeasure>& measures, const Filling& filling) {
  std::vector<Listed> pieces;
  for (std::size_t row = 0; row < measures.size(); ++row) {
    const Rational& count = filling.counts[row];
    if (count.is_zero()) continue;
    const KitchenMeasure measure = when_full(measures[row]);
    pieces.push_back({measure.size.coherent(), {count, measure.name}, fills_text(measure, count)});
  }
  if (filling.reading) pieces.push_back(listed_reading(measures, *filling.reading));
  std::ranges::stable_sort(pieces, std::ranges::greater{}, &Listed::size);
  return pieces;
}

}  // namespace

MeasureSet::MeasureSet(std::string name, std::vector<KitchenMeasure> measures)
    : name_(std::move(name)),
      measures_(in_order(name_, std::move(measures))),
      finder_(finder_of(measures_)) {}

void MeasureSet::expect_measurable(const Quantity& exact, const MeasuringWish& wish) const {
  const Dimension kind = exact.dimension();
  if (!(kind.without_stages() == dimension())) {
    fail("measure.kind",
         quoted(name_) + " measures " + dimension().name() + ", and " + exact.text() + " is " +
             (kind.is_number() ? "a plain number" : kind.name()),
         "choose a set of measures of that kind, or name the food");
  }
  if (exact.coherent().sign() < 0) {
    fail("measure.negative", "nothing below zero can be measured out, and " + exact.text() + " is");
  }
  if (const auto& most = wish.most_pieces; most && (*most < 1 || !most->is_integer())) {
    fail("measure.pieces", "at most " + exact_text(*most) + " pieces cannot be asked for",
         "the most pieces are a whole number above zero");
  }
  if (!wish.within) return;
  if (!wish.within->dimension().is_number() || wish.within->coherent().sign() < 0) {
    fail("measure.within", "within " + wish.within->text() + " is no share of an amount",
         "write it as 1 %");
  }
}

MeasuredOut MeasureSet::nearest(const Quantity& exact, const MeasuringWish& wish) const {
  expect_measurable(exact, wish);
  const Rational& amount = exact.coherent();
  if (wish.within) {
    const Rational near_enough = amount * wish.within->coherent();
    for (std::size_t used = 1; used < measures_.size(); ++used) {
      const std::span<const KitchenMeasure> largest(measures_.data(), used);
      Filling filling = nearest_by(finder_of(largest), largest, amount, wish.most_pieces);
      if (abs(filling.total - amount) > near_enough) continue;
      filling.counts.resize(measures_.size(), Rational(0));
      return told(exact, filling);
    }
  }
  return told(exact, nearest_by(finder_, measures_, amount, wish.most_pieces));
}

MeasuredOut MeasureSet::told(const Quantity& exact, const Filling& filling) const {
  MeasuredOut out;
  for (Listed& entry : listed(measures_, filling)) {
    out.text += (out.text.empty() ? "" : " + ") + entry.text;
    out.pieces.push_back(std::move(entry.piece));
  }
  if (out.pieces.empty()) out.text = told_nothing(exact);
  out.amount = Quantity::of_coherent(filling.total, exact.unit());
  out.error = out.amount - exact;
  return out;
}

std::string MeasureSet::told_nothing(const Quantity& exact) const {
  if (exact.coherent().is_zero()) return "nothing";
  const std::vector<Listed> smallest = listed(measures_, finder_.smallest());
  return "less than half of the smallest measure (" + smallest.front().text + ")";
}

}  // namespace scalepan
