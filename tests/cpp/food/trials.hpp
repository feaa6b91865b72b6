// Yield test rows as a file has them, and tests made of them. Weights and prices are made up.
#pragma once

#include <string>
#include <vector>

#include "food/yield_test.hpp"
#include "measure/measuring.hpp"

namespace scalepan {

struct RowText {
  std::string trial;
  std::string what;
  std::string weight;
  std::string part{};
  std::string value{};
};

inline WeighedRow row_of(const RowText& row) {
  YieldRow fields;
  fields.trial.text = row.trial;
  fields.what.text = row.what;
  fields.part.text = row.part;
  fields.weight.text = row.weight;
  fields.value.text = row.value;
  return read_yield_row(fields, Measures::unstated);
}

inline YieldTest trials_of(const std::vector<RowText>& rows) {
  std::vector<WeighedRow> read;
  for (const RowText& row : rows) read.push_back(row_of(row));
  return YieldTest(make_trials(read));
}

}  // namespace scalepan
