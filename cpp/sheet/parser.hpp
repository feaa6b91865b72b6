// The grammar of formulas, read with a stack of what waits, so that it never recurses.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "sheet/compile.hpp"
#include "sheet/emitter.hpp"
#include "sheet/shapes.hpp"
#include "sheet/token.hpp"

namespace scalepan {

/// Kept from formula to formula, so that its vectors are.
class Parser {
 public:
  /// Of a text that was scanned, as far as that went. Throws what `Compiler::compile` throws.
  void parse(std::string_view text, const Scan& scan, const FunctionTable& functions,
             const Names& names, UnitMemo& units, Programme& programme);

 private:
  enum class Waiting : std::uint8_t { sign, bracket, call, if_part, then_part, else_part };

  /// What waits for what comes behind it.
  struct Pending {
    Waiting waiting = Waiting::sign;
    TokenKind kind = TokenKind::end;  // of a sign
    bool prefix = false;
    Spot spot;
    std::uint32_t arguments = 0;  // of a call: commas so far
    std::uint32_t jump = 0;       // the instruction whose argument is not known yet
    const Function* function = nullptr;
  };

  /// What one formula is read with.
  struct Given {
    const Scan& scan;
    const FunctionTable& functions;
    const Names& names;
    UnitMemo& units;
    TokenReader& tokens;
    std::string_view text;
  };

  static int binding_of(const Pending& pending);
  void next();
  [[noreturn]] void unexpected(std::string_view missing) const;
  void expect(TokenKind kind, std::string_view missing) const;
  void push(const Pending& pending);

  void operand();
  bool value();
  void literal(const Token& token);
  [[noreturn]] void fail_unknown(const Token& token) const;
  void name(const Token& token);
  bool call(const Token& token);
  void column(const Token& sum);

  bool after_operand();
  bool close();
  void begin_then(Pending& part);
  void begin_else(Pending& part);
  void power();
  void reduce_to(int binding);
  void finish_prefix(const Pending& done);
  void finish_sign(const Pending& done);
  void finish_choice(const Pending& done);
  void finish_call(const Pending& call);

  const Given* given_ = nullptr;
  Emitter emitter_;
  Token token_;
  bool done_ = false;
  std::size_t names_read_ = 0;
  std::vector<Pending> pending_;
  std::vector<ValueType> types_;  // of the values so far, and of each open `then`
};

}  // namespace scalepan
