#include "sheet/cell_text.hpp"

#include "measure/figure.hpp"

namespace scalepan {

std::string figure_of(const CellValue& value) {
  const bool told =
      value.type.kind == ValueKind::quantity && !std::holds_alternative<ThingPointer>(value.value);
  if (!told) return figure_text(value.value, value.type);
  const auto tell_number = [&](const Rational& number) {
    return figure_of(Quantity::of_coherent(number, value.type.shown));
  };
  if (const auto* number = std::get_if<Rational>(&value.value)) return tell_number(*number);
  const Interval& interval = std::get<Interval>(value.value);
  if (!interval.high) return "at least " + tell_number(interval.low);
  return tell_number(interval.low) + " to " + tell_number(*interval.high);
}

}  // namespace scalepan
