// Days, checked against the calendar.

#include <charconv>
#include <chrono>

#include "exact/text.hpp"
#include "packs/fields.hpp"

namespace scalepan {

namespace {

int number_at(std::string_view text, std::size_t at, std::size_t digits) {
  int number = 0;
  std::from_chars(text.data() + at, text.data() + at + digits, number);
  return number;
}

bool is_shaped(std::string_view date) {
  if (date.size() != 10) return false;
  for (std::size_t i = 0; i < date.size(); ++i) {
    const bool dash = i == 4 || i == 7;
    if (dash ? date[i] != '-' : !is_digit(date[i])) return false;
  }
  return true;
}

}  // namespace

std::string date_text(std::string_view text) {
  const std::string_view date = trimmed(text);
  if (date.empty()) return {};
  const bool shaped = is_shaped(date);
  const std::chrono::year_month_day day{
      std::chrono::year(shaped ? number_at(date, 0, 4) : 0),
      std::chrono::month(shaped ? static_cast<unsigned>(number_at(date, 5, 2)) : 0),
      std::chrono::day(shaped ? static_cast<unsigned>(number_at(date, 8, 2)) : 0)};
  if (!day.ok()) {
    fail("price.date", "\"" + excerpt(date) + "\" is no date", "write it as 2026-11-24");
  }
  return std::string(date);
}

}  // namespace scalepan
