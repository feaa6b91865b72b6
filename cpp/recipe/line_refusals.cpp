#include "recipe/line_refusals.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "exact/error.hpp"
#include "recipe/cursor.hpp"
#include "recipe/kitchen_words.hpp"

namespace scalepan {

namespace {

struct Refused {
  std::string_view words;
  std::string_view code;
  std::string_view reason;
};

constexpr auto refused = std::to_array<Refused>({
    {"size of", "line.no_measure", "compares sizes, which is no measure"},
    {"as big as", "line.no_measure", "compares sizes, which is no measure"},
    {"as large as", "line.no_measure", "compares sizes, which is no measure"},
    {"the weight of", "line.relative", "gives an amount by another one"},
    {"their weight", "line.relative", "gives an amount by another one"},
    {"its weight", "line.relative", "gives an amount by another one"},
    {"weight in", "line.relative", "gives an amount by another one"},
    {"same quantity", "line.relative", "gives an amount by another one"},
    {"same amount", "line.relative", "gives an amount by another one"},
    {"same weight", "line.relative", "gives an amount by another one"},
    {"to every", "line.ratio", "gives a ratio, not an amount"},
    {"to each", "line.ratio", "gives a ratio, not an amount"},
    {"for every", "line.ratio", "gives a ratio, not an amount"},
    {"each person", "line.per_person", "gives an amount for each person"},
    {"per portion", "line.rule", "reads like a rule without its bar"},
    {"per person", "line.per_person", "gives an amount for each person"},
    {"per head", "line.per_person", "gives an amount for each person"},
    {"of each", "line.refers", "refers to other lines"},
    {"the following", "line.refers", "refers to other lines"},
});

/// Whether the words stand at that place of the text, as whole words.
bool stand_at(std::string_view text, std::size_t at, std::string_view words) {
  return lower(text[at]) == words.front() && same_word(text.substr(at, words.size()), words) &&
         letter_length(text, at + words.size()) == 0;
}

bool is_capitals(std::string_view text) {
  std::size_t letters = 0;
  for (const char c : text) {
    if ((c >= 'a' && c <= 'z') || is_digit(c)) return false;
    if (is_letter(c)) ++letters;
  }
  return letters > 2;
}

constexpr std::array<std::string_view, 12> made_things{
    "filling", "topping",  "dressing", "frosting", "icing",  "sauce",
    "glaze",   "marinade", "crust",    "pastry",   "batter", "stuffing"};

}  // namespace

void expect_measurable(std::string_view text) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (at > 0 && text[at - 1] != ' ' && text[at - 1] != '(' && text[at - 1] != '-') continue;
    for (const Refused& row : refused) {
      if (!stand_at(text, at, row.words)) continue;
      fail_at(at, row.code, "\"" + excerpt(text.substr(at)) + "\" " + std::string(row.reason),
              row.code == "line.rule"
                  ? "write the rule last, behind a bar: 4 eggs | one per portion"
                  : "write a weight, a volume or a count");
    }
  }
}

bool is_heading(std::string_view text) {
  text = trimmed(text);
  if (text.ends_with(':') || is_capitals(text)) return true;
  Cursor cursor(text);
  if (cursor.take_words("for the") && cursor.take_word().size() > 1) return true;
  Cursor made(text);
  const std::string first = lower(made.take_word());
  return std::ranges::find(made_things, first) != made_things.end() && made.take_word("for");
}

bool is_separator(std::string_view text) {
  text = trimmed(text);
  if (same_word(text, "or") || same_word(text, "and")) return true;
  return !text.empty() && text.find_first_not_of("-*=_. ") == std::string_view::npos;
}

bool is_quality(std::string_view food) {
  constexpr std::array<std::string_view, 8> qualities{"love",    "patience", "faith", "hope",
                                                      "charity", "humour",   "humor", "courage"};
  const std::size_t space = food.rfind(' ');
  const std::string last = lower(space == std::string_view::npos ? food : food.substr(space + 1));
  return (last.ends_with("ness") && last != "guinness") ||
         std::ranges::find(qualities, last) != qualities.end();
}

}  // namespace scalepan
