#include "recipe/state_words.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "recipe/cursor.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_segments.hpp"

namespace scalepan {

namespace {

/// `½-inch thick`, `1 cm cubes`, `¼"`: a size in figures.
bool starts_with_length(std::string_view text) {
  std::size_t position = 0;
  try {
    if (!read_amount_number(text, position)) return false;
  } catch (const Error&) {
    return false;
  }
  const std::string_view rest = text.substr(position);
  for (const std::string_view unit : {"-inch", " inch", "\"", " cm", "cm", " mm", "mm", "-cm"}) {
    if (rest.starts_with(unit)) return true;
  }
  return false;
}

}  // namespace

bool tells_state(std::string_view text) {
  const std::vector<std::string_view> words = words_of(text);
  std::size_t i = 0;
  while (i < words.size() &&
         (same_word(words[i], "and") || same_word(words[i], "or") || same_word(words[i], "then") ||
          same_word(words[i], "to") || same_word(words[i], "be") || is_adverb(words[i]))) {
    ++i;
  }
  if (i >= words.size()) return i > 0;
  constexpr std::array<std::string_view, 5> openers{"in", "into", "at", "room", "without"};
  return is_participle(words[i]) || is_condition(words[i]) || is_one_of(words[i], openers) ||
         starts_with_length(words[i]) || starts_with_length(text);
}

}  // namespace scalepan
