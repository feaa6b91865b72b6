// What is done with a part of a formula once all of it has been read.
#include <span>
#include <string>

#include "exact/error.hpp"
#include "sheet/check.hpp"
#include "sheet/parser.hpp"

namespace scalepan {

namespace {

constexpr int largest_power = 99;

[[noreturn]] void fail_doubtful(const Spot& spot, std::string_view what) {
  fail_at(spot.text, "formula.doubtful", std::string(what) + " can be read in two ways",
          "put brackets around what belongs together");
}

/// `a > b` is not `a <= b`.
Operation operation_of(TokenKind kind) {
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

}  // namespace

/// The number behind `^`.
void Parser::power() {
  const Spot spot = token_.spot;
  if (token_.before == TokenKind::literal && !given_->tokens.parts().unit.empty()) {
    fail_doubtful(spot, "\"^\" behind a unit");
  }
  next();
  const bool below = token_.kind == TokenKind::minus;
  if (below) next();
  const LiteralParts& parts = given_->tokens.parts();
  const bool number = token_.kind == TokenKind::literal;
  if (number && parts.number.empty()) fail_doubtful(spot, "\"^\" before a fraction with a unit");
  const bool digits =
      number && token_.text == parts.number && parts.number.find('.') == std::string_view::npos;
  const Rational read = digits ? literal_of(token_, parts, given_->units).value : Rational(-1);
  if (read.sign() < 0 || read > Rational(largest_power)) {
    fail_at(token_.spot.text, "formula.power",
            "what follows \"^\" must be a whole number up to " + std::to_string(largest_power));
  }
  const auto exponent = static_cast<int>(read.word_numerator());
  ValueType& type = types_.back();
  const ValueType base = type;
  type = in_part(spot.text, [&] { return power_type(base, below ? -exponent : exponent); });
  const Sides sides{type.shown, base.shown};
  emitter_.one(Operation::power, static_cast<std::uint32_t>(exponent), spot.shape, sides);
  if (below) {
    const Unit raised = in_part(spot.text, [&] { return power_type(base, exponent); }).shown;
    emitter_.one(Operation::reciprocal, 0, spot.shape, {raised, raised});
  }
  next();
  if (token_.kind == TokenKind::power) fail_doubtful(token_.spot, "\"^\" behind \"^\"");
}

void Parser::finish_prefix(const Pending& done) {
  const bool denied = done.kind == TokenKind::not_word;
  ValueType& type = types_.back();
  type = in_part(done.spot.text, [&] { return denied ? denied_type(type) : negated_type(type); });
  emitter_.one(denied ? Operation::invert : Operation::negate, 0, done.spot.shape,
               {type.shown, type.shown});
}

void Parser::finish_sign(const Pending& done) {
  const ValueType right = types_.back();
  types_.pop_back();
  ValueType& left = types_.back();
  const Sides sides{left.shown, right.shown};
  left = in_part(done.spot.text, [&] { return type_of_two(done.kind, left, right); });
  emitter_.two(operation_of(done.kind), done.spot.shape, sides);
  const bool turned = done.kind == TokenKind::more || done.kind == TokenKind::at_least;
  if (turned) emitter_.one(Operation::invert, 0, done.spot.shape);
}

void Parser::finish_choice(const Pending& done) {
  const ValueType otherwise = types_.back();
  types_.pop_back();
  ValueType& type = types_.back();
  type = in_part(done.spot.text, [&] { return alike_type("\"else\"", type, otherwise); });
  emitter_.land_here(done.jump);
}

void Parser::finish_call(const Pending& call) {
  const Function& function = *call.function;
  const std::uint32_t count = call.arguments;
  if (count < function.fewest || count > function.most) {
    fail_at(call.spot.text, "formula.arguments",
            std::string(function.name) + " is given " + std::to_string(count) +
                (count == 1 ? " value" : " values"),
            "it is written " + std::string(function.shape));
  }
  const auto first = types_.end() - count;
  const Sides sides{first->shown, types_.back().shown};
  const ValueType type = in_part(call.spot.text, [&] {
    return function.type(function.name, std::span<const ValueType>(first, types_.end()));
  });
  types_.erase(first + 1, types_.end());
  types_.back() = type;
  switch (function.operation) {
    case Operation::call:
      emitter_.call(&function, count, call.spot.shape);
      break;
    case Operation::least:
    case Operation::greatest:
      emitter_.several(function.operation, count, call.spot.shape);
      break;
    case Operation::absolute:
      emitter_.one(function.operation, 0, call.spot.shape, sides);
      break;
    default:
      emitter_.two(function.operation, call.spot.shape, sides);
  }
}

}  // namespace scalepan
