#include "costing/caution.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

namespace scalepan {

namespace {

struct CautionRow {
  std::string_view key;
  std::string_view text;
  std::string_view source;
};

constexpr std::string_view minimum_temperatures =
    "US FoodSafety.gov, safe minimum internal temperatures";
constexpr std::string_view no_source = "common practice, no published source";

constexpr std::array rows = std::to_array<CautionRow>({
    {"poultry", "Cook poultry through: 74 °C (165 °F) in the thickest part.", minimum_temperatures},
    {"minced_meat", "Cook minced meat through: 71 °C (160 °F) in the middle.",
     minimum_temperatures},
    {"whole_meat", "Cook whole cuts to 63 °C (145 °F) and rest them 3 minutes.",
     minimum_temperatures},
    {"egg", "Cook egg dishes through: 71 °C (160 °F).", minimum_temperatures},
    {"fish", "Cook fish to 63 °C (145 °F).", minimum_temperatures},
    {"shellfish", "Cook shellfish through, and discard shells that stay shut.", no_source},
    {"dried_kidney_bean",
     "Soak dried beans, discard the water, and boil them hard before any gentle cooking: "
     "undercooked they make people ill.",
     no_source},
    {"cooked_rice", "Cool cooked rice at once and keep it cold.", no_source},
    {"sprouts", "Cook sprouts through for anyone at risk.", no_source},
});

constexpr std::string_view cooling_text =
    "This batch is larger than any size stated as tested. Large pots heat and cool slowly: cool "
    "from 57 to "
    "21 °C (135 to 70 °F) within 2 hours and to 5 °C (41 °F) within 4 more, in shallow pans; "
    "advice on their depth differs, from 5 to 10 cm (2 to 4 in). Reheat to 74 °C (165 °F).";
constexpr std::string_view cooling_source =
    "FDA Food Code 3-501.14 (cooling); Code of Maryland 10.15.03.11 (reheating); depths from US "
    "state and county notices";

void add_undercooking(const Recipe& recipe, std::vector<Caution>& cautions) {
  for (const CautionRow& row : rows) {
    Caution caution{std::string(row.text), std::string(row.source), {}};
    for (const Line& line : recipe.food_lines()) {
      const Food* food = recipe.catalog().food(line.food_id);
      if (food != nullptr && std::ranges::find(food->cautions, row.key) != food->cautions.end()) {
        caution.lines.push_back(line.id);
      }
    }
    if (!caution.lines.empty()) cautions.push_back(std::move(caution));
  }
}

/// By how much of the written amounts is made, however large the portions.
bool larger_than_tested(const Recipe& recipe) {
  Rational tested = recipe.serves();
  if (!recipe.tested_at().empty()) tested = *std::ranges::max_element(recipe.tested_at());
  return recipe.serves() * recipe.size().factor > tested;
}

void add_cooling(const Recipe& recipe, std::vector<Caution>& cautions) {
  Caution caution{std::string(cooling_text), std::string(cooling_source), {}};
  if (!larger_than_tested(recipe)) {
    for (const MadeBase& made : recipe.made_bases()) {
      if (larger_than_tested(*made.recipe)) caution.lines.push_back(made.name);
    }
    if (caution.lines.empty()) return;
  }
  cautions.push_back(std::move(caution));
}

std::string allergens_in(const Recipe& recipe, std::vector<std::string> Food::* list) {
  std::map<std::string, std::string> lines_by_allergen;
  for (const Line& line : recipe.food_lines()) {
    const Food* food = recipe.catalog().food(line.food_id);
    if (food == nullptr) continue;
    for (const std::string& allergen : food->*list) {
      std::string& lines = lines_by_allergen[allergen];
      lines += (lines.empty() ? "" : ", ") + line.id;
    }
  }
  std::string text;
  for (const auto& [allergen, lines] : lines_by_allergen) {
    text += (text.empty() ? "" : "; ") + allergen + " (" + lines + ")";
  }
  return text.empty() ? "none known" : text;
}

std::vector<std::string> unknown_lines(const Recipe& recipe) {
  std::vector<std::string> lines;
  for (const Line& line : recipe.food_lines()) {
    if (line.food_id.empty()) lines.push_back(line.id);
  }
  return lines;
}

void add_allergens(const Recipe& recipe, std::vector<Caution>& cautions) {
  cautions.push_back({"Allergens on the EU list: " + allergens_in(recipe, &Food::allergens_eu) +
                          ". On the US list: " + allergens_in(recipe, &Food::allergens_us) +
                          ". Check every pack.",
                      "Regulation (EU) 1169/2011, Annex II; US FDA, nine major allergens",
                      {}});
  std::vector<std::string> unknown = unknown_lines(recipe);
  if (unknown.empty()) return;
  cautions.push_back({"Allergens of these are not known: check the pack.",
                      "foods that the catalogue does not have", std::move(unknown)});
}

}  // namespace

std::vector<Caution> safety_cautions(const Recipe& recipe) {
  std::vector<Caution> cautions;
  add_undercooking(recipe, cautions);
  add_cooling(recipe, cautions);
  return cautions;
}

std::vector<Caution> cautions_for(const Recipe& recipe) {
  std::vector<Caution> cautions = safety_cautions(recipe);
  add_allergens(recipe, cautions);
  return cautions;
}

std::string_view caution_footing() {
  return "Usual advice only. Follow your local food law and qualified advice; no figure here shows "
         "that a dish is safe.";
}

}  // namespace scalepan
