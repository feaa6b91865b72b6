// A place in a line that moves on word by word.
#pragma once

#include <algorithm>
#include <cstddef>
#include <span>
#include <string_view>

#include "exact/text.hpp"

namespace scalepan {

/// The length of the letter at `at` in UTF-8, or 0. Letters beyond ASCII are all characters but
/// the signs of the blocks U+0080 to U+00BF and U+2000 to U+2FFF, and the multiplication and
/// division signs.
[[nodiscard]] constexpr std::size_t letter_length(std::string_view text, std::size_t at) {
  if (at >= text.size()) return 0;
  if (is_letter(text[at])) return 1;
  const auto byte = static_cast<unsigned char>(text[at]);
  if (byte < 0xC3U || byte == 0xE2U) return 0;
  const std::size_t length = byte < 0xE0U ? 2 : byte < 0xF0U ? 3 : 4;
  const std::string_view sign = text.substr(at, length);
  return sign == "\u00D7" || sign == "\u00F7" || sign.size() < length ? 0 : length;
}

/// The length of an apostrophe at `at`, or 0.
[[nodiscard]] constexpr std::size_t apostrophe_length(std::string_view text, std::size_t at) {
  if (text.substr(at).starts_with('\'')) return 1;
  return text.substr(at).starts_with("\u2019") ? 3 : 0;
}

/// The end of the word that starts at `at`: letters, with hyphens and apostrophes between them.
[[nodiscard]] constexpr std::size_t word_end(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size()) {
    if (const std::size_t letter = letter_length(text, end)) {
      end += letter;
      continue;
    }
    const std::size_t joint = text[end] == '-' ? 1 : apostrophe_length(text, end);
    if (end == at || joint == 0 || letter_length(text, end + joint) == 0) break;
    end += joint;
  }
  return end;
}

/// Whether two texts differ in the case of ASCII letters only.
[[nodiscard]] constexpr bool same_word(std::string_view a, std::string_view b) {
  return std::ranges::equal(a, b, [](char x, char y) { return lower(x) == lower(y); });
}

/// Whether the word is one of these, as `same_word` has it.
[[nodiscard]] constexpr bool is_one_of(std::string_view word,
                                       std::span<const std::string_view> words) {
  return std::ranges::any_of(words, [&](std::string_view known) { return same_word(word, known); });
}

/// The first word of a text that begins with one.
[[nodiscard]] constexpr std::string_view first_word(std::string_view text) {
  return text.substr(0, word_end(text, 0));
}

/// Where a part of a text begins in it.
[[nodiscard]] inline std::size_t offset_in(std::string_view whole, std::string_view part) {
  return static_cast<std::size_t>(part.data() - whole.data());
}

class Cursor {
 public:
  explicit constexpr Cursor(std::string_view text, std::size_t at = 0) : text_(text), at_(at) {}

  [[nodiscard]] constexpr std::string_view text() const { return text_; }
  [[nodiscard]] constexpr std::size_t at() const { return at_; }
  [[nodiscard]] constexpr std::string_view rest() const { return text_.substr(at_); }
  [[nodiscard]] constexpr bool done() const { return at_ >= text_.size(); }
  constexpr void move_to(std::size_t at) { at_ = at; }
  constexpr void skip(std::size_t length) { at_ += length; }
  constexpr Cursor& skip_spaces() {
    scalepan::skip_spaces(text_, at_);
    return *this;
  }

  /// The word that starts here, behind spaces; empty where none does.
  [[nodiscard]] constexpr std::string_view word() const {
    std::size_t start = at_;
    scalepan::skip_spaces(text_, start);
    return text_.substr(start, word_end(text_, start) - start);
  }
  /// Moves behind the word and the spaces before it.
  constexpr std::string_view take_word() {
    skip_spaces();
    const std::string_view taken = word();
    at_ += taken.size();
    return taken;
  }
  /// Moves behind the word, given in lower case, if it starts here.
  constexpr bool take_word(std::string_view wanted) {
    if (!begins_with(wanted.front()) || !same_word(word(), wanted)) return false;
    take_word();
    return true;
  }
  /// Moves behind the words, given in lower case and apart by single spaces, if they start here.
  constexpr bool take_words(std::string_view wanted) {
    if (!begins_with(wanted.front())) return false;
    Cursor probe = *this;
    while (!wanted.empty()) {
      const std::string_view next = wanted.substr(0, wanted.find(' '));
      if (!probe.take_word(next)) return false;
      wanted.remove_prefix(std::min(wanted.size(), next.size() + 1));
    }
    *this = probe;
    return true;
  }
  /// Moves behind the sign, and spaces before it, if it stands here.
  constexpr bool take_sign(std::string_view sign) {
    std::size_t probe = at_;
    scalepan::skip_spaces(text_, probe);
    if (!text_.substr(probe).starts_with(sign)) return false;
    at_ = probe + sign.size();
    return true;
  }

 private:
  [[nodiscard]] constexpr bool begins_with(char letter) const {
    std::size_t start = at_;
    scalepan::skip_spaces(text_, start);
    return start < text_.size() && lower(text_[start]) == letter;
  }

  std::string_view text_;
  std::size_t at_;
};

}  // namespace scalepan
