#include "sheet/cell_text.hpp"

#include "measure/figure.hpp"

namespace scalepan {

namespace {

template <typename Tell>
std::string tell_value(const CellValue& value, Tell tell) {
  if (const auto* thing = std::get_if<ThingPointer>(&value.value)) return (*thing)->text();
  const auto tell_number = [&](const Rational& number) {
    return tell(Quantity::of_coherent(number, value.type.shown));
  };
  if (const auto* interval = std::get_if<Interval>(&value.value)) {
    if (!interval->high) return "at least " + tell_number(interval->low);
    return tell_number(interval->low) + " to " + tell_number(*interval->high);
  }
  const Rational& number = std::get<Rational>(value.value);
  if (value.type.kind == ValueKind::flag) return number.is_zero() ? "no" : "yes";
  return tell_number(number);
}

}  // namespace

std::string text_of(const CellValue& value) {
  return tell_value(value, [](const Quantity& quantity) { return quantity.text(); });
}

std::string figure_of(const CellValue& value) {
  return tell_value(value, [](const Quantity& quantity) { return figure_of(quantity); });
}

}  // namespace scalepan
