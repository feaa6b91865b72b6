#include "recipe/second_amounts.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "exact/error.hpp"
#include "exact/text.hpp"
#include "food/convert.hpp"
#include "measure/told.hpp"
#include "recipe/container_phrase.hpp"
#include "recipe/cursor.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_parts.hpp"
#include "recipe/line_segments.hpp"

namespace scalepan {

namespace {

constexpr auto npos = std::string_view::npos;

/// A number of a weight or volume that starts here, in digits or words.
bool is_measure(std::string_view text) {
  try {
    Cursor cursor(text);
    const auto number = read_number_phrase(cursor, DecimalMark::point);
    if (!number || number->vague() || number->article) return false;
    take_hyphen(cursor);
    const auto unit = read_unit_word(cursor);
    return unit && unit->kind == UnitKind::measure;
  } catch (const Error&) {
    return true;  // a number that cannot be read is no remark either
  }
}

std::size_t find_measure(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool starts = text[i] != ' ' && (i == 0 || text[i - 1] == ' ' || text[i - 1] == '(');
    if (starts && is_measure(text.substr(i))) return i;
  }
  return npos;
}

bool is_rule(std::string_view text) {
  const std::string words = lower(trimmed(text));
  return words == "fixed" || words == "in proportion" || words.find(" per portion") != npos ||
         words.ends_with(" portions") || words.starts_with("per portion");
}

/// A remark of the line, and where it stands in the text.
struct Remark {
  std::string_view words;
  std::size_t at;
};

Remark remark_in(std::string_view text, std::string_view words) {
  return {words, text.find(words)};
}

[[noreturn]] void fail_second_amount(const Remark& remark) {
  fail_at(remark.at, "line.second_amount",
          "a second amount stands in \"" + excerpt(remark.words) + "\", and nothing would scale it",
          "write one amount a line");
}

void expect_no_amount(const Remark& remark) {
  if (find_measure(remark.words) != npos) fail_second_amount(remark);
}

/// `2 small onions`: another choice or food with a count of its own.
void expect_no_count(const Remark& remark) {
  const auto number = number_or_nothing(remark.words);
  if (number && !number->vague()) fail_second_amount(remark);
}

void expect_no_rule(const Remark& remark) {
  if (!is_rule(remark.words)) return;
  fail_at(remark.at, "line.rule",
          "\"" + excerpt(remark.words) + "\" reads like a rule without its bar",
          "write the rule last, behind a bar: 4 eggs | one per portion");
}

Form form_of(const Quantity& amount, const std::string& detail) {
  return {kind_of(amount.dimension().without_stages()), amount.stage(), detail};
}

}  // namespace

std::vector<std::string> preparations_in(std::string_view text) {
  constexpr std::array<std::string_view, 3> deniers{"not", "be", "without"};
  std::vector<std::string> found;
  std::string_view before;
  for (const std::string_view word : words_of(text)) {
    const bool denied = std::ranges::find(deniers, before) != deniers.end();
    before = word;
    std::string plain = lower(word);
    if (!denied && stage_of_preparation(plain)) found.push_back(std::move(plain));
  }
  return found;
}

void expect_nothing_beside(const WrittenLine& line, std::string_view text) {
  for (const auto* remarks : {&line.states, &line.notes, &line.alternatives, &line.beside}) {
    for (const std::string& words : *remarks) {
      expect_no_amount(remark_in(text, words));
      expect_no_rule(remark_in(text, words));
    }
  }
  if (has_digit(line.part)) fail_second_amount(remark_in(text, line.part));
  for (const auto* foods : {&line.alternatives, &line.beside}) {
    for (const std::string& words : *foods) expect_no_count(remark_in(text, words));
  }
}

std::string doubt_of(const Line& line, const SecondMeasure& second, const Catalog& catalog) {
  const Food* food = catalog.food(line.food_id);
  if (second.each) return {};
  if (food == nullptr || !second.measure) {
    return "its second measure, " + second.text + ", is not checked";
  }
  const Unit unit = second.measure->at(line.written.stage());
  const Quantity other(second.high, unit);
  if (other.dimension() == line.written.dimension()) return {};
  const Form from = form_of(line.written, line.detail());
  const Form to = form_of(other, line.state);
  const auto how = find_conversion(catalog, *food, from, to, line.preparations);
  if (!how) return {};
  const Rational first = line.written.coherent() * how->factor;
  const Rational ratio = std::max(first / other.coherent(), other.coherent() / first);
  if (ratio > Rational(2)) {
    fail("line.second_measure",
         "two measures of one amount contradict: " + tell(line.written).text + " and " +
             second.text + ", where by the facts of " + food->name + " the first is " +
             tell(Quantity::of_coherent(first, unit)).text,
         "write the one that is right, or add a fact of your own");
  }
  if (!lie_apart(first, other.coherent())) return {};
  return "its second measure, " + second.text + ", lies more than a fifth from the first";
}

}  // namespace scalepan
