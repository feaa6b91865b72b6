#include "exact/number_text.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include "exact/big.hpp"
#include "exact/digits.hpp"
#include "exact/error.hpp"
#include "exact/rounding.hpp"
#include "exact/text.hpp"

namespace scalepan {

namespace {

struct Vulgar {
  std::string_view sign;
  std::int64_t numerator;
  std::int64_t denominator;
};

// Unicode "vulgar fraction" characters, U+00BC-00BE, U+2150-215E and U+2189.
constexpr std::array<Vulgar, 19> vulgar_fractions{{
    {"\u00BC", 1, 4},  {"\u00BD", 1, 2}, {"\u00BE", 3, 4}, {"\u2150", 1, 7}, {"\u2151", 1, 9},
    {"\u2152", 1, 10}, {"\u2153", 1, 3}, {"\u2154", 2, 3}, {"\u2155", 1, 5}, {"\u2156", 2, 5},
    {"\u2157", 3, 5},  {"\u2158", 4, 5}, {"\u2159", 1, 6}, {"\u215A", 5, 6}, {"\u215B", 1, 8},
    {"\u215C", 3, 8},  {"\u215D", 5, 8}, {"\u215E", 7, 8}, {"\u2189", 0, 3},
}};

struct Digit {
  std::string_view sign;
  char digit;
};

constexpr std::array<Digit, 10> raised_digits{{
    {"\u2070", '0'},
    {"\u00B9", '1'},
    {"\u00B2", '2'},
    {"\u00B3", '3'},
    {"\u2074", '4'},
    {"\u2075", '5'},
    {"\u2076", '6'},
    {"\u2077", '7'},
    {"\u2078", '8'},
    {"\u2079", '9'},
}};

constexpr std::array<Digit, 10> lowered_digits{{
    {"\u2080", '0'},
    {"\u2081", '1'},
    {"\u2082", '2'},
    {"\u2083", '3'},
    {"\u2084", '4'},
    {"\u2085", '5'},
    {"\u2086", '6'},
    {"\u2087", '7'},
    {"\u2088", '8'},
    {"\u2089", '9'},
}};

/// Digits of one of the two sets, as plain ones.
std::string read_set_digits(std::string_view text, std::size_t& position,
                            const std::array<Digit, 10>& set) {
  std::string digits;
  const auto here = [&] {
    return std::ranges::find_if(
        set, [&](const Digit& digit) { return text.substr(position).starts_with(digit.sign); });
  };
  for (auto found = here(); found != set.end() && digits.size() < most_digits; found = here()) {
    digits += found->digit;
    position += found->sign.size();
  }
  return digits;
}

std::size_t slash_length(std::string_view text, std::size_t position) {
  for (const std::string_view slash : {"/", "\u2044", "\u2215"}) {
    if (text.substr(position).starts_with(slash)) return slash.size();
  }
  return 0;
}

std::optional<Rational> read_vulgar(std::string_view text, std::size_t& position) {
  if (position >= text.size() || !is_beyond_ascii(text[position])) return std::nullopt;
  for (const Vulgar& vulgar : vulgar_fractions) {
    if (text.substr(position).starts_with(vulgar.sign)) {
      position += vulgar.sign.size();
      return Rational(vulgar.numerator, vulgar.denominator);
    }
  }
  return std::nullopt;
}

Rational read_under_slash(std::string_view text, std::size_t& position, const Rational& top) {
  const std::size_t start = position;
  return top / nonzero(whole_of(read_digits(text, position)), start);
}

bool slash_then_digit(std::string_view text, std::size_t position) {
  const std::size_t slash = slash_length(text, position);
  return slash > 0 && digit_at(text, position + slash);
}

/// `¹⁄₂`: raised digits over lowered or plain ones.
std::optional<Rational> read_raised_fraction(std::string_view text, std::size_t& position) {
  if (position >= text.size() || !is_beyond_ascii(text[position])) return std::nullopt;
  std::size_t probe = position;
  const std::string top = read_set_digits(text, probe, raised_digits);
  if (top.empty()) return std::nullopt;
  const std::size_t slash = slash_length(text, probe);
  if (slash == 0) return std::nullopt;
  probe += slash;
  const std::size_t start = probe;
  std::string bottom = read_set_digits(text, probe, lowered_digits);
  if (bottom.empty()) bottom = read_digits(text, probe);
  if (bottom.empty()) return std::nullopt;
  position = probe;
  return whole_of(top) / nonzero(whole_of(bottom), start);
}

/// `1/2`, `¹⁄₂` or a vulgar fraction.
std::optional<Rational> read_fraction(std::string_view text, std::size_t& position) {
  if (auto vulgar = read_vulgar(text, position)) return vulgar;
  if (auto raised = read_raised_fraction(text, position)) return raised;
  std::size_t probe = position;
  const std::string_view digits = read_digits(text, probe);
  if (digits.empty() || !slash_then_digit(text, probe)) return std::nullopt;
  probe += slash_length(text, probe);
  Rational value = read_under_slash(text, probe, whole_of(digits));
  position = probe;
  return value;
}

/// What may stand between the parts of a mixed number: a hyphen, `&`, or spaces.
bool pass_joint(std::string_view text, std::size_t& position) {
  const std::size_t start = position;
  if (position < text.size() && text[position] == '-') {
    ++position;
    return true;
  }
  skip_spaces(text, position);
  if (position < text.size() && text[position] == '&') {
    ++position;
    skip_spaces(text, position);
  }
  return position > start;
}

/// The fraction part of a mixed number whose whole part ends at `position`.
std::optional<Rational> read_mixed_rest(std::string_view text, std::size_t& position) {
  std::size_t probe = position;
  std::size_t start = probe;
  auto fraction = read_vulgar(text, probe);
  if (!fraction) fraction = read_raised_fraction(text, probe);
  if (!fraction && pass_joint(text, probe)) {
    start = probe;
    fraction = read_fraction(text, probe);
  }
  if (!fraction) return std::nullopt;
  if (*fraction >= 1) {
    fail_at(start, "number.doubtful",
            "the fraction of a mixed number is not below one: \"" +
                excerpt(text.substr(start, probe - start)) + "\"",
            "write one number, or put the unit between the two");
  }
  position = probe;
  return fraction;
}

/// What may not follow a number, since it would change its meaning.
void expect_number_ends(std::string_view text, std::size_t start, std::size_t position,
                        DecimalMark mark) {
  if (position >= text.size()) return;
  if (mark == DecimalMark::comma && text[position] == '.' && digit_at(text, position + 1)) {
    fail_at(position, "number.point",
            "a full stop stands inside a number, where decimals are written with a comma",
            "write 1000 for a thousand and 1,5 for one and a half");
  }
  if (text[position] == ',' && digit_at(text, position + 1)) {
    fail_at(position, "number.comma", "a comma stands inside a number",
            "write 1000 for a thousand and 1.5 for one and a half");
  }
  const bool second_point = text[position] == '.' && digit_at(text, position + 1);
  if (second_point || slash_then_digit(text, position)) {
    fail_at(start, "number.doubtful",
            "\"" + excerpt(text.substr(start, text.find(' ', position) - start)) +
                "\" can be read as more than one number",
            "write one number, such as 1.5, 3/2 or 1 1/2");
  }
}

std::optional<Rational> read_unsigned_amount(std::string_view text, std::size_t& position,
                                             DecimalMark mark) {
  const char point = mark == DecimalMark::point ? '.' : ',';
  const std::size_t start = position;
  auto value = read_fraction(text, position);
  if (!value) {
    const bool point_first = text.substr(position).starts_with(point);
    if (!digit_at(text, position + (point_first ? 1 : 0))) return std::nullopt;
    value = whole_of(read_digits(text, position));
    if (position < text.size() && text[position] == point && digit_at(text, position + 1)) {
      value = read_after_point(text, position, *value);
    } else if (const auto rest = read_mixed_rest(text, position)) {
      *value += *rest;
    }
  }
  expect_number_ends(text, start, position, mark);
  return value;
}

std::string whole_text(const Rational& whole) {
  return whole.is_word() ? std::to_string(whole.word_numerator())
                         : whole.big().value.numerator().str();
}

/// Decimal places needed, or -1 where the decimal never ends or is longer than `most`.
int places_needed(const Rational& x, int most) {
  Rational scaled = x;
  for (int places = 0; places <= most; ++places) {
    if (scaled.is_integer()) return places;
    scaled *= 10;
  }
  return -1;
}

/// `x` has at most `places` decimals.
std::string decimal_of(const Rational& x, int places) {
  const Rational size = abs(x);
  std::string digits = whole_text(size * power(10, places));
  const auto width = static_cast<std::size_t>(places) + 1;
  if (digits.size() < width) digits.insert(0, width - digits.size(), '0');
  if (places > 0) digits.insert(digits.size() - static_cast<std::size_t>(places), 1, '.');
  return (x.sign() < 0 ? "-" : "") + digits;
}

}  // namespace

std::optional<Rational> read_amount_number(std::string_view text, std::size_t& position,
                                           DecimalMark mark) {
  const bool negative = text.substr(position).starts_with('-');
  std::size_t probe = position + (negative ? 1 : 0);
  auto value = read_unsigned_amount(text, probe, mark);
  if (!value) return std::nullopt;
  position = probe;
  return negative ? -*value : *value;
}

Rational parse_amount_number(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  std::size_t position = first == std::string_view::npos ? text.size() : first;
  auto value = read_amount_number(text, position);
  if (!value) {
    fail_at(position, "number.unreadable",
            "no number is written in \"" + excerpt(text.substr(position)) + "\"");
  }
  const std::size_t rest = text.find_first_not_of(' ', position);
  if (rest != std::string_view::npos) {
    fail_at(rest, "number.unreadable",
            "\"" + excerpt(text.substr(rest)) + "\" follows the number " +
                excerpt(text.substr(0, position)));
  }
  return *value;
}

std::string fraction_text(const Rational& x) {
  if (x.is_integer()) return whole_text(x);
  return whole_text(numerator(x)) + "/" + whole_text(denominator(x));
}

std::string mixed_text(const Rational& x) {
  const Rational size = abs(x);
  const Rational whole = floor(size);
  if (whole.is_zero() || x.is_integer()) return fraction_text(x);
  return (x.sign() < 0 ? "-" : "") + whole_text(whole) + " " + fraction_text(size - whole);
}

std::optional<std::string> decimal_text(const Rational& x, int most_places) {
  const int places = places_needed(x, most_places);
  if (places < 0) return std::nullopt;
  return decimal_of(x, places);
}

std::string exact_text(const Rational& x) {
  constexpr int short_decimal = 4;
  constexpr int long_decimal = 12;
  if (auto decimal = decimal_text(x, short_decimal)) return *decimal;
  std::string mixed = mixed_text(x);
  const auto decimal = decimal_text(x, long_decimal);
  return decimal && decimal->size() <= mixed.size() ? *decimal : mixed;
}

std::string fixed_text(const Rational& x, int places) {
  return decimal_of(round_to_places(x, places, Rounding::half_up).value, std::max(places, 0));
}

}  // namespace scalepan
