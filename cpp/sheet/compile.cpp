#include "sheet/compile.hpp"

#include <algorithm>
#include <utility>

#include "exact/error.hpp"
#include "measure/nearest.hpp"
#include "sheet/check.hpp"
#include "sheet/functions.hpp"
#include "sheet/token.hpp"

namespace scalepan {

namespace {

/// What waits on the stack of operators.
enum class Waiting : std::uint8_t { sign, bracket, call, if_part, then_part, else_part };

struct Pending {
  Waiting waiting = Waiting::sign;
  TokenKind kind = TokenKind::end;  // of a sign
  bool prefix = false;
  std::uint32_t offset = 0;
  std::uint32_t arguments = 0;  // of a call: commas so far
  std::uint32_t jump = 0;       // the instruction whose argument is not known yet
  const Function* function = nullptr;
};

int binding_of(const Pending& pending) {
  if (pending.waiting == Waiting::else_part) return 0;
  if (pending.waiting != Waiting::sign) return -1;
  if (pending.prefix) return pending.kind == TokenKind::not_word ? 3 : 7;
  switch (pending.kind) {
    case TokenKind::or_word:
      return 1;
    case TokenKind::and_word:
      return 2;
    case TokenKind::plus:
    case TokenKind::minus:
      return 5;
    case TokenKind::times:
    case TokenKind::divide:
      return 6;
    default:
      return 4;
  }
}

bool is_sign(TokenKind kind) {
  return (kind >= TokenKind::plus && kind <= TokenKind::unequal && kind != TokenKind::power) ||
         kind == TokenKind::and_word || kind == TokenKind::or_word;
}

class Compiler {
 public:
  Compiler(std::string_view text, const Names& names) : text_(text), names_(names), tokens_(text) {}

  Formula compile() {
    if (text_.size() > longest_formula) {
      fail("formula.long",
           "the formula has " + std::to_string(text_.size()) + " characters, and at most " +
               std::to_string(longest_formula) + " are read",
           "give parts of it names of their own");
    }
    next();
    do {
      operand();
      while (after_operand()) {
      }
    } while (!done_);
    formula_.type = types_.back();
    formula_.type.any_zero = false;
    return std::move(formula_);
  }

 private:
  void next() { token_ = tokens_.next(); }

  [[noreturn]] void unexpected(std::string_view missing) const {
    const std::string before = token_.kind == TokenKind::end
                                   ? std::string("at the end")
                                   : "before \"" + excerpt(token_.text, 20) + "\"";
    fail_at(token_.offset, "formula.unreadable", std::string(missing) + " is missing " + before);
  }

  void push(const Pending& pending) {
    if (pending_.size() >= deepest_formula) {
      fail_at(pending.offset, "formula.deep",
              "more than " + std::to_string(deepest_formula) + " parts stand in one another",
              "give inner parts names of their own");
    }
    pending_.push_back(pending);
  }

  /// Signs and brackets in front of a value, and the value.
  void operand() {
    while (true) {
      Pending pending;
      pending.offset = token_.offset;
      switch (token_.kind) {
        case TokenKind::minus:
        case TokenKind::not_word:
          pending.kind = token_.kind;
          pending.prefix = true;
          break;
        case TokenKind::open:
          pending.waiting = Waiting::bracket;
          break;
        case TokenKind::if_word:
          pending.waiting = Waiting::if_part;
          break;
        default:
          if (!value()) continue;
          return;
      }
      push(pending);
      next();
    }
  }

  /// False where a function's first argument comes first.
  bool value() {
    const Token token = token_;
    switch (token.kind) {
      case TokenKind::literal:
        next();
        literal(token);
        return true;
      case TokenKind::yes_word:
      case TokenKind::no_word:
        next();
        constant(token.kind == TokenKind::yes_word ? 1 : 0, flag_type(), token.offset);
        return true;
      case TokenKind::name:
        next();
        if (token_.kind == TokenKind::open) {
          call(token);
          return false;
        }
        name(token);
        return true;
      default:
        unexpected("a value");
    }
  }

  void literal(const Token& token) {
    ValueType type = quantity_type(token.unit);
    type.any_zero = token.value.is_zero() && token.unit == Unit();
    constant(token.value, type, token.offset);
  }

  void constant(const Rational& value, const ValueType& type, std::uint32_t offset) {
    auto known = std::ranges::find(formula_.constants, value);
    if (formula_.constants.size() > few_constants) known = formula_.constants.end();
    const auto index = static_cast<std::uint32_t>(known - formula_.constants.begin());
    if (known == formula_.constants.end()) formula_.constants.push_back(value);
    emit(Operation::constant, index, offset);
    grow(type);
  }

  void name(const Token& token) {
    const auto found = names_.find(token.text);
    if (!found) {
      fail_at(token.offset, "formula.name", "no cell is called \"" + excerpt(token.text) + "\"",
              nearest_hint(names_.nearest(token.text)));
    }
    const auto known = std::ranges::find(formula_.inputs, found->cell);
    const auto index = static_cast<std::uint32_t>(known - formula_.inputs.begin());
    if (known == formula_.inputs.end()) formula_.inputs.push_back(found->cell);
    emit(Operation::input, index, token.offset);
    grow(found->type);
  }

  void call(const Token& token) {
    const Function* function = function_named(token.text);
    if (function == nullptr) {
      const std::vector<std::string_view> known = function_names();
      fail_at(token.offset, "formula.function",
              "no function is called \"" + excerpt(token.text) + "\"",
              nearest_hint(nearest_names(token.text, known)));
    }
    Pending pending;
    pending.waiting = Waiting::call;
    pending.offset = token.offset;
    pending.function = function;
    push(pending);
    next();
  }

  /// True while another value may not follow yet.
  bool after_operand() {
    if (token_.kind == TokenKind::power) {
      power();
      return true;
    }
    if (is_sign(token_.kind)) {
      Pending pending;
      pending.kind = token_.kind;
      pending.offset = token_.offset;
      reduce_to(binding_of(pending));
      push(pending);
      next();
      return false;
    }
    reduce_to(0);
    return close();
  }

  /// The part is complete: a bracket, a comma, `then`, `else` or the end comes.
  bool close() {
    if (pending_.empty()) {
      if (token_.kind != TokenKind::end) unexpected("a sign");
      done_ = true;
      return false;
    }
    Pending& top = pending_.back();
    switch (top.waiting) {
      case Waiting::bracket:
        expect(TokenKind::close, "\")\"");
        pending_.pop_back();
        next();
        return true;
      case Waiting::call:
        ++top.arguments;
        if (token_.kind == TokenKind::comma) {
          next();
          return false;
        }
        expect(TokenKind::close, "\")\"");
        finish_call(top);
        pending_.pop_back();
        next();
        return true;
      case Waiting::if_part:
        expect(TokenKind::then_word, "\"then\"");
        begin_then(top);
        return false;
      default:
        expect(TokenKind::else_word, "\"else\"");
        begin_else(top);
        return false;
    }
  }

  void expect(TokenKind kind, std::string_view missing) const {
    if (token_.kind != kind) unexpected(missing);
  }

  void begin_then(Pending& part) {
    expect_flag(types_.back(), "\"if\"", part.offset);
    part.waiting = Waiting::then_part;
    part.jump = emit(Operation::jump_if_not, 0, part.offset);
    shrink(1);
    next();
  }

  void begin_else(Pending& part) {
    const std::uint32_t jump = emit(Operation::jump, 0, token_.offset);
    formula_.code[part.jump].argument = here();
    part.waiting = Waiting::else_part;
    part.jump = jump;
    part.offset = token_.offset;
    --depth_;  // one of the two values is there in the end
    next();
  }

  void power() {
    const std::uint32_t offset = token_.offset;
    next();
    const bool below = token_.kind == TokenKind::minus;
    if (below) next();
    const bool whole = token_.kind == TokenKind::literal && token_.unit == Unit() &&
                       token_.value.is_integer() && token_.value <= Rational(largest_power);
    if (!whole) {
      fail_at(token_.offset, "formula.power",
              "what follows \"^\" must be a whole number up to " + std::to_string(largest_power));
    }
    const auto exponent = static_cast<std::uint32_t>(token_.value.word_numerator());
    ValueType& type = types_.back();
    type = in_part(offset, [&] {
      return power_type(type, below ? -static_cast<int>(exponent) : static_cast<int>(exponent));
    });
    emit(Operation::power, exponent, offset);
    if (below) emit(Operation::reciprocal, 0, offset);
    next();
  }

  void reduce_to(int binding) {
    while (!pending_.empty() && binding_of(pending_.back()) >= binding) {
      const Pending done = pending_.back();
      pending_.pop_back();
      if (done.waiting == Waiting::else_part) {
        finish_choice(done);
      } else if (done.prefix) {
        finish_prefix(done);
      } else {
        finish_sign(done);
      }
    }
  }

  void finish_prefix(const Pending& done) {
    const bool denied = done.kind == TokenKind::not_word;
    types_.back() = in_part(done.offset, [&] {
      return denied ? denied_type(types_.back()) : negated_type(types_.back());
    });
    emit(denied ? Operation::invert : Operation::negate, 0, done.offset);
  }

  void finish_sign(const Pending& done) {
    const ValueType right = types_.back();
    shrink(1);
    types_.back() =
        in_part(done.offset, [&] { return type_of_two(done.kind, types_.back(), right); });
    const bool turned = done.kind == TokenKind::more || done.kind == TokenKind::at_least;
    emit(operation_of(done.kind), 0, done.offset);
    if (turned) emit(Operation::invert, 0, done.offset);
  }

  /// `a > b` is not `a <= b`.
  static Operation operation_of(TokenKind kind) {
    switch (kind) {
      case TokenKind::plus:
        return Operation::add;
      case TokenKind::minus:
        return Operation::subtract;
      case TokenKind::times:
        return Operation::multiply;
      case TokenKind::divide:
        return Operation::divide;
      case TokenKind::less:
      case TokenKind::at_least:
        return Operation::less;
      case TokenKind::at_most:
      case TokenKind::more:
        return Operation::at_most;
      case TokenKind::equal:
        return Operation::equal;
      case TokenKind::unequal:
        return Operation::unequal;
      case TokenKind::and_word:
        return Operation::both;
      default:
        return Operation::either;
    }
  }

  void finish_choice(const Pending& done) {
    const ValueType otherwise = types_.back();
    types_.pop_back();
    types_.back() =
        in_part(done.offset, [&] { return alike_type("\"else\"", types_.back(), otherwise); });
    formula_.code[done.jump].argument = here();
  }

  void finish_call(const Pending& call) {
    const Function& function = *call.function;
    if (call.arguments < function.fewest || call.arguments > function.most) {
      fail_at(call.offset, "formula.arguments",
              std::string(function.name) + " is given " + std::to_string(call.arguments) +
                  (call.arguments == 1 ? " value" : " values"),
              "it is written " + std::string(function.shape));
    }
    const auto first = types_.end() - call.arguments;
    const std::string name = "\"" + std::string(function.name) + "\"";
    ValueType type = in_part(call.offset, [&] { return negated_type(*first); });
    for (auto other = first + 1; other != types_.end(); ++other) {
      type = in_part(call.offset, [&] { return alike_type(name, type, *other); });
    }
    shrink(call.arguments - 1);
    types_.back() = type;
    emit(function.operation, call.arguments, call.offset);
  }

  [[nodiscard]] std::uint32_t here() const {
    return static_cast<std::uint32_t>(formula_.code.size());
  }

  std::uint32_t emit(Operation operation, std::uint32_t argument, std::uint32_t offset) {
    formula_.code.push_back({operation, argument, offset});
    return here() - 1;
  }

  void grow(const ValueType& type) {
    types_.push_back(type);
    formula_.stack = std::max(formula_.stack, ++depth_);
  }
  void shrink(std::uint32_t by) {
    types_.resize(types_.size() - by);
    depth_ -= by;
  }

  static constexpr std::size_t few_constants = 16;
  static constexpr int largest_power = 99;

  std::string_view text_;
  const Names& names_;
  TokenReader tokens_;
  Token token_;
  bool done_ = false;
  std::uint32_t depth_ = 0;
  std::vector<Pending> pending_;
  std::vector<ValueType> types_;  // of the values on the stack, and of each open `then`
  Formula formula_;
};

}  // namespace

Formula compile(std::string_view text, const Names& names) {
  return Compiler(text, names).compile();
}

}  // namespace scalepan
