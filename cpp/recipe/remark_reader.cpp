#include "recipe/remark_reader.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "exact/error.hpp"
#include "recipe/fill_words.hpp"
#include "recipe/food_first.hpp"
#include "recipe/food_head.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_parts.hpp"
#include "recipe/line_remarks.hpp"
#include "recipe/state_words.hpp"

namespace scalepan {

void RemarkReader::read_slashed_measure(Cursor& cursor) {
  const bool pieces =
      line_.each || line_.unit_kind == UnitKind::container || line_.unit_kind == UnitKind::noun;
  while (true) {
    Cursor probe = cursor;
    if (!probe.take_sign("/") && !probe.take_word("or")) return;
    auto second = read_second(probe);
    if (!second || second->unit.empty()) return;
    if (line_.unit_kind != UnitKind::measure && !pieces) return;
    second->each = second->each || pieces;
    add_second(std::move(*second), cursor.at());
    cursor = probe;
  }
}

void RemarkReader::add_beside(std::string_view text) { line_.beside.emplace_back(text); }

void RemarkReader::add_note(std::string_view note) {
  if (is_optional_mark(note)) {
    line_.optional = true;
    return;
  }
  if (is_wish(note)) line_.to_taste = true;
  line_.notes.emplace_back(note);
}

void RemarkReader::read(const Segment& segment) {
  const std::string_view text = trimmed(segment.text);
  if (text.empty()) return;
  if (is_optional_mark(text)) {
    line_.optional = true;
  } else if (is_wish(text)) {
    add_note(text);
  } else if (const auto mark = stage_mark(text)) {
    line_.stage = *mark;
  } else if (const auto stage = measured_stage(text)) {
    line_.stage = *stage;
    line_.states.emplace_back(text);
  } else if (!read_amount_remark(text)) {
    read_word_remark(text, segment.bracket);
  }
}

/// A second measure, a bound, a fill, a part.
bool RemarkReader::read_amount_remark(std::string_view text) {
  Cursor cursor = source_.cursor(text);
  if (read_measures(cursor)) return true;
  if (is_more_mark(text)) {
    line_.high.reset();
    return true;
  }
  if (is_less_mark(text)) {
    line_.low.reset();
    return true;
  }
  if (is_fill(text) && line_.unit_kind == UnitKind::measure) {
    line_.fill = text;
    return true;
  }
  if (names_parts(text)) {
    if (!line_.part.empty()) line_.part += ", ";
    line_.part += text.ends_with(" of") ? text.substr(0, text.size() - 3) : text;
    return true;
  }
  if (is_size_word(text) && line_.size.empty()) {
    line_.size = text;
    return true;
  }
  return false;
}

/// `1/2 cup sugar, plus 2 tablespoons`: more of the same belongs into the amount.
void RemarkReader::expect_food_added(std::string_view added) const {
  Cursor cursor = source_.cursor(added);
  if (!read_second(cursor) || !trimmed(cursor.rest()).empty()) return;
  fail_at(source_.offset(added), "line.sum",
          "\"" + excerpt(added) + "\" adds to the amount behind the food",
          "write the sum in front: 1/2 cup plus 2 tbsp sugar");
}

/// `butter and sugar, 1 cup each`; a bare number that is in no bracket counts nothing.
void RemarkReader::expect_one_food(const SecondMeasure& measure, std::size_t at) const {
  if (measure.each && (line_.foods.size() > 1 || !line_.has_amount())) {
    fail_at(at, "line.each",
            "\"" + measure.text + " each\" gives one amount of each of several foods",
            "write one line a food");
  }
  const bool bracket = at > 0 && source_.text[at - 1] == '(';
  if (measure.unit.empty() && !bracket && !measure.each) {
    fail_at(at, "line.two_numbers", "\"" + measure.text + "\" counts what is not told",
            "write what it counts");
  }
}

/// `8 oz`, `2 oz/¼ cup`: the whole remark as measures of the amount.
bool RemarkReader::read_measures(Cursor cursor) {
  const std::size_t at = cursor.at();
  cursor.take_word("weighing");
  std::vector<SecondMeasure> measures;
  do {
    auto second = read_second(cursor);
    if (!second) return false;
    measures.push_back(std::move(*second));
  } while (cursor.take_sign("/") || cursor.take_word("or"));
  if (!trimmed(cursor.rest()).empty()) return false;
  for (SecondMeasure& measure : measures) {
    expect_one_food(measure, at);
    take_second(std::move(measure), at);
  }
  return true;
}

/// `1 turnip`, but not `20 % fat`, `3 years old`, `16/20 count`, `14 by 18 inches`.
bool RemarkReader::counts_food(std::string_view text) {
  Cursor cursor(text);
  if (!number_or_nothing(cursor, DecimalMark::point)) return false;
  constexpr std::array<std::string_view, 12> no_foods{"percent", "years",   "year",  "months",
                                                      "month",   "days",    "count", "by",
                                                      "inches",  "minutes", "hours", "in"};
  const std::string_view word = cursor.word();
  return !cursor.skip_spaces().rest().starts_with('%') && !word.empty() &&
         !is_one_of(word, no_foods);
}

void RemarkReader::read_word_remark(std::string_view text, bool bracket) {
  Cursor cursor(text);
  const bool other = cursor.take_word("or") || cursor.take_word("oder");
  if (other && !tells_state(cursor.rest())) {
    const std::string_view rest = trimmed(cursor.rest());
    rest.empty() ? add_note(text) : static_cast<void>(line_.alternatives.emplace_back(rest));
    return;
  }
  if (const std::string_view added = added_food(text); !added.empty()) {
    expect_food_added(added);
    add_beside(added);
  } else if (!bracket && !tells_state(text) && !is_reference(text) &&
             (counts_food(text) || holds_amount(text))) {
    add_beside(text);
  } else if (tells_state(text)) {
    line_.states.emplace_back(text);
  } else if (bracket || is_reference(text) || has_digit(text) || is_note(text)) {
    line_.notes.emplace_back(text);
  } else if (!names_the_food(text)) {
    line_.states.emplace_back(text);
  }
}

/// `Pepper, black`, `Cheese, Mozzarella`: the name with its last word first.
bool RemarkReader::names_the_food(std::string_view text) {
  if (line_.foods.size() != 1) return false;
  std::string& food = line_.foods.front();
  const std::string inverted = std::string(text) + " " + food;
  if (source_.knows(inverted)) {
    food = inverted;
    return true;
  }
  const auto is_capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (!is_capital(text.front()) || !is_capital(food.front())) return false;
  food += ", " + std::string(text);
  return true;
}

/// `(about 8 oz)`, `(½ cup)`, `about 2 ounces each`; moves past it.
std::optional<SecondMeasure> RemarkReader::read_second(Cursor& cursor) const {
  Cursor probe = cursor;
  const std::size_t start = probe.skip_spaces().at();
  if (!number_or_nothing(probe.rest(), source_.reading.decimal)) return std::nullopt;
  std::optional<MeasurePhrase> phrase;
  try {
    phrase = read_measure_phrase(probe, source_.reading, source_.catalog, AmountPlace::behind);
  } catch (const Error&) {
    return std::nullopt;
  }
  if (!phrase || !phrase->number.low || !phrase->number.high || phrase->number.article ||
      phrase->number.low->sign() <= 0 || phrase->kind == UnitKind::length ||
      phrase->kind == UnitKind::time) {
    return std::nullopt;
  }
  SecondMeasure second;
  // `80/20` is no count.
  const std::string_view written = probe.text().substr(start, probe.at() - start);
  if (phrase->unit.empty() && written.find('/') != std::string_view::npos) return std::nullopt;
  second.text = written;
  second.low = *phrase->number.low;
  second.high = *phrase->number.high;
  second.unit = phrase->unit;
  second.kind = phrase->kind;
  second.measure = phrase->measure;
  second.each = probe.take_word("each");
  if (!second.each) static_cast<void>(probe.take_words("in all") || probe.take_word("total"));
  cursor = probe;
  return second;
}

/// `A piece of butter, one and a half ounce`: the measure tells what the piece does not.
void RemarkReader::take_second(SecondMeasure second, std::size_t at) {
  const bool loose = line_.article && !second.unit.empty() &&
                     line_.unit_kind != UnitKind::measure &&
                     line_.unit_kind != UnitKind::container && !second.each;
  if (!loose && line_.has_amount()) {
    add_second(std::move(second), at);
    return;
  }
  line_.low = second.low;
  line_.high = second.high;
  line_.unit_kind = second.unit.empty() ? UnitKind::none : second.kind;
  line_.unit = second.unit.empty() ? "piece" : second.unit;
  line_.unit_at = at;
  line_.measure = second.measure;
  line_.article = line_.to_taste = false;
}

void RemarkReader::add_second(SecondMeasure second, std::size_t at) {
  if (!second.each && contradicts(line_, second)) {
    const bool counts = second.unit.empty();
    fail_at(at, "line.second_measure",
            "two " + std::string(counts ? "counts" : "measures") +
                " of one amount contradict: " + amount_text(line_) + " and " + second.text +
                (counts ? "" : " lie more than a fifth apart"),
            "write the one that is right");
  }
  line_.second_measures.push_back(std::move(second));
}

}  // namespace scalepan
