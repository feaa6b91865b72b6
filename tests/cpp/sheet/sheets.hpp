// Sheets for tests.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "measure/amount.hpp"
#include "sheet/sheet.hpp"

namespace scalepan {

inline CellValue amount(std::string_view text) {
  const Quantity quantity = parse_quantity(text);
  return {quantity_type(quantity.unit()), quantity.coherent()};
}

inline CellValue number(const Rational& value) { return {quantity_type(Unit()), value}; }

inline std::unique_ptr<Sheet> empty_sheet() {
  return std::make_unique<Sheet>(std::make_shared<const FunctionTable>());
}

inline std::unique_ptr<Sheet> sheet_of(const std::vector<Change>& changes) {
  auto sheet = empty_sheet();
  sheet->apply(changes);
  return sheet;
}

inline Rational number_in(const Sheet& sheet, std::string_view name) {
  return std::get<Rational>(sheet.value(name).value);
}

inline const SweepPulse no_pulse = [](std::size_t /*done*/) {};

}  // namespace scalepan
