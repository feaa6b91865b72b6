#include "exact/digits.hpp"

#include <cstdint>
#include <string>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"

namespace scalepan {

bool digit_at(std::string_view text, std::size_t position) {
  return position < text.size() && is_digit(text[position]);
}

std::string_view read_digits(std::string_view text, std::size_t& position) {
  const std::size_t start = position;
  while (digit_at(text, position)) ++position;
  const std::string_view digits = text.substr(start, position - start);
  if (digits.size() > most_digits) {
    fail_at(start, "number.too_many_digits",
            "a number of " + std::to_string(digits.size()) + " digits is too long",
            "at most " + std::to_string(most_digits) + " digits are read");
  }
  return digits;
}

Rational whole_of(std::string_view digits) {
  constexpr std::size_t most_in_a_word = 18;
  Rational whole;
  while (!digits.empty()) {
    const std::string_view part = digits.substr(0, most_in_a_word);
    std::int64_t value = 0;
    for (const char c : part) value = value * 10 + (c - '0');
    digits.remove_prefix(part.size());
    whole = whole.is_zero() ? Rational(value)
                            : whole * power(10, static_cast<int>(part.size())) + Rational(value);
  }
  return whole;
}

Rational read_after_point(std::string_view text, std::size_t& position, const Rational& whole) {
  ++position;
  const std::string_view digits = read_digits(text, position);
  return whole + whole_of(digits) / power(10, static_cast<int>(digits.size()));
}

Rational nonzero(Rational bottom, std::size_t offset) {
  if (bottom.is_zero()) {
    fail_at(offset, "number.zero_denominator", "the denominator of a fraction is zero");
  }
  return bottom;
}

}  // namespace scalepan
