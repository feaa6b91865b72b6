#include "recipe/second_amounts.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "exact/error.hpp"
#include "exact/text.hpp"
#include "food/convert.hpp"
#include "recipe/cursor.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_segments.hpp"

namespace scalepan {

namespace {

constexpr auto npos = std::string_view::npos;

/// A weight or volume that starts at `at`, behind a number.
bool is_measure_at(std::string_view text, std::size_t at) {
  try {
    std::size_t position = at;
    if (!read_amount_number(text, position)) return false;
    if (position < text.size() && text[position] == '-') ++position;
    Cursor cursor(text, position);
    const auto unit = read_unit_word(cursor);
    return unit && unit->kind == UnitKind::measure;
  } catch (const Error&) {
    return true;  // a number that cannot be read is no remark either
  }
}

std::size_t find_measure(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool starts =
        is_digit(text[i]) && (i == 0 || (!is_digit(text[i - 1]) && text[i - 1] != '.'));
    if (starts && is_measure_at(text, i)) return i;
  }
  return npos;
}

bool is_rule(std::string_view text) {
  const std::string words = lower(trimmed(text));
  return words == "fixed" || words == "in proportion" || words.find(" per portion") != npos ||
         words.ends_with(" portions") || words.starts_with("per portion");
}

void expect_no_amount(const std::string& remark) {
  if (find_measure(remark) == npos) return;
  fail("line.second_amount",
       "a second amount stands in \"" + excerpt(remark) + "\", and nothing would scale it",
       "write one amount a line");
}

void expect_no_rule(const std::string& remark) {
  if (!is_rule(remark)) return;
  fail("line.rule", "\"" + excerpt(remark) + "\" reads like a rule without its bar",
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

void expect_nothing_beside(const WrittenLine& line) {
  for (const auto* remarks : {&line.states, &line.notes, &line.alternatives, &line.beside}) {
    for (const std::string& remark : *remarks) {
      expect_no_amount(remark);
      expect_no_rule(remark);
    }
  }
}

std::string doubt_of(const Line& line, const SecondMeasure& second, const Catalog& catalog) {
  const Food* food = catalog.food(line.food_id);
  if (food == nullptr || !second.measure || second.each) return {};
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
         "two measures of one amount contradict: " + line.written.text() + " and " + second.text +
             ", where by the facts of " + food->name + " the first is " +
             Quantity::of_coherent(first, unit).text(),
         "write the one that is right, or add a fact of your own");
  }
  if (ratio * Rational(5) <= Rational(6)) return {};
  return "its second measure, " + second.text + ", lies more than a fifth from the first";
}

}  // namespace scalepan
