#include "recipe/line_parts.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/unit_text.hpp"
#include "recipe/kitchen_words.hpp"

namespace scalepan {

namespace {

constexpr auto npos = std::string_view::npos;

std::size_t offset_in(std::string_view whole, std::string_view part) {
  return static_cast<std::size_t>(part.data() - whole.data());
}

/// The first comma outside brackets that stands between no two digits.
std::size_t find_comma(std::string_view text) {
  int open = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '(') ++open;
    if (text[i] == ')') --open;
    const bool number =
        i + 1 < text.size() && is_digit(text[i + 1]) && i > 0 && is_digit(text[i - 1]);
    if (text[i] == ',' && open <= 0 && i > 0 && !number) return i;
  }
  return npos;
}

/// Takes a bracket off the end of the part.
std::string_view take_note(std::string_view text, std::string_view& part) {
  const std::size_t open = part.find('(');
  if (open == npos) return {};
  const std::size_t close = part.rfind(')');
  const std::size_t offset = offset_in(text, part) + open;
  if (close == npos || close < open) fail_at(offset, "line.bracket", "a bracket is not closed");
  if (!trimmed(part.substr(close + 1)).empty()) {
    fail_at(offset, "line.bracket", "text follows a bracket",
            "a bracket holds a note and stands last: 500 g leeks, trimmed (washed)");
  }
  const std::string_view note = trimmed(part.substr(open + 1, close - open - 1));
  part = part.substr(0, open);
  return note;
}

/// A weight or volume that starts at `at`, behind a number.
bool is_measure_at(std::string_view part, std::size_t at, Measures measures) {
  try {
    std::size_t position = at;
    if (!read_amount_number(part, position)) return false;
    if (position < part.size() && part[position] == '-') ++position;
    const auto unit = read_kitchen_unit(part, position, measures);
    return unit &&
           (unit->dimension() == dimension::mass() || unit->dimension() == dimension::volume());
  } catch (const Error&) {
    return true;  // a number or a unit that cannot be read is no note either
  }
}

std::size_t find_measure(std::string_view part, Measures measures) {
  for (std::size_t i = 0; i < part.size(); ++i) {
    const bool starts =
        is_digit(part[i]) && (i == 0 || (!is_digit(part[i - 1]) && part[i - 1] != '.'));
    if (starts && is_measure_at(part, i, measures)) return i;
  }
  return npos;
}

bool is_rule(std::string_view part) {
  const std::string words = lower(trimmed(part));
  return words == "fixed" || words == "in proportion" || words.find(" per portion") != npos ||
         words.ends_with(" portions") || words.starts_with("per portion");
}

}  // namespace

LineParts cut_line(std::string_view text) {
  LineParts parts;
  const std::size_t bar = text.find('|');
  if (bar != npos) parts.rule = trimmed(text.substr(bar + 1));
  parts.main = text.substr(0, bar);
  const std::size_t comma = find_comma(parts.main);
  if (comma != npos) {
    parts.preparation = trimmed(parts.main.substr(comma + 1));
    parts.main = parts.main.substr(0, comma);
    parts.note = take_note(text, parts.preparation);
    parts.preparation = trimmed(parts.preparation);
  }
  const std::string_view note = take_note(text, parts.main);
  if (parts.note.empty()) parts.note = note;
  return parts;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  std::string word;
  for (const char c : lower(text) + " ") {
    if (is_letter(c) || c == '-' || is_beyond_ascii(c)) {
      word += c;
    } else if (!word.empty()) {
      words.push_back(std::exchange(word, {}));
    }
  }
  return words;
}

std::vector<std::string> preparations_in(std::string_view text) {
  constexpr std::array<std::string_view, 4> deniers{"not", "be", "without", "un"};
  std::vector<std::string> found;
  std::string before;
  for (std::string& word : words_of(text)) {
    const bool denied = std::ranges::find(deniers, before) != deniers.end();
    before = word;
    if (!denied && stage_of_preparation(word)) found.push_back(std::move(word));
  }
  return found;
}

void expect_nothing_hidden(std::string_view text, std::string_view part, Measures measures) {
  if (part.empty()) return;
  const std::size_t start = offset_in(text, part);
  const std::size_t measure = find_measure(part, measures);
  const std::size_t sign = part.find_first_of("+/") == 0 ? 0 : npos;
  if (measure != npos || sign != npos) {
    fail_at(start + std::min(measure, sign), "line.second_amount",
            "a second amount stands in \"" + excerpt(part) + "\", and nothing would scale it",
            "write one amount a line; tins as 2 x 400 g tins tomatoes");
  }
  if (is_rule(part)) {
    fail_at(start, "line.rule", "\"" + excerpt(part) + "\" reads like a rule without its bar",
            "write the rule last, behind a bar: 4 eggs | one per portion");
  }
}

}  // namespace scalepan
