// Rows of price books and of what is on hand as they were written, to be written again.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "exact/error.hpp"
#include "measure/measures.hpp"

namespace scalepan {

/// A column, and the field of a row it stands in.
template <typename Row>
struct WrittenField {
  std::string_view column;
  PlacedText Row::* field;
};

struct WrittenRow {
  std::vector<std::pair<std::string_view, std::string>> fields;  // by column, without empty ones
  Measures measures;  // which pint and fluid ounce are meant in it
};

template <typename Row>
std::shared_ptr<const WrittenRow> written_row(const Row& row,
                                              std::span<const WrittenField<Row>> fields,
                                              Measures measures) {
  WrittenRow written{{}, measures};
  for (const WrittenField<Row>& one : fields) {
    const std::string& text = (row.*one.field).text;
    if (!text.empty()) written.fields.emplace_back(one.column, text);
  }
  return std::make_shared<const WrittenRow>(std::move(written));
}

}  // namespace scalepan
