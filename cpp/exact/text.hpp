// Small pieces that every reader of text needs. They know ASCII only, so that no locale of the
// machine can change what a text means; other bytes are left as they are.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>

namespace scalepan {

[[nodiscard]] constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

[[nodiscard]] constexpr bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

[[nodiscard]] constexpr bool is_space(char c) { return c == ' ' || (c >= '\t' && c <= '\r'); }

/// Part of a character beyond ASCII in UTF-8.
[[nodiscard]] constexpr bool is_beyond_ascii(char c) {
  return (static_cast<unsigned char>(c) & 0x80U) != 0;
}

[[nodiscard]] constexpr char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

[[nodiscard]] inline std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) c = lower(c);
  return result;
}

[[nodiscard]] inline std::string upper(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return result;
}

/// Without white space at both ends; a view into the same text.
[[nodiscard]] constexpr std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  return text;
}

/// Spaces beyond ASCII, as pasted texts have them, turned into plain ones. Every byte becomes one,
/// so that offsets into the text hold.
[[nodiscard]] inline std::string with_plain_spaces(std::string_view text) {
  std::string plain(text);
  for (const std::string_view space : {"\u00A0", "\u2009", "\u202F", "\u2007"}) {
    for (std::size_t at = plain.find(space); at != std::string::npos; at = plain.find(space)) {
      plain.replace(at, space.size(), space.size(), ' ');
    }
  }
  return plain;
}

[[nodiscard]] constexpr bool has_digit(std::string_view text) {
  return std::ranges::any_of(text, is_digit);
}

constexpr void skip_spaces(std::string_view text, std::size_t& position) {
  while (position < text.size() && text[position] == ' ') ++position;
}

}  // namespace scalepan
