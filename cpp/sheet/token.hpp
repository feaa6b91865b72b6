// Words of a formula: docs/formulas.md has their grammar.
//
// Where words begin and end is found first, by itself, since that is all that a formula of a known
// shape needs; what a literal is worth is read afterwards.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "exact/rational.hpp"
#include "measure/unit.hpp"
#include "sheet/unit_memo.hpp"

namespace scalepan {

enum class TokenKind : std::uint8_t {
  end,
  unreadable,
  literal,
  text,
  name,
  function,  // a name with a bracket behind it
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

/// A place in the text of a formula, and the same in its shape, where each name is one byte.
struct Spot {
  std::uint32_t text = 0;
  std::uint32_t shape = 0;
};

struct Token {
  TokenKind kind = TokenKind::end;
  TokenKind before = TokenKind::end;
  Spot spot;
  std::string_view text;  // as written
};

/// `number`, `number top/below` or `top/below`, and the unit behind it.
struct LiteralParts {
  std::string_view number{};
  std::string_view top{};
  std::string_view below{};
  std::string_view unit{};
};

struct Literal {
  Rational value;  // in the coherent unit
  Unit unit;
};

/// `if`, `and`, `yes` and the like.
[[nodiscard]] bool is_keyword(std::string_view word);

/// Reads a formula word by word.
class TokenReader {
 public:
  TokenReader(std::string_view text, UnitMemo& units) : text_(text), units_(units) {}

  /// `unreadable` where no word starts.
  [[nodiscard]] Token next();
  /// Of the last literal.
  [[nodiscard]] const LiteralParts& parts() const { return parts_; }

 private:
  void sign(Token& token);
  void word(Token& token);
  void quoted(Token& token);
  void literal(Token& token);
  bool mixed();
  bool fraction();
  void unit(std::size_t start);
  [[nodiscard]] std::string_view digits_at(std::size_t position) const;
  [[nodiscard]] std::size_t factor_end(std::size_t position) const;
  [[nodiscard]] std::size_t divisor_end(std::size_t stroke) const;
  [[nodiscard]] std::size_t unit_end(std::size_t position) const;
  [[nodiscard]] std::string_view from(std::size_t start) const {
    return text_.substr(start, position_ - start);
  }

  std::string_view text_;
  UnitMemo& units_;
  std::size_t position_ = 0;
  std::size_t shift_ = 0;  // by how much the shape is shorter
  TokenKind before_ = TokenKind::end;
  LiteralParts parts_;
};

/// Throws `formula.doubtful`, and the errors of the number and unit readers, with an offset.
[[nodiscard]] Literal literal_of(const Token& token, const LiteralParts& parts, UnitMemo& units);
/// What stands between the quotes.
[[nodiscard]] std::string written_in(const Token& token);

}  // namespace scalepan
