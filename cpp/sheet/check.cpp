#include "sheet/check.hpp"

#include <string>

#include "exact/error.hpp"

namespace scalepan {

namespace {

std::string name_of(TokenKind sign) {
  switch (sign) {
    case TokenKind::plus:
      return "\"+\"";
    case TokenKind::minus:
      return "\"-\"";
    case TokenKind::times:
      return "\"*\"";
    case TokenKind::divide:
      return "\"/\"";
    case TokenKind::less:
      return "\"<\"";
    case TokenKind::at_most:
      return "\"<=\"";
    case TokenKind::more:
      return "\">\"";
    case TokenKind::at_least:
      return "\">=\"";
    case TokenKind::equal:
      return "\"=\"";
    case TokenKind::unequal:
      return "\"<>\"";
    case TokenKind::and_word:
      return "\"and\"";
    default:
      return "\"or\"";
  }
}

[[noreturn]] void fail_sides(std::string_view code, std::string_view what, const ValueType& left,
                             const ValueType& right, std::string hint) {
  fail(code,
       std::string(what) + " meets " + left.name() + " on its left and " + right.name() +
           " on its right",
       std::move(hint));
}

/// What links amounts that differ in their stages alone.
std::string stage_hint(Dimension left, Dimension right) {
  if (!(left.without_stages() == right.without_stages())) return {};
  if (!left.has_stages() || !right.has_stages()) return "state the stage of both";
  const std::string a(symbol_of(left.stage()));
  const std::string b(symbol_of(right.stage()));
  if (a.empty() || b.empty()) return {};
  return "a share in " + b + "/" + a + " turns the left into the right";
}

[[noreturn]] void fail_dimension(std::string_view what, const ValueType& left,
                                 const ValueType& right) {
  fail_sides("formula.dimension", what, left, right,
             stage_hint(left.dimension(), right.dimension()));
}

ValueType product_type(TokenKind sign, const ValueType& left, const ValueType& right) {
  if (left.kind != ValueKind::quantity || right.kind != ValueKind::quantity) {
    fail_sides("formula.type", name_of(sign), left, right, {});
  }
  const bool divides = sign == TokenKind::divide;
  if (right.dimension().is_number()) return quantity_type(left.shown);
  if (!divides && left.dimension().is_number()) return quantity_type(right.shown);
  const Dimension dimension =
      divides ? left.dimension() / right.dimension() : left.dimension() * right.dimension();
  return quantity_type(Unit::coherent(dimension));
}

}  // namespace

ValueType sum_type(std::string_view what, const ValueType& left, const ValueType& right) {
  if (left.kind != ValueKind::quantity || right.kind != ValueKind::quantity) {
    fail_sides("formula.type", what, left, right, {});
  }
  if (left.any_zero) return right;
  if (right.any_zero) return left;
  if (!(left.dimension() == right.dimension())) fail_dimension(what, left, right);
  return left.shown.ratio() >= right.shown.ratio() ? left : right;
}

ValueType type_of_two(TokenKind sign, const ValueType& left, const ValueType& right) {
  switch (sign) {
    case TokenKind::plus:
    case TokenKind::minus:
      return sum_type(name_of(sign), left, right);
    case TokenKind::times:
    case TokenKind::divide:
      return product_type(sign, left, right);
    case TokenKind::and_word:
    case TokenKind::or_word:
      if (left.kind == ValueKind::flag && right.kind == ValueKind::flag) return flag_type();
      fail_sides("formula.type", name_of(sign), left, right, "both sides must be yes or no");
    case TokenKind::equal:
    case TokenKind::unequal:
      static_cast<void>(alike_type(name_of(sign), left, right));
      return flag_type();
    default:
      static_cast<void>(sum_type(name_of(sign), left, right));
      return flag_type();
  }
}

ValueType negated_type(const ValueType& type) {
  if (type.kind == ValueKind::quantity) return type;
  fail("formula.type", "a number is needed, not " + type.name());
}

ValueType denied_type(const ValueType& type) {
  expect_flag(type, "\"not\"", 0);
  return flag_type();
}

ValueType power_type(const ValueType& type, int exponent) {
  static_cast<void>(negated_type(type));
  if (type.dimension().is_number()) return quantity_type(type.shown);
  try {
    return quantity_type(Unit::coherent(type.dimension().power(exponent)));
  } catch (const Error& error) {
    fail("formula.power", error.message());
  }
}

ValueType alike_type(std::string_view what, const ValueType& left, const ValueType& right) {
  if (left.kind == ValueKind::quantity && right.kind == left.kind) {
    return sum_type(what, left, right);
  }
  if (left.alike(right)) return left;
  fail_sides("formula.type", what, left, right, {});
}

void expect_flag(const ValueType& type, std::string_view what, std::uint32_t offset) {
  if (type.kind == ValueKind::flag) return;
  fail_at(offset, "formula.type", std::string(what) + " needs yes or no, not " + type.name());
}

}  // namespace scalepan
