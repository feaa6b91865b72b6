#include "measure/loads.hpp"

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "measure/told.hpp"

namespace scalepan {

namespace {

bool is_count(const Quantity& amount) {
  const Dimension kind = amount.dimension().without_stages();
  return kind.is_number() || kind == dimension::piece() || kind == dimension::portion();
}

void expect_valid(const Quantity& total, const Quantity& capacity) {
  if (!(total.dimension() == capacity.dimension())) {
    fail_dimensions("load.kind", "no loads can be made of", total, capacity);
  }
  if (total.coherent().sign() < 0) {
    fail("load.negative", "a total below zero has no loads, and " + total.text() + " is");
  }
  if (capacity.coherent().sign() <= 0) {
    fail("load.capacity", "a load of " + capacity.text() + " holds nothing",
         "give what a load holds at most");
  }
  if (!is_count(total)) return;
  if (!total.coherent().is_integer()) {
    fail("load.whole", total.text() + " is no whole number, and counts are shared out whole",
         "round it to a whole number, or share out its weight");
  }
  if (capacity.coherent() < 1) {
    fail("load.capacity", "a load of " + capacity.text() + " does not hold a whole one",
         "give what a load holds at most");
  }
}

/// Counts in the smaller unit, so that pieces shared out by the dozen stay whole pieces.
Unit unit_of_loads(const Quantity& total, const Quantity& capacity) {
  const bool by_total = is_count(total) && total.unit().ratio() < capacity.unit().ratio();
  return by_total ? total.unit() : capacity.unit();
}

/// Two runs of loads as coherent figures, which may be of no load or of nothing.
std::vector<LoadsAlike> parts_of(std::initializer_list<std::pair<Rational, Rational>> runs,
                                 Unit unit) {
  std::vector<LoadsAlike> parts;
  for (const auto& [count, each] : runs) {
    if (count.is_zero() || each.is_zero()) continue;
    parts.push_back({count, Quantity::of_coherent(each, unit)});
  }
  return parts;
}

std::string count_text(const Rational& count) { return count == 1 ? "one" : exact_text(count); }

}  // namespace

Loads loads_of(const Quantity& total, const Quantity& capacity, LoadSplit split) {
  expect_valid(total, capacity);
  const bool whole = is_count(total);
  const Unit unit = unit_of_loads(total, capacity);
  const Rational most = whole ? floor(capacity.coherent()) : capacity.coherent();
  const Rational& all = total.coherent();
  const Rational count = ceil(all / most);
  Loads loads{Quantity::of_coherent(most, unit), {}};
  if (count.is_zero()) return loads;
  if (split == LoadSplit::full_and_short) {
    const Rational full = floor(all / most);
    loads.parts = parts_of({{full, most}, {1, all - full * most}}, unit);
  } else if (whole) {
    const Rational smaller = floor(all / count);
    const Rational larger_loads = all - smaller * count;
    loads.parts = parts_of({{larger_loads, smaller + 1}, {count - larger_loads, smaller}}, unit);
  } else {
    loads.parts = parts_of({{count, all / count}}, unit);
  }
  return loads;
}

Rational Loads::count() const {
  Rational all;
  for (const LoadsAlike& part : parts) all += part.count;
  return all;
}

Rational Loads::full() const {
  return !parts.empty() && parts.front().each == capacity ? parts.front().count : Rational(0);
}

Quantity Loads::each() const { return parts.empty() ? capacity * Rational(0) : parts.front().each; }

Quantity Loads::short_one() const {
  if (parts.empty() || parts.back().each == capacity) return capacity * Rational(0);
  return parts.back().each;
}

std::string Loads::text() const {
  if (parts.empty()) return "no load";
  const LoadsAlike& first = parts.front();
  std::string text = count_text(first.count) + (first.count == 1 ? " load" : " loads") + " of " +
                     tell(first.each).text;
  if (parts.size() > 1) {
    text += " and " + count_text(parts.back().count) + " of " + tell(parts.back().each).text;
  }
  return text;
}

Quantity Loads::in_turn(const Quantity& time_of_one) const {
  if (!(time_of_one.dimension() == dimension::time())) {
    fail("load.time",
         "a load takes a time, and " + time_of_one.text() + " is of the kind " +
             time_of_one.dimension().name(),
         "write it as 30 min");
  }
  if (time_of_one.coherent().sign() < 0) {
    fail("load.time", "no load takes less than no time, and " + time_of_one.text() + " is");
  }
  return time_of_one * count();
}

}  // namespace scalepan
