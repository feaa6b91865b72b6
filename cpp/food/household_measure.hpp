// Household measures as the USDA releases print them: `cup, chopped`, `large`, `oz`.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "exact/rational.hpp"
#include "measure/unit.hpp"

namespace scalepan {

/// One printed weight: `grams` for `amount` of `text`.
struct HouseholdMeasure {
  std::string text;  // as printed
  Rational amount = 1;
  Rational grams;
  int number = 0;              // its place among the food's measures
  std::optional<Unit> volume;  // of `cup, chopped` the US cup
  bool is_weight = false;      // `oz`, `lb`: tells nothing about the food
  std::string label;           // of `cup, chopped` and `chopped`: `chopped`; of `large`: `large`

  /// As a source names it: `cup, chopped 160 g`, `2 tbsp 32 g`.
  [[nodiscard]] std::string told() const;
};

/// Sets volume, is_weight and label from the text.
void read_label(HouseholdMeasure& measure);

/// `medium (2-1/2" dia)` without the bracket behind it; the whole text where it is a bracket alone.
[[nodiscard]] std::string_view without_bracket(std::string_view label);

}  // namespace scalepan
