#include "recipe/line_segments.hpp"

#include <algorithm>
#include <array>

#include "exact/error.hpp"
#include "recipe/cursor.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/unit_words.hpp"

namespace scalepan {

namespace {

/// The bracket that closes the one at `open`.
std::size_t closing(std::string_view text, std::size_t open, std::string_view line) {
  int depth = 0;
  for (std::size_t i = open; i < text.size(); ++i) {
    if (text[i] == '(') ++depth;
    if (text[i] == ')' && --depth == 0) return i;
  }
  fail_at(offset_in(line, text) + open, "line.bracket", "a bracket is not closed");
}

/// Whether the word that the full stop ends is cut short by it: `lg.`, `tsp.`, `approx.`.
bool is_abbreviation(std::string_view text, std::size_t stop) {
  std::size_t start = stop;
  while (start > 0 && is_letter(text[start - 1])) --start;
  const std::string_view word = text.substr(start, stop - start);
  Cursor cursor(word);
  constexpr std::array<std::string_view, 6> others{"approx", "incl", "opt", "etc", "no", "st"};
  return is_size_word(word) || read_unit_word(cursor).has_value() ||
         std::ranges::any_of(others,
                             [&](std::string_view known) { return same_word(known, word); });
}

/// The length of a mark that parts segments, or 0. A comma between digits parts none, nor does a
/// single hyphen.
std::size_t mark_length(std::string_view text, std::size_t at) {
  const char c = text[at];
  if (c == ',') {
    const bool number =
        at > 0 && at + 1 < text.size() && is_digit(text[at - 1]) && is_digit(text[at + 1]);
    return number ? 0 : 1;
  }
  // `#2516`, the number of an item, stands alone.
  if (text.substr(at).starts_with(" #")) return 1;
  if (c == ';') return 1;
  if (text.substr(at).starts_with("--")) return 2;
  for (const std::string_view dash : {" - ", " \u2013 ", " \u2014 ", "\u2014"}) {
    if (text.substr(at).starts_with(dash)) return dash.size();
  }
  // A full stop between words, but not behind `No` or an abbreviation of one letter.
  const bool sentence = c == '.' && at > 1 && at + 2 < text.size() && text[at + 1] == ' ' &&
                        is_letter(text[at + 2]) && is_letter(text[at - 1]) &&
                        is_letter(text[at - 2]);
  return sentence && !is_abbreviation(text, at) ? 1 : 0;
}

void add(std::vector<Segment>& segments, std::string_view text, bool bracket) {
  text = trimmed(text);
  if (!text.empty()) segments.push_back({text, bracket});
}

bool is_punctuation(char c) {
  return c == ',' || c == '.' || c == ';' || c == ':' || c == '*' || c == '!';
}

}  // namespace

std::vector<Segment> cut_segments(std::string_view text, std::string_view line) {
  std::vector<Segment> segments;
  std::size_t start = 0;
  for (std::size_t i = 0; i < text.size();) {
    if (text[i] == '(') {
      const std::size_t close = closing(text, i, line);
      add(segments, text.substr(start, i - start), false);
      add(segments, text.substr(i + 1, close - i - 1), true);
      start = i = close + 1;
      continue;
    }
    if (text[i] == ')') {
      fail_at(offset_in(line, text) + i, "line.bracket", "a bracket closes that was not opened");
    }
    const std::size_t mark = mark_length(text, i);
    if (mark == 0) {
      ++i;
      continue;
    }
    add(segments, text.substr(start, i - start), false);
    start = i = i + mark;
  }
  add(segments, text.substr(start), false);
  return segments;
}

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  std::size_t at = 0;
  while (at < text.size()) {
    skip_spaces(text, at);
    const std::size_t end = std::min(text.find(' ', at), text.size());
    std::string_view word = text.substr(at, end - at);
    while (!word.empty() && is_punctuation(word.back())) word.remove_suffix(1);
    while (!word.empty() && word.front() == '*') word.remove_prefix(1);
    if (!word.empty()) words.push_back(word);
    at = end;
  }
  return words;
}

std::string_view text_of(const std::vector<std::string_view>& words, std::size_t first,
                         std::size_t last) {
  if (first >= last || last > words.size()) return {};
  const char* start = words[first].data();
  const std::string_view end = words[last - 1];
  return {start, static_cast<std::size_t>(end.data() + end.size() - start)};
}

}  // namespace scalepan
