#include "recipe/line_text.hpp"

#include <algorithm>

#include "exact/error.hpp"
#include "exact/text.hpp"

namespace scalepan {

namespace {

/// Arabic, Persian, Devanagari and full-width digits.
bool is_foreign_digit(std::string_view text) {
  struct Script {
    std::string_view lead;
    unsigned char first;
  };
  for (const Script& script :
       {Script{"\xD9", 0xA0}, {"\xDB", 0xB0}, {"\xE0\xA5", 0xA6}, {"\xEF\xBC", 0x90}}) {
    if (text.size() <= script.lead.size() || !text.starts_with(script.lead)) continue;
    const auto byte = static_cast<unsigned char>(text[script.lead.size()]);
    if (byte >= script.first && byte < script.first + 10) return true;
  }
  return false;
}

void expect_readable(std::string_view text) {
  if (text.size() > longest_line) {
    fail_at(longest_line, "line.too_long",
            "the line has " + std::to_string(text.size()) + " characters",
            "at most " + std::to_string(longest_line) + " are read");
  }
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if (byte != '\t' && (byte < 0x20U || byte == 0x7FU)) {
      fail_at(i, "line.control_character", "the line holds a control character");
    }
    if (is_foreign_digit(text.substr(i))) {
      fail_at(i, "number.script", "a digit of another script stands in the line",
              "write numbers with the digits 0 to 9");
    }
  }
}

}  // namespace

PlainText plain_text(std::string_view text) {
  expect_readable(text);
  PlainText plain{with_plain_spaces(text), {}};
  std::ranges::replace(plain.text, '[', '(');
  std::ranges::replace(plain.text, ']', ')');
  for (std::size_t i = 0; i < plain.text.size(); ++i) {
    if (plain.text[i] != '\t') continue;
    plain.text[i] = ' ';
    plain.tabs.push_back(i);
  }
  return plain;
}

std::string_view without_marks(std::string_view text) {
  text = trimmed(text);
  for (bool again = true; again;) {
    again = false;
    for (const std::string_view mark : {"* ", "*", "\u2022", "\u00B7", "- ", "\u2013 ", "( )"}) {
      if (!text.starts_with(mark)) continue;
      text = trimmed(text.substr(mark.size()));
      again = true;
    }
  }
  while (text.ends_with('*') || text.ends_with(',') || text.ends_with(';') ||
         (text.ends_with('.') && !text.ends_with("E.P.") && !text.ends_with("A.P."))) {
    text = trimmed(text.substr(0, text.size() - 1));
  }
  return text;
}

}  // namespace scalepan
