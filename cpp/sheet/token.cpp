#include "sheet/token.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"

namespace scalepan {

namespace {

constexpr std::array<std::pair<std::string_view, TokenKind>, 8> keywords{{
    {"if", TokenKind::if_word},
    {"then", TokenKind::then_word},
    {"else", TokenKind::else_word},
    {"and", TokenKind::and_word},
    {"or", TokenKind::or_word},
    {"not", TokenKind::not_word},
    {"yes", TokenKind::yes_word},
    {"no", TokenKind::no_word},
}};
constexpr std::size_t longest_keyword = 4;

/// Longer signs come before those they start with.
constexpr std::array<std::pair<std::string_view, TokenKind>, 20> signs{{
    {"+", TokenKind::plus},          {"-", TokenKind::minus},        {"*", TokenKind::times},
    {"/", TokenKind::divide},        {"(", TokenKind::open},         {")", TokenKind::close},
    {",", TokenKind::comma},         {"^", TokenKind::power},        {"<=", TokenKind::at_most},
    {">=", TokenKind::at_least},     {"<>", TokenKind::unequal},     {"<", TokenKind::less},
    {">", TokenKind::more},          {"=", TokenKind::equal},        {"\u2264", TokenKind::at_most},
    {"\u2265", TokenKind::at_least}, {"\u2260", TokenKind::unequal}, {"\u00D7", TokenKind::times},
    {"\u00F7", TokenKind::divide},   {"\u2212", TokenKind::minus},
}};

enum : std::uint8_t { starts_names = 1, in_names = 2, digits = 4, spaces = 8 };

/// What a byte may be part of: asked so often that a table pays.
constexpr std::array<std::uint8_t, 256> classes_of_bytes() {
  std::array<std::uint8_t, 256> classes{};
  for (std::size_t byte = 0; byte < 128; ++byte) {
    const char c = static_cast<char>(byte);
    if (is_letter(c) || c == '_') classes[byte] |= starts_names | in_names;
    if (is_digit(c)) classes[byte] |= digits | in_names;
    if (c == '.') classes[byte] |= in_names;
    if (is_space(c)) classes[byte] |= spaces;
  }
  return classes;
}
constexpr std::array<std::uint8_t, 256> classes = classes_of_bytes();

bool is(std::uint8_t wanted, char c) {
  return (classes[static_cast<unsigned char>(c)] & wanted) != 0;
}
bool starts_name(char c) { return is(starts_names, c); }
bool in_name(char c) { return is(in_names, c); }

/// The first position from there on whose byte is of none of the classes.
std::size_t behind(std::uint8_t passed, std::string_view text, std::size_t position) {
  while (position < text.size() && is(passed, text[position])) ++position;
  return position;
}
bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20U || c == '\x7F'; }

TokenKind kind_of(std::string_view word) {
  if (word.size() <= longest_keyword && word.size() > 1) {
    for (const auto& [known, kind] : keywords) {
      if (known == word) return kind;
    }
  }
  return TokenKind::name;
}

std::string_view letters_at(std::string_view text, std::size_t position) {
  return text.substr(position, behind(starts_names, text, position) - position);
}

}  // namespace

bool is_keyword(std::string_view word) { return kind_of(word) != TokenKind::name; }

Token TokenReader::next() {
  position_ = behind(spaces, text_, position_);
  Token token;
  token.before = before_;
  token.spot = {static_cast<std::uint32_t>(position_),
                static_cast<std::uint32_t>(position_ - shift_)};
  if (position_ >= text_.size()) return token;
  const char c = text_[position_];
  const bool point = c == '.' && position_ + 1 < text_.size() && is_digit(text_[position_ + 1]);
  if (starts_name(c)) {
    word(token);
  } else if (is_digit(c) || point) {
    literal(token);
  } else if (c == '"') {
    quoted(token);
  } else {
    sign(token);
  }
  before_ = token.kind;
  return token;
}

void TokenReader::sign(Token& token) {
  token.kind = TokenKind::unreadable;
  const std::string_view rest = text_.substr(position_);
  for (const auto& [known, kind] : signs) {
    if (rest.front() != known.front() || !rest.starts_with(known)) continue;
    token.kind = kind;
    token.text = rest.substr(0, known.size());
    position_ += known.size();
    return;
  }
}

void TokenReader::word(Token& token) {
  const std::size_t start = position_;
  position_ = behind(in_names, text_, position_);
  token.text = from(start);
  token.kind = kind_of(token.text);
  if (token.kind != TokenKind::name) return;
  const std::size_t next = behind(spaces, text_, position_);
  if (next < text_.size() && text_[next] == '(') {
    token.kind = TokenKind::function;
  } else {
    shift_ += token.text.size() - 1;
  }
}

/// A doubled quote stands for one. Control characters are refused, so that no text looks like
/// another.
void TokenReader::quoted(Token& token) {
  const std::size_t start = position_;
  token.kind = TokenKind::unreadable;
  for (std::size_t at = start + 1; at < text_.size() && !is_control(text_[at]); ++at) {
    if (text_[at] != '"') continue;
    const bool doubled = at + 1 < text_.size() && text_[at + 1] == '"';
    if (doubled) {
      ++at;
      continue;
    }
    position_ = at + 1;
    token.kind = TokenKind::text;
    token.text = from(start);
    return;
  }
}

std::string_view TokenReader::digits_at(std::size_t position) const {
  return text_.substr(position, behind(digits, text_, position) - position);
}

void TokenReader::literal(Token& token) {
  token.kind = TokenKind::literal;
  const std::size_t start = position_;
  parts_ = {};
  position_ += digits_at(start).size();
  const bool whole = position_ >= text_.size() || text_[position_] != '.';
  if (!whole) position_ += 1 + digits_at(position_ + 1).size();
  parts_.number = from(start);
  if (!(whole && mixed()) && fraction()) {
    parts_.top = std::exchange(parts_.number, {});
  } else {
    unit(position_);
  }
  token.text = from(start);
}

/// Spaces, digits, a stroke and digits behind a whole number.
bool TokenReader::mixed() {
  std::size_t start = position_;
  skip_spaces(text_, start);
  if (start == position_) return false;
  const std::string_view top = digits_at(start);
  const std::size_t stroke = start + top.size();
  if (top.empty() || stroke >= text_.size() || text_[stroke] != '/') return false;
  const std::string_view below = digits_at(stroke + 1);
  if (below.empty()) return false;
  parts_.top = top;
  parts_.below = below;
  position_ = stroke + 1 + below.size();
  return true;
}

/// A stroke, digits other than 0 and a unit behind a number: else the stroke divides.
bool TokenReader::fraction() {
  if (!parts_.below.empty() || position_ >= text_.size() || text_[position_] != '/') return false;
  const std::string_view below = digits_at(position_ + 1);
  if (below.find_first_not_of('0') == std::string_view::npos) return false;
  const std::size_t end = position_ + 1 + below.size();
  unit(end);
  if (parts_.unit.empty()) return false;
  parts_.below = below;
  return true;
}

/// A unit that starts behind spaces: moves behind it where there is one.
void TokenReader::unit(std::size_t start) {
  skip_spaces(text_, start);
  const std::size_t end = unit_end(start);
  if (end == start) return;
  parts_.unit = text_.substr(start, end - start);
  position_ = end;
}

/// Behind a word that may be a unit, `%` or a code in brackets; else the position itself.
std::size_t TokenReader::factor_end(std::size_t position) const {
  if (position >= text_.size()) return position;
  if (text_[position] == '%') return position + 1;
  if (text_[position] == '[') {
    const std::size_t close = text_.find(']', position);
    return close == std::string_view::npos ? text_.size() : close + 1;
  }
  const std::string_view word = letters_at(text_, position);
  return is_keyword(word) ? position : position + word.size();
}

/// Behind what a stroke divides a unit by: a known unit, or a bracket that starts with one; else
/// the stroke itself.
std::size_t TokenReader::divisor_end(std::size_t stroke) const {
  const bool bracket = stroke + 1 < text_.size() && text_[stroke + 1] == '(';
  const std::string_view word = letters_at(text_, stroke + (bracket ? 2 : 1));
  if (word.empty() || is_keyword(word) || !units_.knows(word)) return stroke;
  if (bracket) {
    const std::size_t close = text_.find(')', stroke);
    return close == std::string_view::npos ? stroke : close + 1;
  }
  const std::size_t end = stroke + 1 + word.size();
  return end < text_.size() && in_name(text_[end]) ? stroke : end;
}

std::size_t TokenReader::unit_end(std::size_t position) const {
  std::size_t end = factor_end(position);
  if (end == position) return position;
  while (end < text_.size()) {
    std::size_t start = end;
    std::size_t after = end;
    if (text_[end] == '/') {
      after = divisor_end(end);
    } else {
      skip_spaces(text_, start);
      if (start == end) return end;
      const std::string_view word = letters_at(text_, start);
      after = is_keyword(word) ? start : start + word.size();
    }
    if (after == start) return end;
    end = after;
  }
  return end;
}

namespace {

/// `a / 3/4 g` and `1.5/2 kg` could be read in two ways.
void expect_clear(const Token& token, const LiteralParts& parts) {
  const bool whole = parts.top.find('.') == std::string_view::npos;
  if (whole && token.before != TokenKind::divide && token.before != TokenKind::power) return;
  fail_at(token.spot.text, "formula.doubtful",
          "\"" + excerpt(token.text, 12) + "\" can be read in two ways",
          "put brackets around what belongs together");
}

std::size_t offset_of(std::string_view part, const Token& token) {
  return token.spot.text + static_cast<std::size_t>(part.data() - token.text.data());
}

Rational value_of(const Token& token, const LiteralParts& parts) {
  if (parts.below.empty()) return parse_amount_number(parts.number);
  if (parts.number.empty()) expect_clear(token, parts);
  const auto length = static_cast<std::size_t>(parts.below.end() - parts.top.begin());
  const Rational part = parse_amount_number({parts.top.data(), length});
  return parts.number.empty() ? part : parse_amount_number(parts.number) + part;
}

}  // namespace

Literal literal_of(const Token& token, const LiteralParts& parts, UnitMemo& units) {
  Literal literal;
  literal.value = at_offset(token.spot.text, [&] { return value_of(token, parts); });
  if (parts.unit.empty()) return literal;
  literal.unit = in_part(offset_of(parts.unit, token), [&] { return units.read(parts.unit); });
  literal.value *= literal.unit.ratio();
  return literal;
}

std::string written_in(const Token& token) {
  const std::string_view inside = token.text.substr(1, token.text.size() - 2);
  std::string written;
  for (std::size_t i = 0; i < inside.size(); ++i) {
    written += inside[i];
    if (inside[i] == '"') ++i;
  }
  return written;
}

}  // namespace scalepan
