// Words of a formula.
//
//   number  = digits [ "." digits ] | "." digits
//   literal = number [ unit ] | digits "/" digits unit | digits " " digits "/" digits [ unit ]
//   name    = letter { letter | digit | "_" | "." }
//
// A unit follows its number after spaces or at once. `/` belongs to it where a unit follows without
// a space, as in `1.20 GBP/kg`; elsewhere it divides.
#pragma once

#include <cstdint>
#include <string_view>

#include "exact/rational.hpp"
#include "measure/unit.hpp"

namespace scalepan {

enum class TokenKind : std::uint8_t {
  end,
  literal,
  name,
  open,
  close,
  comma,
  plus,
  minus,
  times,
  divide,
  power,
  less,
  at_most,
  more,
  at_least,
  equal,
  unequal,
  if_word,
  then_word,
  else_word,
  and_word,
  or_word,
  not_word,
  yes_word,
  no_word,
};

struct Token {
  TokenKind kind = TokenKind::end;
  std::uint32_t offset = 0;
  std::string_view text;  // as written
  Rational value{};       // of a literal, in the coherent unit
  Unit unit{};
};

/// `if`, `and`, `yes` and the like.
[[nodiscard]] bool is_keyword(std::string_view word);
/// Any unit, whatever measures it needs.
[[nodiscard]] bool names_unit(std::string_view word);

/// Reads a formula word by word.
class TokenReader {
 public:
  explicit TokenReader(std::string_view text) : text_(text) {}

  /// Throws `formula.unreadable`, `formula.doubtful`, and the errors of the unit reader, with an
  /// offset.
  [[nodiscard]] Token next();

 private:
  Token sign(TokenKind kind, std::size_t length);
  Token word();
  Token literal();
  [[nodiscard]] Rational digits();
  [[nodiscard]] bool starts_fraction(std::size_t position) const;
  Rational number(Token& token, bool& fraction);
  void unit(Token& token);
  [[nodiscard]] std::size_t unit_end(std::size_t position) const;
  void expect_clear(const Token& token, bool fraction) const;

  std::string_view text_;
  std::size_t position_ = 0;
  TokenKind before_ = TokenKind::end;
};

}  // namespace scalepan
