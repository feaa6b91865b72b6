#include "recipe/line_parts.hpp"

#include "exact/error.hpp"
#include "recipe/kitchen_words.hpp"

namespace scalepan {

namespace {

/// Parts that `of` must follow: `leaves 3` and `skin 2` could mean anything.
bool needs_of(std::string_view part) {
  return part == "meat" || part == "skin" || part == "peel" || part == "seeds" || part == "leaves";
}

}  // namespace

std::optional<NumberPhrase> number_or_nothing(Cursor& cursor, DecimalMark mark) {
  Cursor probe = cursor;
  try {
    auto number = read_number_phrase(probe, mark);
    if (number) cursor = probe;
    return number;
  } catch (const Error&) {
    return std::nullopt;
  }
}

std::optional<NumberPhrase> number_or_nothing(std::string_view text, DecimalMark mark) {
  Cursor cursor(text);
  return number_or_nothing(cursor, mark);
}

std::string_view read_part_lead(Cursor& cursor, DecimalMark mark) {
  Cursor probe = cursor;
  probe.take_word("the");
  const std::size_t start = probe.skip_spaces().at();
  bool named = false;
  bool loose = true;  // may stand without `of`
  while (true) {
    const std::string_view word = probe.word();
    const std::string_view part = part_of_food(word);
    named = named || !part.empty();
    loose = loose && !needs_of(part);
    const bool filler = same_word(word, "and") || is_participle(word) || is_adverb(word);
    if (part.empty() && (!filler || word.empty())) break;
    probe.take_word();
  }
  if (!named) return {};
  const std::size_t end = probe.at();
  const bool of = probe.take_word("of") || probe.take_word("from");
  if (!of && !loose) return {};
  const auto count = number_or_nothing(probe.rest(), mark);
  if (!count || count->vague()) return {};
  cursor = probe;
  return probe.text().substr(start, end - start);
}

}  // namespace scalepan
