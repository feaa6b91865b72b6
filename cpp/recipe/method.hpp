// The method: steps, each with the share of the lines it uses, and the temperature and time it
// takes. Amounts follow the size of the recipe; times never do.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exact/error.hpp"
#include "measure/temperature.hpp"
#include "recipe/line.hpp"
#include "recipe/measure_phrase.hpp"

namespace scalepan {

class Recipe;

/// A step as the file has it. Empty texts say nothing.
struct StepInput {
  PlacedText text;
  std::vector<PlacedText> uses;  // `fennel`, `2/3 of olive_oil`, `rest of olive_oil`
  PlacedText at;                 // `200 °C`
  PlacedText time;               // `35 min`, `30 to 35 min`
  bool each_load = false;        // done anew for each load
};

struct StepUse {
  std::size_t line = 0;  // of the recipe
  Rational share = 1;
};

struct MethodStep {
  std::string text;                 // temperatures in both scales
  std::vector<std::string> untold;  // what looks like a temperature in it, and stays as written
  std::vector<StepUse> uses;
  std::optional<WrittenTemperature> at;
  std::string time;  // as written, or empty
  bool each_load = false;
};

/// Throws `method.text` for a step without a text, `method.line` for a use of no line of the
/// recipe, with the nearest ids, `method.share` for a share of zero or below or one in portions,
/// `method.time`, what `settle_shares` throws for the uses of one line, at the last of them, and
/// the errors of the number, amount and temperature readers; each with its place.
[[nodiscard]] std::vector<MethodStep> read_method(const std::vector<StepInput>& input,
                                                  const std::vector<Line>& lines, Reading reading);

/// The line at the amount that a step takes of it, without its preparation and note.
[[nodiscard]] Line part_of_line(const Line& line, const Rational& share);

/// Temperatures that stay in one scale or none; lines that no step uses, or of which a part is
/// left, unless no step states uses. The bases' own are among them.
[[nodiscard]] std::vector<std::string> method_to_check(const Recipe& recipe);

/// `times are those of the tested 4 portions and are not scaled`; empty at a tested size, and
/// where no step states a time.
[[nodiscard]] std::string times_remark(const Recipe& recipe);

/// Why times are not scaled, with its source.
[[nodiscard]] std::string_view times_practice();

}  // namespace scalepan
