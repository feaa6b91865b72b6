// Temperatures as a method writes them: for telling in both scales, not for sums.
//
//   temperature = degrees [ to degrees ] scale
//   degrees     = [ "-" ] digits [ point digits ]
//   to          = "to" | "-" | "–"
//   scale       = [ sign ] ( "C" | "F" | "Celsius" | "Fahrenheit" ) | "℃" | "℉"
//   sign        = "°" | "º" | "degrees" | "degree" | "deg"
//   pair        = temperature ( "/" temperature | "(" temperature ")" )
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "exact/number_text.hpp"

namespace scalepan {

enum class Scale : std::uint8_t { celsius, fahrenheit };

[[nodiscard]] constexpr Scale other_than(Scale scale) {
  return scale == Scale::celsius ? Scale::fahrenheit : Scale::celsius;
}

/// From one scale to the other, exactly: F = C * 9/5 + 32.
[[nodiscard]] Rational degrees_in(const Rational& degrees, Scale from, Scale to);

/// `low` and `high` differ for `180 to 200 °C`, and stand as they are written.
struct Temperature {
  Rational low;
  Rational high;
  Scale scale = Scale::celsius;
};

/// One temperature, and where the writer gave the other scale beside it, that too.
struct WrittenTemperature {
  Temperature written;
  std::optional<Temperature> beside;
};

/// The whole text. Throws `temperature.unreadable`, `temperature.scale` where none is named,
/// `temperature.below_zero` below absolute zero, and `temperature.pair` for two scales that are
/// more than 10 °F apart: printed pairs are rounded, 200 °C goes with 400 °F in many books (common
/// practice, no published source).
[[nodiscard]] WrittenTemperature parse_temperature(std::string_view text,
                                                   DecimalMark mark = DecimalMark::point);

/// `200 °C (392 °F)`, `350 °F (≈ 177 °C)`: as written, and the other scale to whole degrees, half
/// up, marked where that is not exact. What the writer gave in both scales stays.
[[nodiscard]] std::string told(const WrittenTemperature& temperature);

/// `20 °C (36 °F)`, `5 °F (≈ 2.8 °C)`: as a difference of temperatures, 5 of Celsius to 9 of
/// Fahrenheit, and to tenths.
[[nodiscard]] std::string told_difference(const WrittenTemperature& difference);

/// How a scale is written: `180 °C`, `180 Celsius`, or `180 C`, which may be cups.
enum class ScaleMark : std::uint8_t { sign, word, letter };

struct FoundTemperature {
  WrittenTemperature read;
  std::size_t end = 0;
  ScaleMark mark = ScaleMark::letter;
  bool open_bracket = false;  // words follow in it: `71 °C (160 °F in the middle)`
};

/// What a text with plain spaces has at `at`, unchecked; nothing where no number begins there.
[[nodiscard]] std::optional<FoundTemperature> temperature_at(std::string_view text, std::size_t at,
                                                             DecimalMark mark);

/// Throws `temperature.below_zero` and `temperature.pair` with the offset `at`.
void expect_heat(const WrittenTemperature& read, std::size_t at);
/// Throws `temperature.pair` with the offset `at` where the other scale beside a difference is more
/// than 10 °F off, as where `20 °C (68 °F)` was converted as a temperature.
void expect_difference(const WrittenTemperature& difference, std::size_t at);

}  // namespace scalepan
