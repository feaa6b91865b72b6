// Temperatures inside a text: heats, differences of heats, cups, and what stays as written.
#include "measure/temperature_text.hpp"

#include "catch.hpp"
#include "exact/error.hpp"

namespace scalepan {
namespace {

using Texts = std::vector<std::string>;

std::string refusal(std::string_view text) {
  try {
    static_cast<void>(with_both_scales(text));
  } catch (const Error& error) {
    return error.code() + " @ " + error.what();
  }
  return "no error was thrown";
}

TEST_CASE("temperature text: behind a degree sign") {
  CHECK(with_both_scales("Bake to 71 °C in the middle, then hold above 63°C.") ==
        "Bake to 71 °C (≈ 160 °F) in the middle, then hold above 63 °C (≈ 145 °F).");
  CHECK(with_both_scales("Cool from 57 to 21 °C.") == "Cool from 57 to 21 °C (≈ 135 to 70 °F).");
  CHECK(with_both_scales("Bake to 71 °C (160 °F).") == "Bake to 71 °C (160 °F).");
  CHECK(with_both_scales("Bake to 71 °C (160 °F in the middle).") ==
        "Bake to 71 °C (160 °F in the middle).");
  CHECK(with_both_scales("Dry at 60 °C (in the oven).") == "Dry at 60 °C (140 °F) (in the oven).");
  CHECK(with_both_scales("Keep at -18 °C.") == "Keep at -18 °C (≈ 0 °F).");
  CHECK(with_both_scales("Keep at \u221218 °C.") == "Keep at -18 °C (≈ 0 °F).");
  for (const char* text : {"", "Add 2 C flour.", "Take 5-10 cm pieces.", "Turn by 90°.",
                           "In 1/2 h, serve 4.", "See step 3, C and F.", "°C", "\xC2", "5 °"}) {
    CAPTURE(text);
    CHECK(with_both_scales(text) == text);
  }
  CHECK(refusal("Bake to 71 °C (180 °F).").starts_with("temperature.pair @ "));
  CHECK(refusal("Chill to -500 °F.") ==
        "temperature.below_zero @ -500 °F is below absolute zero, -273.15 °C");
}

// A difference of 5 °C is one of 9 °F: the scales have their zeros apart, and 100 to 180 degrees
// between freezing and boiling.
TEST_CASE("temperature text: differences are told as differences") {
  CHECK(with_both_scales("Cool by 20 °C, then raise the heat by 10 °C.") ==
        "Cool by 20 °C (36 °F), then raise the heat by 10 °C (18 °F).");
  CHECK(with_both_scales("Keep within 5 °C of 65 °C.") ==
        "Keep within 5 °C (9 °F) of 65 °C (149 °F).");
  CHECK(with_both_scales("A drop of 5 °F is no harm.") == "A drop of 5 °F (≈ 2.8 °C) is no harm.");
  CHECK(with_both_scales("A rise of 9 °F.") == "A rise of 9 °F (5 °C).");
  CHECK(with_both_scales("Bake 10 to 20 °C hotter than bread.") ==
        "Bake 10 to 20 °C (18 to 36 °F) hotter than bread.");
  CHECK(with_both_scales("Hold at 65 °C, \u00B1 2 °C.") ==
        "Hold at 65 °C (149 °F), \u00B1 2 °C (3.6 °F).");
  CHECK(refusal("Lower it by 20 °C (68 °F).") ==
        "temperature.pair @ 68 °F is written beside a difference of 20 °C (36 °F), and the two "
        "differ by more than 10 °F (write one of the two; the other is added)");
  CHECK(with_both_scales("Lower it by 20 °C (36 °F).") == "Lower it by 20 °C (36 °F).");
}

TEST_CASE("temperature text: what may be a heat or a difference stays, and is listed") {
  for (const char* text : {"It thickens by 60 °C.", "Drop 20 °C.", "Freeze at minus 18 °C.",
                           "Bake at 180 °C lower in the oven.", "Stir at 60 °C more slowly.",
                           "Keep between 57 and 60 °C.", "Reduce the heat by 20C."}) {
    CAPTURE(text);
    CHECK(with_both_scales(text) == text);
    CHECK(untold_temperatures(text).size() == 1);
  }
  CHECK(untold_temperatures("Freeze at minus 18 °C.") == Texts{"18 °C"});
  CHECK(with_both_scales("Hold at 65 °C or more.") == "Hold at 65 °C (149 °F) or more.");
  CHECK(with_both_scales("Bake at 180 °C more or less.") ==
        "Bake at 180 °C (356 °F) more or less.");
}

TEST_CASE("temperature text: letters without a degree sign, where no cup can be meant") {
  CHECK(with_both_scales("Bake at 180C.") == "Bake at 180 °C (356 °F).");
  CHECK(with_both_scales("Roast at 425F for 20 min.") == "Roast at 425 °F (≈ 218 °C) for 20 min.");
  CHECK(with_both_scales("Hold at 63 C.") == "Hold at 63 °C (≈ 145 °F).");
  CHECK(with_both_scales("Oven: 180C/350F.") == "Oven: 180 °C (350 °F).");
  CHECK(with_both_scales("Heat to 63 Celsius.") == "Heat to 63 °C (≈ 145 °F).");
  for (const char* text : {"Add 2 C flour.", "Stir in 2 c flour.", "Scale up to 8 C flour."}) {
    CAPTURE(text);
    CHECK(with_both_scales(text) == text);
    CHECK(untold_temperatures(text).empty());
  }
  CHECK(with_both_scales("Scale up to 12 C flour.") == "Scale up to 12 C flour.");
  CHECK(untold_temperatures("Scale up to 12 C flour.") == Texts{"12 C"});
}

TEST_CASE("temperature text: what looks like one and has no scale, or another decimal mark") {
  for (const auto& [text, untold] : std::vector<std::pair<std::string, std::string>>{
           {"Bake at 350 degrees for 1 h.", "350 degrees"},
           {"Bake at gas mark 4.", "gas mark 4"},
           {"Gas 1/2, all night.", "Gas 1/2"},
           {"Chill to 1,5 °C.", "1,5 °C"},
           {"Bake at 200°.", "200°"},
           {"Turn the oven to 180°.", "180°"}}) {
    CAPTURE(text);
    CHECK(with_both_scales(text) == text);
    CHECK(untold_temperatures(text) == Texts{untold});
  }
  CHECK(with_both_scales("Chill to 1,5 °C.", DecimalMark::comma) == "Chill to 1.5 °C (≈ 35 °F).");
  for (const char* text : {"", "Turn by 90°.", "Bake at 180 °C (gas mark 4).", "Serve 4 at 6.",
                           "Mark the loaf.", "Bake at 71 °C (160 °F)."}) {
    CAPTURE(text);
    CHECK(untold_temperatures(text).empty());
  }
}

}  // namespace
}  // namespace scalepan
