// The text of a line while it is read, and what it is read with.
#pragma once

#include <string_view>
#include <vector>

#include "recipe/food_phrase.hpp"
#include "recipe/measure_phrase.hpp"

namespace scalepan {

/// Parts of the line are views into `text`, so that each knows its offset.
struct LineSource {
  std::string_view text;
  Reading reading;
  const Catalog& catalog;
  std::vector<std::size_t> tabs;  // offsets; in the text they are spaces

  [[nodiscard]] std::size_t offset(std::string_view part) const { return offset_in(text, part); }
  /// At the start of a part, with its end as the end of the text.
  [[nodiscard]] Cursor cursor(std::string_view part) const {
    return Cursor(text.substr(0, offset(part) + part.size()), offset(part));
  }
  [[nodiscard]] bool knows(std::string_view name) const { return knows_food(catalog, name); }
};

}  // namespace scalepan
