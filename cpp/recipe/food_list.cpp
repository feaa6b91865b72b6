#include "recipe/food_list.hpp"

#include "recipe/food_head.hpp"
#include "recipe/line_parts.hpp"
#include "recipe/line_remarks.hpp"

namespace scalepan {

namespace {

/// `Pepper, salt`: without an amount, names of two foods are two foods.
std::size_t unmarked_list_end(const WrittenLine& line, const std::vector<Segment>& segments,
                              std::size_t head, const LineSource& source) {
  const std::size_t none = segments.size();
  if (line.has_amount() || head + 2 != segments.size() || segments[head + 1].bracket) {
    return none;
  }
  const std::string_view second = segments[head + 1].text;
  const std::string inverted = std::string(second) + " " + std::string(segments[head].text);
  const bool two =
      source.knows(segments[head].text) && source.knows(second) && !source.knows(inverted);
  return two ? head + 1 : none;
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
  if (last == segments.size()) last = unmarked_list_end(line, segments, head, source);
  for (std::size_t i = head + 1; i <= last && last < segments.size(); ++i) {
    std::string_view text = segments[i].text;
    if (segments[i].bracket || text.empty() || is_reference(text)) continue;
    Cursor cursor(text);
    if (!cursor.take_word("or") && !cursor.take_word("either")) cursor.take_word("and");
    if (tells_state(cursor.rest())) continue;
    (alternatives ? line.alternatives : line.foods).emplace_back(trimmed(cursor.rest()));
    segments[i].text = {};
  }
}

}  // namespace scalepan
