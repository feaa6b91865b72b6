#include "recipe/number_words.hpp"

#include <array>
#include <cstdint>
#include <utility>

namespace scalepan {

namespace {

using Named = std::pair<std::string_view, std::int64_t>;

constexpr auto cardinals = std::to_array<Named>(
    {{"one", 1},      {"two", 2},        {"three", 3},     {"four", 4},      {"five", 5},
     {"six", 6},      {"seven", 7},      {"eight", 8},     {"nine", 9},      {"ten", 10},
     {"eleven", 11},  {"twelve", 12},    {"thirteen", 13}, {"fourteen", 14}, {"fifteen", 15},
     {"sixteen", 16}, {"seventeen", 17}, {"eighteen", 18}, {"nineteen", 19}, {"twenty", 20},
     {"thirty", 30},  {"forty", 40},     {"fifty", 50},    {"sixty", 60},    {"seventy", 70},
     {"eighty", 80},  {"ninety", 90},    {"hundred", 100}});

constexpr auto denominators = std::to_array<Named>({{"half", 2},
                                                    {"halves", 2},
                                                    {"third", 3},
                                                    {"thirds", 3},
                                                    {"quarter", 4},
                                                    {"quarters", 4},
                                                    {"fourth", 4},
                                                    {"fourths", 4},
                                                    {"fifth", 5},
                                                    {"fifths", 5},
                                                    {"sixth", 6},
                                                    {"sixths", 6},
                                                    {"eighth", 8},
                                                    {"eighths", 8}});

template <std::size_t N>
std::optional<std::int64_t> named(const std::array<Named, N>& table, std::string_view word) {
  for (const auto& [name, value] : table) {
    if (same_word(name, word)) return value;
  }
  return std::nullopt;
}

/// Both parts of a word joined by a hyphen; the second is empty where there is none.
std::pair<std::string_view, std::string_view> parts_of(std::string_view word) {
  const std::size_t hyphen = word.find('-');
  if (hyphen == std::string_view::npos) return {word, {}};
  return {word.substr(0, hyphen), word.substr(hyphen + 1)};
}

/// `half`, `a half`, `one half`, `three-quarters`: a fraction below one.
std::optional<Rational> read_named_fraction(Cursor& cursor) {
  Cursor probe = cursor;
  auto [top_word, bottom_word] = parts_of(probe.take_word());
  std::int64_t top = 1;
  if (same_word(top_word, "a") || same_word(top_word, "an")) {
    bottom_word = probe.take_word();
  } else if (const auto count = named(cardinals, top_word)) {
    top = *count;
    if (bottom_word.empty()) bottom_word = probe.take_word();
  } else {
    if (!bottom_word.empty()) return std::nullopt;
    bottom_word = top_word;
  }
  const auto bottom = named(denominators, bottom_word);
  if (!bottom || top >= *bottom) return std::nullopt;
  cursor = probe;
  return Rational(top, *bottom);
}

/// `two`, `twenty-four`.
std::optional<Rational> read_cardinal(Cursor& cursor) {
  Cursor probe = cursor;
  const auto [first, second] = parts_of(probe.take_word());
  const auto value = named(cardinals, first);
  if (!value) return std::nullopt;
  const auto units = named(cardinals, second);
  if (!second.empty() && (!units || *value < 20 || *units > 9)) return std::nullopt;
  cursor = probe;
  return Rational(*value + units.value_or(0));
}

}  // namespace

std::optional<Rational> cardinal(std::string_view word) {
  const auto value = named(cardinals, word);
  return value ? std::optional(Rational(*value)) : std::nullopt;
}

std::optional<Rational> read_fraction_in_words(Cursor& cursor) {
  Cursor probe = cursor;
  if (!probe.take_word("and")) return std::nullopt;
  auto fraction = read_named_fraction(probe);
  if (fraction) cursor = probe;
  return fraction;
}

std::optional<Rational> read_number_words(Cursor& cursor) {
  if (auto fraction = read_named_fraction(cursor)) return fraction;
  auto value = read_cardinal(cursor);
  if (!value) return std::nullopt;
  if (const auto fraction = read_fraction_in_words(cursor)) *value += *fraction;
  return value;
}

}  // namespace scalepan
