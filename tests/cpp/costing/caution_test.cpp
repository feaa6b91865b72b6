// Cautions: which words a recipe gets, from which source.
#include "costing/caution.hpp"

#include "costing/pot.hpp"

namespace scalepan {
namespace {

std::vector<Caution> cautions(const std::vector<std::string>& lines, const Rational& portions = 4,
                              std::vector<Rational> tested = {},
                              const Catalog& catalog = pantry()) {
  RecipeInput input = recipe_input(lines);
  input.tested_at = std::move(tested);
  return cautions_for(Recipe(input, std::make_shared<const Catalog>(catalog)).scaled(portions));
}

bool tells_of_cooling(const std::vector<Caution>& all) {
  for (const Caution& caution : all) {
    if (caution.text.starts_with("This batch is larger than any size stated as tested."))
      return true;
  }
  return false;
}

// US FoodSafety.gov, safe minimum internal temperatures: egg dishes 160 F, which is 71.1 C.
TEST_CASE("cautions: a key of a food brings its figure, source and lines") {
  const std::vector<Caution> all = cautions({"500 g leeks", "4 eggs"});
  REQUIRE(all.size() == 2);
  CHECK(all[0].text == "Cook egg dishes through: 71 °C (160 °F).");
  CHECK(all[0].source == "US FoodSafety.gov, safe minimum internal temperatures");
  CHECK(all[0].lines == std::vector<std::string>{"eggs"});
}

// The same source: poultry 165 F, minced meat 160 F, whole cuts 145 F and 3 minutes, fish 145 F.
TEST_CASE("cautions: the published minimum temperatures, in both scales") {
  const auto text = [](const char* key) {
    Catalog catalog = pantry();
    Food meat = food("test_food", "test food", "test foods");
    meat.cautions = {key};
    add_with_names(catalog, meat);
    return cautions({"1 kg test food"}, 4, {}, catalog).front().text;
  };
  const auto celsius = [](int fahrenheit) {
    const Rational exact = Rational(fahrenheit - 32) * Rational(5, 9);
    return fraction_text(floor(exact + Rational(1, 2))) + " °C (" + std::to_string(fahrenheit) +
           " °F)";
  };
  CHECK(text("poultry").find(celsius(165)) != std::string::npos);
  CHECK(text("minced_meat").find(celsius(160)) != std::string::npos);
  CHECK(text("whole_meat").find(celsius(145) + " and rest them 3 minutes") != std::string::npos);
  CHECK(text("fish").find(celsius(145)) != std::string::npos);
  CHECK(text("dried_kidney_bean").find("boil them hard") != std::string::npos);
  CHECK(text("shellfish").find("discard shells that stay shut") != std::string::npos);
  CHECK(text("cooked_rice").find("keep it cold") != std::string::npos);
  CHECK(text("sprouts").starts_with("Cook sprouts through"));
  CHECK(text("no_such_key").starts_with("Allergens"));
}

TEST_CASE("cautions: cooling only for a batch beyond the largest tested size") {
  const std::vector<std::string> lines{"500 g leeks"};
  CHECK_FALSE(tells_of_cooling(cautions(lines, 4)));
  CHECK_FALSE(tells_of_cooling(cautions(lines, 2)));
  CHECK(tells_of_cooling(cautions(lines, 5)));
  CHECK_FALSE(tells_of_cooling(cautions(lines, 12, {12, 4})));
  CHECK(tells_of_cooling(cautions(lines, 13, {12, 4})));
  CHECK(tells_of_cooling(cautions(lines, 4, {2})));
}

// FDA Food Code 3-501.14: 135 to 70 F within 2 hours, to 41 F within 4 more.
TEST_CASE("cautions: cooling in the figures of the Food Code") {
  const Caution cooling = cautions({"500 g leeks"}, 40).front();
  CHECK(
      cooling.text.find("from 57 to 21 °C (135 to 70 °F) within 2 hours and to 5 °C (41 °F) within "
                        "4 more") != std::string::npos);
  CHECK(cooling.source.starts_with("FDA Food Code 3-501.14"));
  CHECK(cooling.lines.empty());
}

TEST_CASE("cautions: allergens by line on both lists") {
  Catalog catalog = pantry();
  Food paste = food("sesame_paste", "sesame paste", "sesame paste");
  paste.allergens_eu = {"sesame", "mustard"};
  paste.allergens_us = {"sesame"};
  add_with_names(catalog, paste);
  const Caution last =
      cautions({"4 eggs", "50 g sesame paste", "500 g leeks"}, 4, {}, catalog).back();
  CHECK(last.text ==
        "Allergens on the EU list: eggs (eggs); mustard (sesame_paste); sesame (sesame_paste). On "
        "the US list: eggs (eggs); sesame (sesame_paste). Check every pack.");
  CHECK(last.source == "Regulation (EU) 1169/2011, Annex II; US FDA, nine major allergens");
  CHECK(cautions({"500 g leeks"}).back().text ==
        "Allergens on the EU list: none known. On the US list: none known. Check every pack.");
}

TEST_CASE("cautions: lines that the catalogue does not know are named") {
  const Caution last = cautions({"4 eggs", "200 g samphire"}).back();
  CHECK(last.text == "Allergens of these are not known: check the pack.");
  CHECK(last.source == "foods that the catalogue does not have");
  CHECK(last.lines == std::vector<std::string>{"samphire"});
}

TEST_CASE("cautions: the footing never says that a dish is safe") {
  CHECK(caution_footing() ==
        "Usual advice only. Follow your local food law and qualified advice; no figure here shows "
        "that a dish is safe.");
}

}  // namespace
}  // namespace scalepan
