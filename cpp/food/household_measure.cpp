#include "food/household_measure.hpp"

#include <array>

#include "exact/number_text.hpp"
#include "exact/text.hpp"

namespace scalepan {

namespace {

struct Head {
  std::string_view word;
  std::string_view unit;  // empty for a weight
};

// No pint: the releases print it for berries too, which are sold by the dry pint.
constexpr std::array heads{
    Head{"cup", "cup_us"},
    Head{"tbsp", "tbsp_us"},
    Head{"tablespoon", "tbsp_us"},
    Head{"tsp", "tsp_us"},
    Head{"teaspoon", "tsp_us"},
    Head{"fl oz", "fl_oz_us"},
    Head{"quart", "qt_us"},
    Head{"liter", "L"},
    Head{"ml", "mL"},
    Head{"oz", ""},
    Head{"lb", ""},
    Head{"g", ""},
};

bool begins_with_word(std::string_view text, std::string_view word) {
  return text.starts_with(word) && (text.size() == word.size() || !is_letter(text[word.size()]));
}

/// What follows the head: without the comma between, and without brackets around all of it.
std::string_view label_behind(std::string_view text) {
  while (!text.empty() && (is_space(text.front()) || text.front() == ',')) text.remove_prefix(1);
  const bool bracket = text.size() > 2 && text.front() == '(' && text.find(')') == text.size() - 1;
  return trimmed(bracket ? text.substr(1, text.size() - 2) : text);
}

const Unit& unit_named(const Head& head) {
  static const auto units = [] {
    std::array<Unit, heads.size()> all;
    for (std::size_t i = 0; i < heads.size(); ++i) {
      if (!heads[i].unit.empty()) all[i] = Unit::named(heads[i].unit);
    }
    return all;
  }();
  return units[static_cast<std::size_t>(&head - heads.data())];
}

}  // namespace

std::string HouseholdMeasure::told() const {
  const std::string count = amount == 1 ? "" : exact_text(amount) + " ";
  return count + text + " " + exact_text(grams) + " g";
}

void read_label(HouseholdMeasure& measure) {
  const std::string text = lower(measure.text);
  measure.label = text;
  // `pint as purchased, yields` weighs another amount than the one it names.
  if (text.find("yield") != std::string::npos) return;
  for (const Head& head : heads) {
    if (!begins_with_word(text, head.word)) continue;
    measure.is_weight = head.unit.empty();
    if (!measure.is_weight) measure.volume = unit_named(head);
    measure.label = label_behind(std::string_view(text).substr(head.word.size()));
    return;
  }
}

std::string_view without_bracket(std::string_view label) {
  const std::size_t open = label.find('(');
  if (open == 0 || open == std::string_view::npos || label.back() != ')') return label;
  return trimmed(label.substr(0, open));
}

}  // namespace scalepan
