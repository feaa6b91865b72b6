// Temperatures: both scales, against published pairs, and what is refused.
#include "measure/temperature.hpp"

#include "catch.hpp"
#include "exact/error.hpp"
#include "exact/rounding.hpp"

namespace scalepan {
namespace {

std::string told_of(std::string_view text, DecimalMark mark = DecimalMark::point) {
  return told(parse_temperature(text, mark));
}

template <typename Read>
std::string refusal_by(Read read) {
  try {
    static_cast<void>(read());
  } catch (const Error& error) {
    return error.code() + " @ " + error.what();
  }
  return "no error was thrown";
}

std::string refusal(std::string_view text) {
  return refusal_by([&] { return parse_temperature(text); });
}

std::string celsius_of(int fahrenheit) {
  return fixed_text(degrees_in(Rational(fahrenheit), Scale::fahrenheit, Scale::celsius), 1);
}

// US FoodSafety.gov and FSIS, safe minimum internal temperatures, printed in both scales.
TEST_CASE("temperature: the published minimum temperatures agree to the printed tenth") {
  CHECK(celsius_of(165) == "73.9");
  CHECK(celsius_of(160) == "71.1");
  CHECK(celsius_of(145) == "62.8");
}

// FDA Food Code 3-501.14 prints 135, 70 and 41 F as 57, 21 and 5 C.
TEST_CASE("temperature: the pairs of the cooling rule agree to the printed degree") {
  CHECK(told_of("135 °F") == "135 °F (≈ 57 °C)");
  CHECK(told_of("70 °F") == "70 °F (≈ 21 °C)");
  CHECK(told_of("41 °F") == "41 °F (5 °C)");
  CHECK(told_of("57 °C") == "57 °C (≈ 135 °F)");
}

// The fixed points of both scales, and where they meet: -40.
TEST_CASE("temperature: the fixed points are exact") {
  CHECK(told_of("0 °C") == "0 °C (32 °F)");
  CHECK(told_of("100 °C") == "100 °C (212 °F)");
  CHECK(told_of("-40 °C") == "-40 °C (-40 °F)");
  CHECK(told_of("212 F") == "212 °F (100 °C)");
  CHECK(told_of("-18 °C") == "-18 °C (≈ 0 °F)");  // -0.4 °F
}

TEST_CASE("temperature: every way to write one") {
  for (const char* text : {"200 °C", "200°C", "200 C", "200C", " 200 °c ", "200 ℃", "200 º C",
                           "200 degrees Celsius", "200 deg C", "200\u00A0°C"}) {
    CAPTURE(text);
    CHECK(told_of(text) == "200 °C (392 °F)");
  }
  CHECK(told_of("350 Fahrenheit") == "350 °F (≈ 177 °C)");
  CHECK(told_of("62.5 °C") == "62.5 °C (≈ 145 °F)");  // 144.5, a tie away from zero
  CHECK(told_of("62,5 °C", DecimalMark::comma) == "62.5 °C (≈ 145 °F)");
  CHECK(told_of("\u221218 °C") == "-18 °C (≈ 0 °F)");
}

TEST_CASE("temperature: a range keeps both ends") {
  CHECK(told_of("180 to 200 °C") == "180 to 200 °C (356 to 392 °F)");
  CHECK(told_of("180-200 °C") == "180 to 200 °C (356 to 392 °F)");
  CHECK(told_of("180 °C – 200 °C") == "180 to 200 °C (356 to 392 °F)");
  CHECK(told_of("180° to 200 °C") == "180 to 200 °C (356 to 392 °F)");
  CHECK(told_of("325 to 350 °F") == "325 to 350 °F (≈ 163 to 177 °C)");
}

TEST_CASE("temperature: what the writer gave in both scales stays") {
  CHECK(told_of("200 °C (400 °F)") == "200 °C (400 °F)");
  CHECK(told_of("400 °F / 200 °C") == "400 °F (200 °C)");
  CHECK(told_of("71 °C/160 °F") == "71 °C (160 °F)");
}

TEST_CASE("temperature: what cannot be read, in full") {
  CHECK(refusal("200") ==
        "temperature.scale @ it is not said in which scale \"200\" is: 200 °C (392 °F) or 200 °F "
        "(≈ 93 °C) (write the scale: 200 °C or 200 °F)");
  CHECK(refusal("200 degrees").starts_with("temperature.scale @ "));
  const std::string hint =
      " (write degrees and scale: 200 °C, 390 °F, 180 to 200 °C; gas marks are not read)";
  for (const char* text : {"gas mark 6", "hot", "", "200 °C fan", "2000000 °C", "180 °C to 390 °F",
                           "200 K", "200 °C (180 °C)", "- 5 °C", "1/2 °C", "200 °C (400 °F"}) {
    CAPTURE(text);
    CHECK(refusal(text) ==
          "temperature.unreadable @ \"" + std::string(text) + "\" is no temperature" + hint);
  }
  CHECK(refusal("-300 °C") ==
        "temperature.below_zero @ -300 °C is below absolute zero, -273.15 °C");
  CHECK(refusal("-273.15 °C") == "no error was thrown");
  CHECK(refusal("71 °C (180 °F)") ==
        "temperature.pair @ 180 °F (≈ 82 °C) is written beside 71 °C (≈ 160 °F), and the two "
        "differ by more than 10 °F (write one of the two; the other is added)");
}

}  // namespace
}  // namespace scalepan
