#include "recipe/line_remarks.hpp"

#include <algorithm>
#include <array>

#include "exact/number_text.hpp"
#include "measure/unit_table.hpp"
#include "recipe/cursor.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_parts.hpp"
#include "recipe/line_segments.hpp"
#include "recipe/written_line.hpp"

namespace scalepan {

namespace {

template <std::size_t N>
bool starts_with_any(std::string_view text, const std::array<std::string_view, N>& known) {
  return std::ranges::any_of(
      known, [&](std::string_view words) { return Cursor(text).take_words(words); });
}

constexpr std::array<std::string_view, 12> optional_marks{
    "optional",     "if desired",          "if liked",      "when liked",
    "if wanted",    "if available",        "if you like",   "if wished",
    "when desired", "if desired or liked", "not essential", "at will"};

constexpr std::array<std::string_view, 18> wishes{
    "to taste",    "as needed",     "as desired",         "as required",
    "to season",   "to your taste", "according to taste", "as wanted",
    "as liked",    "as necessary",  "to suit taste",      "q.s.",
    "to serve",    "to finish",     "to garnish",         "for garnish",
    "for serving", "to decorate"};

constexpr std::array<std::string_view, 6> more_marks{"more if liked",  "more if desired",
                                                     "or more",        "more if needed",
                                                     "more if wanted", "more to taste"};

constexpr std::array<std::string_view, 10> note_openers{
    "e.g", "such as", "preferably", "for", "about", "from", "your", "any", "either", "plus"};

}  // namespace

bool is_optional_mark(std::string_view text) { return is_one_of(trimmed(text), optional_marks); }

bool is_wish(std::string_view text) { return is_one_of(trimmed(text), wishes); }

bool is_more_mark(std::string_view text) { return starts_with_any(trimmed(text), more_marks); }

bool is_less_mark(std::string_view text) {
  return Cursor(text).take_words("or less") || Cursor(text).take_words("less if liked");
}

bool names_parts(std::string_view text) {
  bool named = false;
  for (const std::string_view word : words_of(text)) {
    const bool part = !part_of_food(word).empty();
    named = named || part;
    const bool filler = same_word(word, "and") || same_word(word, "the") || same_word(word, "of") ||
                        same_word(word, "only") || (named && is_digit(word.front())) ||
                        (!named && is_participle(word)) || is_adverb(word) || word == "&";
    if (!part && !filler) return false;
  }
  return named;
}

std::optional<Stage> stage_mark(std::string_view text) {
  if (text == "EP" || text == "E.P." || text == "E.P") return Stage::edible;
  if (text == "AP" || text == "A.P." || text == "A.P") return Stage::as_purchased;
  return std::nullopt;
}

std::optional<Stage> measured_stage(std::string_view text) {
  constexpr std::string_view weight = " weight";
  const std::string plain = lower(text);
  if (!plain.ends_with(weight)) return std::nullopt;
  const auto stage = stage_of_preparation(plain.substr(0, plain.size() - weight.size()));
  return stage && *stage != Stage::none ? stage : std::nullopt;
}

bool is_reference(std::string_view text) {
  if (text.starts_with('#') || text.starts_with("p.") || same_word(text, "USDA")) return true;
  Cursor cursor(text);
  const bool named = cursor.take_word("no") || cursor.take_word("page") ||
                     cursor.take_word("recipe") || cursor.take_word("see");
  cursor.take_sign(".");
  cursor.skip_spaces();
  return named && !cursor.done() && is_digit(cursor.rest().front());
}

bool is_note(std::string_view text) {
  return text.starts_with("e.g") || starts_with_any(text, note_openers) ||
         text.find_first_of("\"\u201C") != std::string_view::npos;
}

std::string_view added_food(std::string_view text) {
  Cursor cursor(text);
  if (!cursor.take_word("plus") && !cursor.take_word("with") && !cursor.take_word("and")) return {};
  const std::string_view rest = trimmed(cursor.rest());
  return number_or_nothing(rest) ? rest : std::string_view();
}

bool contradicts(const WrittenLine& line, const SecondMeasure& second) {
  if (line.unit_kind == UnitKind::none && second.unit.empty() && line.high) {
    return !(*line.high == second.high);
  }
  if (line.unit_kind != UnitKind::measure || !line.high) return false;
  bool alike = false;
  for (const NamedUnit* first_unit : units_called(line.unit)) {
    if (line.measure && !(Unit({{first_unit, 1}}) == *line.measure)) continue;
    for (const NamedUnit* second_unit : units_called(second.unit)) {
      if (!(first_unit->dimension == second_unit->dimension)) continue;
      alike = true;
      const Rational a = *line.high * first_unit->ratio;
      const Rational b = second.high * second_unit->ratio;
      if (!lie_apart(a, b)) return false;
    }
  }
  return alike;
}

std::string amount_text(const WrittenLine& line) {
  std::string text;
  if (line.low) text = exact_text(*line.low);
  if (line.high && !(line.high == line.low)) {
    text += (text.empty() ? "up to " : " to ") + exact_text(*line.high);
  }
  return text + " " + line.unit;
}

}  // namespace scalepan
