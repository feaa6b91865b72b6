#include "sheet/token.hpp"

#include <array>
#include <utility>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/unit_table.hpp"
#include "measure/unit_text.hpp"

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

/// Longer signs come before those they start with.
constexpr std::array<std::pair<std::string_view, TokenKind>, 19> signs{{
    {"<=", TokenKind::at_most},     {">=", TokenKind::at_least},     {"<>", TokenKind::unequal},
    {"\u2264", TokenKind::at_most}, {"\u2265", TokenKind::at_least}, {"\u2260", TokenKind::unequal},
    {"\u00D7", TokenKind::times},   {"\u00F7", TokenKind::divide},   {"\u2212", TokenKind::minus},
    {"<", TokenKind::less},         {">", TokenKind::more},          {"=", TokenKind::equal},
    {"+", TokenKind::plus},         {"-", TokenKind::minus},         {"*", TokenKind::times},
    {"/", TokenKind::divide},       {"^", TokenKind::power},         {"(", TokenKind::open},
    {",", TokenKind::comma},
}};

bool starts_name(char c) { return is_letter(c) || c == '_'; }
bool in_name(char c) { return starts_name(c) || is_digit(c) || c == '.'; }

std::string_view letters_at(std::string_view text, std::size_t position) {
  std::size_t end = position;
  while (end < text.size() && starts_name(text[end])) ++end;
  return text.substr(position, end - position);
}

}  // namespace

bool is_keyword(std::string_view word) {
  for (const auto& [known, kind] : keywords) {
    if (known == word) return true;
  }
  return false;
}

bool names_unit(std::string_view word) {
  return find_unit(word, Measures::metric, UnitScope::all) != nullptr;
}

Token TokenReader::sign(TokenKind kind, std::size_t length) {
  Token token{kind, static_cast<std::uint32_t>(position_), text_.substr(position_, length)};
  position_ += length;
  return token;
}

Token TokenReader::next() {
  while (position_ < text_.size() && is_space(text_[position_])) ++position_;
  Token token;
  token.offset = static_cast<std::uint32_t>(position_);
  if (position_ >= text_.size()) return token;
  const char c = text_[position_];
  const bool point = c == '.' && position_ + 1 < text_.size() && is_digit(text_[position_ + 1]);
  if (is_digit(c) || point) {
    token = literal();
  } else if (starts_name(c)) {
    token = word();
  } else if (c == ')') {
    token = sign(TokenKind::close, 1);
  } else {
    const std::string_view rest = text_.substr(position_);
    for (const auto& [known, kind] : signs) {
      if (!rest.starts_with(known)) continue;
      token = sign(kind, known.size());
      break;
    }
  }
  if (token.kind == TokenKind::end) {
    fail_at(position_, "formula.unreadable",
            "\"" + excerpt(text_.substr(position_), 8) + "\" means nothing in a formula");
  }
  before_ = token.kind;
  return token;
}

Token TokenReader::word() {
  const std::size_t start = position_;
  while (position_ < text_.size() && in_name(text_[position_])) ++position_;
  Token token{TokenKind::name, static_cast<std::uint32_t>(start),
              text_.substr(start, position_ - start)};
  for (const auto& [known, kind] : keywords) {
    if (known == token.text) token.kind = kind;
  }
  return token;
}

Rational TokenReader::digits() {
  const std::size_t start = position_;
  while (position_ < text_.size() && is_digit(text_[position_])) ++position_;
  const std::string_view read = text_.substr(start, position_ - start);
  return in_part(start, [&] { return parse_amount_number(read); });
}

/// Whether digits, a stroke and digits follow without spaces.
bool TokenReader::starts_fraction(std::size_t position) const {
  const std::size_t start = position;
  while (position < text_.size() && is_digit(text_[position])) ++position;
  return position > start && position + 1 < text_.size() && text_[position] == '/' &&
         is_digit(text_[position + 1]);
}

/// `fraction`: whether a stroke stands in it.
Rational TokenReader::number(Token& token, bool& fraction) {
  const std::size_t start = position_;
  while (position_ < text_.size() && is_digit(text_[position_])) ++position_;
  const bool whole = position_ >= text_.size() || text_[position_] != '.';
  if (!whole) {
    ++position_;
    while (position_ < text_.size() && is_digit(text_[position_])) ++position_;
  }
  const std::string_view read = text_.substr(start, position_ - start);
  Rational value = in_part(start, [&] { return parse_amount_number(read); });
  token.text = read;
  std::size_t gap = position_;
  skip_spaces(text_, gap);
  if (whole && gap > position_ && starts_fraction(gap)) {
    position_ = gap;
    const Rational top = digits();
    ++position_;
    fraction = true;
    return value + top / digits();
  }
  return value;
}

Token TokenReader::literal() {
  Token token{TokenKind::literal, static_cast<std::uint32_t>(position_), {}};
  const std::size_t start = position_;
  bool mixed = false;
  token.value = number(token, mixed);
  const std::size_t after_number = position_;
  const bool stroke = !mixed && position_ + 1 < text_.size() && text_[position_] == '/' &&
                      is_digit(text_[position_ + 1]);
  if (stroke) {
    ++position_;
    const Rational below = digits();
    std::size_t probe = position_;
    skip_spaces(text_, probe);
    const bool has_unit = unit_end(probe) > probe && !below.is_zero();
    if (has_unit) {
      expect_clear(token, token.text.find('.') == std::string_view::npos);
      token.value /= below;
    } else {
      position_ = after_number;
    }
  }
  unit(token);
  token.text = text_.substr(start, position_ - start);
  return token;
}

/// Of a fraction with a unit: `a / 3/4 g` and `1.5/2 kg` could be read in two ways.
void TokenReader::expect_clear(const Token& token, bool whole) const {
  if (whole && before_ != TokenKind::divide && before_ != TokenKind::power) return;
  fail_at(token.offset, "formula.doubtful",
          "\"" + excerpt(text_.substr(token.offset), 12) + "\" can be read in two ways",
          "put brackets around what belongs together");
}

/// The end of the unit that starts here, or the position itself where none does.
std::size_t TokenReader::unit_end(std::size_t position) const {
  const std::string_view first = letters_at(text_, position);
  const bool sign = position < text_.size() && (text_[position] == '%' || text_[position] == '[');
  if ((first.empty() && !sign) || is_keyword(first)) return position;
  std::size_t end = position + (sign ? 1 : first.size());
  if (sign && text_[position] == '[') {
    while (end < text_.size() && text_[end - 1] != ']') ++end;
  }
  while (end < text_.size()) {
    std::size_t probe = end;
    const bool stroke = text_[probe] == '/';
    if (stroke && probe + 1 < text_.size() && text_[probe + 1] == '(') {
      const std::size_t close = text_.find(')', probe);
      const std::string_view inside = letters_at(text_, probe + 2);
      if (close == std::string_view::npos || !names_unit(inside)) return end;
      end = close + 1;
      continue;
    }
    if (stroke) {
      ++probe;
    } else {
      skip_spaces(text_, probe);
      if (probe == end) return end;
    }
    const std::string_view next = letters_at(text_, probe);
    const std::size_t after = probe + next.size();
    const bool goes_on = after < text_.size() && in_name(text_[after]);
    if (next.empty() || is_keyword(next) || (stroke && (goes_on || !names_unit(next)))) return end;
    end = after;
  }
  return end;
}

void TokenReader::unit(Token& token) {
  std::size_t start = position_;
  skip_spaces(text_, start);
  const std::size_t end = unit_end(start);
  if (end == start) return;
  const std::string_view written = text_.substr(start, end - start);
  token.unit = in_part(start, [&] { return parse_unit(written); });
  token.value *= token.unit.ratio();
  position_ = end;
}

}  // namespace scalepan
