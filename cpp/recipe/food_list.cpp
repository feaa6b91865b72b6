#include "recipe/food_list.hpp"

#include <algorithm>
#include <iterator>
#include <string>

#include "measure/count_nouns.hpp"
#include "recipe/food_head.hpp"
#include "recipe/line_parts.hpp"
#include "recipe/line_remarks.hpp"
#include "recipe/state_words.hpp"

namespace scalepan {

namespace {

/// `Pepper, salt`; `salt, pepper and nutmeg to taste`: without an amount, a name that is a food by
/// itself is a further one, unless the two together are one name.
void take_unmarked_list(WrittenLine& line, std::vector<Segment>& segments, std::size_t head,
                        const LineSource& source) {
  const std::string first(segments[head].text);
  if (!source.knows(first)) return;
  for (std::size_t i = head + 1; i < segments.size() && !segments[i].bracket; ++i) {
    FoodHead next = read_food_head(segments[i].text, false, source.catalog);
    if (next.foods.empty() || !source.knows(next.foods.front())) return;
    const bool more = !next.states.empty() || !next.alternatives.empty() || !next.beside.empty() ||
                      !next.size.empty();
    if (more) return;
    if (source.knows(next.foods.front() + " " + first)) return;
    std::ranges::move(next.foods, std::back_inserter(line.foods));
    line.notes.insert(line.notes.end(), next.notes.begin(), next.notes.end());
    line.to_taste = line.to_taste || std::ranges::any_of(next.notes, is_wish);
    segments[i].text = {};
  }
}

}  // namespace

void take_lists(WrittenLine& line, std::vector<Segment>& segments, std::size_t head,
                const LineSource& source) {
  std::size_t last = segments.size();
  bool alternatives = false;
  for (std::size_t i = head + 1; i < segments.size(); ++i) {
    Cursor cursor(segments[i].text);
    const bool either = cursor.take_word("or") || cursor.take_word("either");
    if (segments[i].bracket || (!either && !cursor.take_word("and"))) continue;
    if (tells_state(cursor.rest()) || trimmed(cursor.rest()).empty()) continue;
    if (!either && number_or_nothing(cursor.rest())) continue;
    last = i;
    alternatives = either;
  }
  if (last == segments.size()) {
    if (!line.has_amount()) take_unmarked_list(line, segments, head, source);
    return;
  }
  for (std::size_t i = head + 1; i <= last && last < segments.size(); ++i) {
    std::string_view text = segments[i].text;
    if (segments[i].bracket || text.empty() || is_reference(text)) continue;
    Cursor cursor(text);
    if (!cursor.take_word("or") && !cursor.take_word("either")) cursor.take_word("and");
    if (tells_state(cursor.rest()) || trimmed(cursor.rest()).empty()) continue;
    (alternatives ? line.alternatives : line.foods).emplace_back(trimmed(cursor.rest()));
    segments[i].text = {};
  }
}

void take_noun_behind(WrittenLine& line, const LineSource& source) {
  if (line.unit_kind != UnitKind::none || !line.has_amount() || line.foods.size() != 1) return;
  std::string& food = line.foods.front();
  const std::size_t space = food.rfind(' ');
  if (space == std::string_view::npos) return;
  const auto noun = part_noun(lower(std::string_view(food).substr(space + 1)));
  const std::string whole = food.substr(0, space);
  if (!noun || !source.knows(whole)) return;
  line.unit_kind = UnitKind::noun;
  line.unit = *noun;
  food = whole;
}

void take_unit_behind_bracket(WrittenLine& line, Segment& segment, const LineSource& source) {
  if (line.unit_kind != UnitKind::none || !line.has_amount() || source.knows(segment.text)) return;
  Cursor cursor = source.cursor(segment.text);
  const auto word = read_unit_word(cursor);
  const bool counted = word && (word->kind == UnitKind::noun || word->kind == UnitKind::container);
  if (!counted || trimmed(cursor.rest()).empty()) return;
  line.unit_kind = word->kind;
  line.unit = word->name;
  line.unit_at = source.offset(segment.text);
  segment.text = trimmed(cursor.rest());
}

}  // namespace scalepan
