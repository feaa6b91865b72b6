// Lines and recipes read over the tests' pantry, as if from pot.toml.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "food/pantry.hpp"
#include "recipe/recipe.hpp"

namespace scalepan {

inline std::shared_ptr<const Catalog> shared_pantry() {
  static const auto catalog = std::make_shared<const Catalog>(pantry());
  return catalog;
}

inline PlacedText placed(std::string text, int line = 4, int column = 11) {
  return {std::move(text), Place{"pot.toml", line, column, {}}};
}

inline LineInput input_of(std::string text, int line = 4) {
  LineInput input;
  input.line = placed(std::move(text), line);
  return input;
}

inline Line line_of(const LineInput& input, Measures measures = Measures::metric,
                    const Catalog& catalog = *shared_pantry()) {
  const Reading reading{measures, DecimalMark::point};
  return located(input.line.place, input.line.text, [&] {
    return line_from(read_written_line(input.line.text, reading, catalog), input, reading, catalog);
  });
}
inline Line line_of(const char* text, Measures measures = Measures::metric) {
  return line_of(input_of(text), measures);
}

inline RecipeInput recipe_input(const std::vector<std::string>& lines, const Rational& serves = 4) {
  RecipeInput input;
  input.name = placed("Leek and barley pot", 1, 8);
  input.serves = serves;
  input.serves_place = Place{"pot.toml", 2, 10, {}};
  input.reading.measures = Measures::metric;
  input.tested_place = Place{"pot.toml", 3, 13, {}};
  input.lines_place = Place{"pot.toml", 4, 9, {}};
  for (const std::string& line : lines) {
    input.lines.push_back(input_of(line, 5 + static_cast<int>(input.lines.size())));
  }
  return input;
}

inline Recipe recipe_of(const std::vector<std::string>& lines, const Rational& serves = 4) {
  return {recipe_input(lines, serves), shared_pantry()};
}

/// Code and `place: message (hint)` of the error that `action` throws.
template <typename Action>
std::string told_by(Action&& action) {
  try {
    static_cast<void>(action());
  } catch (const Error& error) {
    return error.code() + " @ " + error.what();
  }
  return "no error was thrown";
}

}  // namespace scalepan
