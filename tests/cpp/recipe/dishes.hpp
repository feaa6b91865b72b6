// Dishes with bases for the tests, over the tests' pantry, as if each were a file of its own.
#pragma once

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "recipe/reading.hpp"

namespace scalepan {

struct Says {
  std::string makes{};
  std::string loss{};
  std::string load{};
  Rational trays = 1;
};

using Bases = std::vector<std::pair<std::string, std::shared_ptr<const Recipe>>>;

inline RecipeInput dish_input(const std::vector<std::string>& lines, const Rational& serves,
                              const Says& says = {}, const Bases& bases = {}) {
  RecipeInput input = recipe_input(lines, serves);
  input.batch = {placed(says.makes, 21, 9), placed(says.loss, 22, 8), placed(says.load, 23, 8),
                 says.trays};
  for (const auto& [name, recipe] : bases) {
    input.bases.push_back({name, recipe, Place{"pot.toml", 24, 11, {}}});
  }
  return input;
}

inline std::shared_ptr<const Recipe> dish(const std::vector<std::string>& lines,
                                          const Rational& serves, const Says& says = {},
                                          const Bases& bases = {}) {
  return std::make_shared<const Recipe>(dish_input(lines, serves, says, bases), shared_pantry());
}

inline std::string refused_dish(const std::vector<std::string>& lines, const Rational& serves,
                                const Says& says = {}, const Bases& bases = {}) {
  return told_by([&] { return dish(lines, serves, says, bases)->name(); });
}

inline const Line& line_called(const std::vector<Line>& lines, const std::string& id) {
  for (const Line& line : lines) {
    if (line.id == id) return line;
  }
  FAIL("no line " << id);
  return lines.front();
}

/// Foods without facts are weighed as they are written, which keeps the sums in the tests plain.
inline std::shared_ptr<const Recipe> white_sauce() {
  return dish({"100 g zest", "900 g broth"}, 4, {.makes = "800 g"});
}

}  // namespace scalepan
