#include "sheet/parser.hpp"

#include <string>

#include "exact/error.hpp"
#include "measure/nearest.hpp"
#include "sheet/check.hpp"

namespace scalepan {

namespace {

bool is_sign(TokenKind kind) {
  return (kind >= TokenKind::plus && kind <= TokenKind::unequal && kind != TokenKind::power) ||
         kind == TokenKind::and_word || kind == TokenKind::or_word;
}

}  // namespace

int Parser::binding_of(const Pending& pending) {
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

void Parser::parse(std::string_view text, const Scan& scan, const FunctionTable& functions,
                   const Names& names, UnitMemo& units, Programme& programme) {
  TokenReader tokens(text, units);
  const Given given{scan, functions, names, units, tokens, text};
  given_ = &given;
  emitter_.clear();
  pending_.clear();
  types_.clear();
  names_read_ = 0;
  done_ = false;
  next();
  do {
    operand();
    while (after_operand()) {
    }
  } while (!done_);
  programme.type = types_.back();
  programme.type.any_zero = false;
  emitter_.finish(programme);
}

void Parser::next() {
  token_ = given_->tokens.next();
  if (token_.kind != TokenKind::unreadable) return;
  const std::string_view rest = given_->text.substr(token_.spot.text);
  if (rest.starts_with('"')) {
    fail_at(token_.spot.text, "formula.unreadable",
            "the text " + excerpt(rest, 20) + " is not closed in its line",
            "a text stands between two \"");
  }
  fail_at(token_.spot.text, "formula.unreadable",
          "\"" + excerpt(rest, 8) + "\" means nothing in a formula");
}

void Parser::unexpected(std::string_view missing) const {
  const std::string before = token_.kind == TokenKind::end
                                 ? std::string("at the end")
                                 : "before \"" + excerpt(token_.text, 20) + "\"";
  fail_at(token_.spot.text, "formula.unreadable", std::string(missing) + " is missing " + before);
}

void Parser::expect(TokenKind kind, std::string_view missing) const {
  if (token_.kind != kind) unexpected(missing);
}

void Parser::push(const Pending& pending) {
  if (pending_.size() >= deepest_formula) {
    fail_at(pending.spot.text, "formula.deep",
            "more than " + std::to_string(deepest_formula) + " parts stand in one another",
            "give inner parts names of their own");
  }
  pending_.push_back(pending);
}

/// Signs and brackets in front of a value, and the value.
void Parser::operand() {
  while (true) {
    Pending pending;
    pending.spot = token_.spot;
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
bool Parser::value() {
  const Token token = token_;
  switch (token.kind) {
    case TokenKind::literal:
      literal(token);
      next();
      return true;
    case TokenKind::text:
      next();
      emitter_.thing(std::make_shared<Text>(written_in(token)), token.spot.shape);
      types_.push_back(text_type());
      return true;
    case TokenKind::yes_word:
    case TokenKind::no_word:
      next();
      emitter_.number(token.kind == TokenKind::yes_word ? 1 : 0, token.spot.shape);
      types_.push_back(flag_type());
      return true;
    case TokenKind::name:
      next();
      name(token);
      return true;
    case TokenKind::function:
      next();
      return call(token);
    default:
      unexpected("a value");
  }
}

void Parser::literal(const Token& token) {
  const Literal read = literal_of(token, given_->tokens.parts(), given_->units);
  ValueType type = quantity_type(read.unit);
  type.any_zero = read.value.is_zero() && read.unit == Unit();
  emitter_.number(read.value, token.spot.shape);
  types_.push_back(type);
}

void Parser::fail_unknown(const Token& token) const {
  const std::string name(token.text);
  if (given_->names.find_total(name)) {
    fail_at(token.spot.text, "formula.column",
            "\"" + name + "\" is a column of rows, and a value is needed",
            "its total is sum(" + name + ")");
  }
  fail_at(token.spot.text, "formula.name", "no cell is called \"" + excerpt(name) + "\"",
          nearest_hint(given_->names.nearest(name)));
}

void Parser::name(const Token& token) {
  const Scan& scan = given_->scan;
  if (names_read_ == scan.occurrences().size()) fail_unknown(token);
  const std::uint32_t input = scan.occurrences()[names_read_++];
  emitter_.input(input, token.spot.shape);
  types_.push_back(scan.types()[input]);
}

/// True where the call is complete.
bool Parser::call(const Token& token) {
  const Function* function = given_->functions.named(token.text);
  if (function == nullptr) {
    fail_at(token.spot.text, "formula.function",
            "no function is called \"" + excerpt(token.text) + "\"",
            nearest_hint(nearest_names(token.text, given_->functions.names())));
  }
  if (function->operation == Operation::load) {
    column(token);
    return true;
  }
  Pending pending;
  pending.waiting = Waiting::call;
  pending.spot = token.spot;
  pending.function = function;
  push(pending);
  next();
  return false;
}

/// Behind `sum`: a column in brackets, whose total is a cell.
void Parser::column(const Token& sum) {
  next();
  const Token column = token_;
  if (column.kind == TokenKind::end || column.kind == TokenKind::close) unexpected("a value");
  const bool known =
      column.kind == TokenKind::name && names_read_ < given_->scan.occurrences().size();
  if (!known) {
    fail_at(column.spot.text, "formula.column",
            "\"sum\" needs a column of rows, and \"" + excerpt(column.text, 20) + "\" is none",
            column.kind == TokenKind::name ? nearest_hint(given_->names.nearest(column.text))
                                           : "it is written sum(column)");
  }
  next();
  if (is_sign(token_.kind) || token_.kind == TokenKind::comma || token_.kind == TokenKind::power) {
    fail_at(token_.spot.text, "formula.column",
            "\"sum\" needs one column of rows, and more stands in its brackets",
            "it is written sum(column)");
  }
  expect(TokenKind::close, "\")\"");
  name(column);
  static_cast<void>(in_part(sum.spot.text, [&] { return negated_type(types_.back()); }));
  next();
}

/// True while another value may not follow yet.
bool Parser::after_operand() {
  if (token_.kind == TokenKind::power) {
    power();
    return true;
  }
  if (is_sign(token_.kind)) {
    Pending pending;
    pending.kind = token_.kind;
    pending.spot = token_.spot;
    reduce_to(binding_of(pending));
    push(pending);
    next();
    return false;
  }
  reduce_to(0);
  return close();
}

/// The part is complete: a bracket, a comma, `then`, `else` or the end comes.
bool Parser::close() {
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

void Parser::begin_then(Pending& part) {
  expect_flag(types_.back(), "\"if\"", part.spot.text);
  part.waiting = Waiting::then_part;
  part.jump = emitter_.jump_if_not(part.spot.shape);
  types_.pop_back();
  next();
}

void Parser::begin_else(Pending& part) {
  const std::uint32_t jump = emitter_.jump(token_.spot.shape);
  emitter_.land_here(part.jump);
  part.waiting = Waiting::else_part;
  part.jump = jump;
  part.spot = token_.spot;
  next();
}

void Parser::reduce_to(int binding) {
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

}  // namespace scalepan
