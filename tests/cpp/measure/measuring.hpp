// What the tests of measures share: short ways to read, and readable failures.
#pragma once

#include <string>
#include <string_view>

#include "check.hpp"
#include "measure/amount.hpp"
#include "measure/quantity.hpp"
#include "measure/unit_text.hpp"

namespace scalepan {

inline Quantity q(std::string_view text, Measures measures = Measures::unstated) {
  return parse_quantity(text, measures);
}
inline Unit u(std::string_view text, Measures measures = Measures::unstated) {
  return parse_unit(text, measures);
}

}  // namespace scalepan

template <>
struct Catch::StringMaker<scalepan::Quantity> {
  static std::string convert(const scalepan::Quantity& quantity) { return quantity.text(); }
};
template <>
struct Catch::StringMaker<scalepan::Unit> {
  static std::string convert(scalepan::Unit unit) { return "[" + unit.symbol() + "]"; }
};
template <>
struct Catch::StringMaker<scalepan::Dimension> {
  static std::string convert(scalepan::Dimension dimension) { return dimension.name(); }
};
