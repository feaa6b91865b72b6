#include "recipe/number_words.hpp"

#include <array>
#include <cstdint>
#include <utility>

#include "exact/error.hpp"
#include "recipe/unit_words.hpp"

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

/// The `and fifty` of `one hundred and fifty`, or 0.
std::int64_t read_below_hundred(Cursor& cursor) {
  Cursor probe = cursor;
  if (!probe.take_word("and")) return 0;
  const auto [first, second] = parts_of(probe.take_word());
  const auto value = named(cardinals, first);
  const auto units = named(cardinals, second);
  if (!value || *value > 99 || (!second.empty() && !units)) return 0;
  cursor = probe;
  return *value + units.value_or(0);
}

bool begins_unit(std::string_view text) {
  Cursor cursor(text);
  return !text.empty() && read_unit_word(cursor).has_value();
}

/// `two-and-a-half`, of which the first word is the value.
std::optional<Rational> mixed_word(std::int64_t value, std::string_view rest) {
  constexpr std::string_view joint = "and-";
  if (!rest.starts_with(joint)) return std::nullopt;
  rest.remove_prefix(joint.size());
  if (rest.starts_with("a-")) rest.remove_prefix(2);
  const auto [top_word, bottom_word] = parts_of(rest);
  const auto bottom = named(denominators, bottom_word.empty() ? top_word : bottom_word);
  const auto top =
      bottom_word.empty() ? std::optional<std::int64_t>(1) : named(cardinals, top_word);
  if (!bottom || !top || *top >= *bottom) return std::nullopt;
  return Rational(value) + Rational(*top, *bottom);
}

/// `two`, `twenty-four`, `one hundred and fifty`.
std::optional<Rational> read_cardinal(Cursor& cursor) {
  Cursor probe = cursor;
  const auto [first, second] = parts_of(probe.take_word());
  const auto value = named(cardinals, first);
  if (!value) return std::nullopt;
  if (const auto mixed = mixed_word(*value, second)) {
    cursor = probe;
    return mixed;
  }
  if (begins_unit(second)) {  // `two-inch`
    cursor.skip_spaces();
    cursor.skip(first.size() + 1);
    return Rational(*value);
  }
  const auto units = named(cardinals, second);
  if (!second.empty() && (!units || *value < 20 || *units > 9)) {
    if (!units) return std::nullopt;
    fail_at(cursor.skip_spaces().at(), "number.doubtful",
            "\"" + excerpt(cursor.word()) + "\" is two numbers",
            "write " + std::to_string(*value) + " to " + std::to_string(*units));
  }
  std::int64_t whole = *value + units.value_or(0);
  if (whole < 100 && probe.take_word("hundred")) whole = whole * 100 + read_below_hundred(probe);
  cursor = probe;
  return Rational(whole);
}

/// `a hundred`.
std::optional<Rational> read_a_hundred(Cursor& cursor) {
  Cursor probe = cursor;
  if (!probe.take_word("a") || !probe.take_word("hundred")) return std::nullopt;
  const std::int64_t whole = 100 + read_below_hundred(probe);
  cursor = probe;
  return Rational(whole);
}

}  // namespace

std::optional<Rational> cardinal(std::string_view word) {
  const auto value = named(cardinals, word);
  return value ? std::optional(Rational(*value)) : std::nullopt;
}

bool is_fraction_name(std::string_view word) { return named(denominators, word).has_value(); }

std::optional<Rational> read_bound_fraction(Cursor& cursor) {
  Cursor probe = cursor;
  const auto [first, second] = parts_of(probe.word());
  const auto bottom = named(denominators, first);
  if (!bottom || second.empty()) return std::nullopt;
  probe.skip_spaces();
  probe.skip(first.size() + 1);
  Cursor unit = probe;
  if (!read_unit_word(unit)) return std::nullopt;
  cursor = probe;
  return Rational(1, *bottom);
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
  if (auto fraction = read_bound_fraction(cursor)) return fraction;
  if (auto hundred = read_a_hundred(cursor)) return hundred;
  auto value = read_cardinal(cursor);
  if (!value) return std::nullopt;
  if (const auto fraction = read_fraction_in_words(cursor)) *value += *fraction;
  return value;
}

}  // namespace scalepan
