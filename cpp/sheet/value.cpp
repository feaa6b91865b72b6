#include "sheet/value.hpp"

#include "exact/number_text.hpp"
#include "measure/quantity.hpp"

namespace scalepan {

namespace {

std::string number_text(const Rational& value, const ValueType& type) {
  if (type.kind == ValueKind::flag) return value.is_zero() ? "no" : "yes";
  return Quantity::of_coherent(value, type.shown).text();
}

std::string interval_text(const Interval& interval, const ValueType& type) {
  if (type.kind == ValueKind::flag) return "yes or no";
  if (!interval.high) return "at least " + number_text(interval.low, type);
  return exact_text(interval.low / type.shown.ratio()) + " to " + number_text(*interval.high, type);
}

}  // namespace

bool Text::same_as(const Thing& other) const {
  const auto* text = dynamic_cast<const Text*>(&other);
  return text != nullptr && text->written_ == written_;
}

bool same_value(const Value& a, const Value& b) {
  const auto* one = std::get_if<ThingPointer>(&a);
  const auto* two = std::get_if<ThingPointer>(&b);
  if (one != nullptr && two != nullptr) return *one == *two || (*one)->same_as(**two);
  return a == b;
}

std::string figure_text(const Value& value, const ValueType& type) {
  if (const auto* number = std::get_if<Rational>(&value)) return number_text(*number, type);
  if (const auto* interval = std::get_if<Interval>(&value)) return interval_text(*interval, type);
  return std::get<ThingPointer>(value)->text();
}

}  // namespace scalepan
