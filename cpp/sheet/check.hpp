// What signs and functions ask of the types they meet, and what comes out.
//
// Each throws `formula.type` or `formula.dimension`, naming the sign and both sides.
#pragma once

#include <string_view>

#include "sheet/token.hpp"
#include "sheet/types.hpp"

namespace scalepan {

/// Of two quantities of one dimension, of which the larger unit is shown.
[[nodiscard]] ValueType sum_type(std::string_view what, const ValueType& left,
                                 const ValueType& right);
[[nodiscard]] ValueType type_of_two(TokenKind sign, const ValueType& left, const ValueType& right);
[[nodiscard]] ValueType negated_type(const ValueType& type);
[[nodiscard]] ValueType denied_type(const ValueType& type);
/// Throws `formula.power` where the dimension's powers become too large.
[[nodiscard]] ValueType power_type(const ValueType& type, int exponent);
/// The type of two values of which either may come out. `what` is named in errors.
[[nodiscard]] ValueType alike_type(std::string_view what, const ValueType& left,
                                   const ValueType& right);
void expect_flag(const ValueType& type, std::string_view what, std::uint32_t offset);

}  // namespace scalepan
