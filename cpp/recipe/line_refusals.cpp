#include "recipe/line_refusals.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "exact/error.hpp"
#include "measure/count_nouns.hpp"
#include "measure/unit_table.hpp"
#include "recipe/cursor.hpp"
#include "recipe/food_first.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_parts.hpp"
#include "recipe/line_remarks.hpp"
#include "recipe/line_segments.hpp"

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
    {"same quantity", "line.relative", "gives an amount by another one"},
    {"same amount", "line.relative", "gives an amount by another one"},
    {"same weight", "line.relative", "gives an amount by another one"},
    {"to every", "line.ratio", "gives a ratio, not an amount"},
    {"to each", "line.ratio", "gives a ratio, not an amount"},
    {"for every", "line.ratio", "gives a ratio, not an amount"},
    {"each person", "line.per_person", "gives an amount for each person"},
    {"per portion", "line.rule", "reads like a rule without its bar"},
    {"per lb", "line.ratio", "gives a ratio, not an amount"},
    {"per pound", "line.ratio", "gives a ratio, not an amount"},
    {"per kg", "line.ratio", "gives a ratio, not an amount"},
    {"per kilo", "line.ratio", "gives a ratio, not an amount"},
    {"per cup", "line.ratio", "gives a ratio, not an amount"},
    {"per pint", "line.ratio", "gives a ratio, not an amount"},
    {"per quart", "line.ratio", "gives a ratio, not an amount"},
    {"per gallon", "line.ratio", "gives a ratio, not an amount"},
    {"per litre", "line.ratio", "gives a ratio, not an amount"},
    {"per liter", "line.ratio", "gives a ratio, not an amount"},
    {"to the pound", "line.ratio", "gives a ratio, not an amount"},
    {"to the pint", "line.ratio", "gives a ratio, not an amount"},
    {"to the quart", "line.ratio", "gives a ratio, not an amount"},
    {"as much", "line.relative", "gives an amount by another one"},
    {"twice", "line.relative", "gives an amount by another one"},
    {"double the", "line.relative", "gives an amount by another one"},
    {"per person", "line.per_person", "gives an amount for each person"},
    {"per head", "line.per_person", "gives an amount for each person"},
    {"of each", "line.refers", "refers to other lines"},
    {"the following", "line.refers", "refers to other lines"},
    {"half of the", "line.refers", "refers to other lines"},
    {"half the", "line.refers", "refers to other lines"},
    {"rest of the", "line.refers", "refers to other lines"},
    {"remaining", "line.refers", "refers to other lines"},
    {"remainder of", "line.refers", "refers to other lines"},
    {"baker's dozen", "line.no_measure", "is thirteen to some and twelve to others"},
});

/// Whether the words stand at that place of the text, as whole words.
bool stand_at(std::string_view text, std::size_t at, std::string_view words) {
  return lower(text[at]) == words.front() && same_word(text.substr(at, words.size()), words) &&
         letter_length(text, at + words.size()) == 0 &&
         !text.substr(at + words.size()).starts_with('-');
}

bool is_capitals(std::string_view text) {
  std::size_t letters = 0;
  for (const char c : text) {
    if ((c >= 'a' && c <= 'z') || is_digit(c)) return false;
    if (is_letter(c)) ++letters;
  }
  return letters > 2;
}

constexpr auto npos = std::string_view::npos;

/// First words of titles, yields and settings.
constexpr auto titles = std::to_array<std::string_view>(
    {"serves",       "serving",      "servings",      "yield",       "yields",   "makes",
     "portion",      "portions",     "page",          "chapter",     "calories", "oven",
     "time",         "prep",         "total",         "weight",      "sodium",   "protein",
     "energy",       "carbohydrate", "carbohydrates", "ingredients", "method",   "directions",
     "instructions", "notes",        "temperature",   "average",     "cost",     "price",
     "per"});

/// Words that no food begins with.
constexpr std::array<std::string_view, 24> no_beginnings{
    "to",   "or",  "and", "less",    "minus", "plus", "x",    "each",    "ish", "per", "by",   "of",
    "than", "for", "no",  "without", "zero",  "not",  "with", "percent", "in",  "at",  "from", "a"};

bool holds_vulgar(std::string_view word) {
  for (std::size_t i = 0; i < word.size(); ++i) {
    std::size_t position = i;
    if (is_beyond_ascii(word[i]) && starts_with_number(word, position)) return true;
  }
  return false;
}

/// A word before a number of kind: a name of its own, or `type`.
bool names_a_kind(std::string_view word) {
  constexpr std::array<std::string_view, 4> kinds{"type", "grade", "formula", "no"};
  return is_one_of(word, kinds) || (word.front() >= 'A' && word.front() <= 'Z');
}

/// Numbers that belong to a name: `1%`, `100 %`, `80/20`, `7-grain`, `V8`, `type 55`, `Heinz 57`.
bool is_number_of_name(const std::vector<std::string_view>& words, std::size_t i) {
  const std::string_view word = words[i];
  const std::string_view next = i + 1 < words.size() ? words[i + 1] : std::string_view();
  if (word.find('%') != npos || next.starts_with('%') || same_word(next, "percent") ||
      word == "00") {
    return true;
  }
  const std::size_t letter = word.find_first_not_of("0123456789");
  if (letter == npos) return i > 0 && !next.empty() && names_a_kind(words[i - 1]);
  if (!is_digit(word.front())) return letter_length(word, 0) > 0;
  Cursor cursor(word, word[letter] == '-' ? letter + 1 : letter);
  if (letter_length(word, cursor.at()) == 0) return false;
  const auto unit = read_unit_word(cursor);
  return !unit || (unit->kind == UnitKind::noun && !next.empty());
}

bool holds_stray_number(const std::vector<std::string_view>& words) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool number = has_digit(words[i]) || holds_vulgar(words[i]);
    if (number && !is_number_of_name(words, i)) return true;
  }
  return false;
}

/// `portions`, `cup`: the word for an amount, with no food behind it.
bool is_bare_unit(std::string_view food) {
  Cursor cursor(food);
  const auto word = read_unit_word(cursor);
  // A cake and a loaf are eaten by themselves.
  constexpr std::array<std::string_view, 7> foods{"cake", "loaf",  "roll",  "bar",
                                                  "rib",  "round", "fillet"};
  return word && trimmed(cursor.rest()).empty() && !is_one_of(word->name, foods);
}

/// `kindness`, as joke recipes have it; `people`, `book`: no food either.
bool is_quality(std::string_view word) {
  constexpr auto no_foods = std::to_array<std::string_view>(
      {"love",    "patience", "faith", "hope",  "charity", "humour",   "humor",  "courage",
       "joy",     "laughter", "book",  "books", "people",  "persons",  "guests", "degrees",
       "minutes", "hours",    "days",  "week",  "weeks",   "months",   "years",  "miles",
       "p.m",     "a.m",      "pages", "kcal",  "kj",      "calories", "pan",    "pans"});
  const std::string plain = lower(word);
  return (plain.ends_with("ness") && plain != "guinness") || is_one_of(plain, no_foods);
}

constexpr std::array<std::string_view, 12> made_things{
    "filling", "topping",  "dressing", "frosting", "icing",  "sauce",
    "glaze",   "marinade", "crust",    "pastry",   "batter", "stuffing"};

/// Capitals that are a line nevertheless: `ONE CUP FLOUR`, `SALT TO TASTE`, `BUTTER, FOR GREASING`.
bool tells_amount(std::string_view text) {
  Cursor cursor(text);
  if (number_or_nothing(text) || read_unit_word(cursor)) return true;
  if (text.find(',') != npos || holds_vulgar(text)) return true;
  const std::vector<std::string_view> words = words_of(text);
  return words.size() > 2 && is_wish(text_of(words, words.size() - 2, words.size()));
}

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
  if (text.ends_with(':')) return !number_or_nothing(text);
  if (is_capitals(text) && !tells_amount(text)) return true;
  Cursor cursor(text);
  if (cursor.take_words("for the") && cursor.take_word().size() > 1 && text.find(':') == npos) {
    return true;
  }
  Cursor made(text);
  const std::string first = lower(made.take_word());
  return std::ranges::find(made_things, first) != made_things.end() && made.take_word("for");
}

bool is_separator(std::string_view text) {
  text = trimmed(text);
  if (same_word(text, "or") || same_word(text, "and")) return true;
  return !text.empty() && text.find_first_not_of("-*=_. ") == std::string_view::npos;
}

void expect_ingredient(std::string_view body, const LineSource& source) {
  for (const std::string_view sign : {"$", "\u00A3", "\u20AC", "\u00A2"}) {
    const std::size_t at = body.find(sign);
    if (at == std::string_view::npos) continue;
    fail_at(source.offset(body) + at, "line.price",
            "\"" + excerpt(body) + "\" holds a price, not an amount",
            "prices stand in the price book");
  }
  const bool address = body.find("www.") != std::string_view::npos ||
                       body.find("://") != std::string_view::npos ||
                       body.find("\u00A9") != std::string_view::npos;
  const std::string_view first = first_word(body);
  const bool title = is_one_of(first, titles) && !source.knows(body) &&
                     !source.knows(text_of(words_of(body), 0, 2)) && body.find("  ") == npos;
  if (is_method_verb(first) && !source.knows(body) &&
      !source.knows(text_of(words_of(body), 0, 2))) {
    fail_at(source.offset(body), "line.no_food",
            "\"" + excerpt(body) + "\" reads like a step of the method",
            "write an amount and a food: 500 g leeks");
  }
  if (!address && !title) return;
  fail_at(source.offset(body), "line.no_food", "\"" + excerpt(body) + "\" is no ingredient");
}

void expect_food_name(std::string_view food, const LineSource& source, std::size_t offset) {
  if (source.knows(food)) return;
  const std::vector<std::string_view> words = words_of(food);
  const std::string_view first = words.empty() ? food : words.front();
  const bool length = first.starts_with("inch-") || first.starts_with("cm-");
  const bool letter = !length && (letter_length(food, 0) > 0 || is_digit(food.front()));
  const bool sound =
      letter && !is_one_of(first, no_beginnings) && !holds_stray_number(words) && food.size() > 1;
  const bool clipped = food.size() <= 3 && food.find_first_of("aeiouyAEIOUY") == npos &&
                       std::ranges::none_of(food, is_beyond_ascii);
  if (food.find('+') != npos) {
    fail_at(offset, "line.sum", "\"" + excerpt(food) + "\" adds another food",
            "write one line a food");
  }
  if (!sound || clipped || is_bare_unit(food)) {
    fail_at(offset, "line.no_food", "\"" + excerpt(food) + "\" cannot be read as a food");
  }
  if (is_quality(words.back())) {
    fail_at(offset, "line.no_food", "\"" + excerpt(food) + "\" is no food");
  }
}

bool names_measure(std::string_view food, const LineSource& source) {
  if (source.knows(food)) return false;
  const std::vector<std::string_view> words = words_of(food);
  return std::ranges::any_of(words, [](std::string_view word) {
    Cursor cursor(word);
    const auto unit = word.size() > 1 ? read_unit_word(cursor) : std::nullopt;
    return unit && unit->kind == UnitKind::measure && unit->name != "lb";
  });
}

void expect_no_unit_in(std::string_view food, const LineSource& source, std::size_t offset) {
  if (names_measure(food, source)) {
    fail_at(offset, "line.no_food", "\"" + excerpt(food) + "\" holds a measure that was not read",
            "write number and measure side by side: 2 cups");
  }
  const std::string_view word = first_word(food);
  const std::string_view after = trimmed(food.substr(word.size()));
  constexpr std::size_t shortest = 4;
  if (after.empty() || source.knows(food) || source.knows(word)) return;
  if (part_noun(lower(food.substr(food.rfind(' ') + 1)))) return;
  if (begins_compound(word, first_word(after))) return;
  if (misspells_unit(word, shortest)) fail_unknown_unit(word, offset);
}

}  // namespace scalepan
