// Exact arithmetic of intervals. Each result is the smallest interval that holds what comes out for
// any two numbers inside, each taken by itself.
//
// Where nothing bounds a result from below there is no result.
#pragma once

#include <cstdint>
#include <optional>

#include "sheet/value.hpp"

namespace scalepan {

using MaybeInterval = std::optional<Interval>;

[[nodiscard]] inline Interval interval_of(const Rational& number) { return {number, number}; }
[[nodiscard]] bool holds_zero(const Interval& a);

[[nodiscard]] Interval sum_of(const Interval& a, const Interval& b);
[[nodiscard]] MaybeInterval difference_of(const Interval& a, const Interval& b);
[[nodiscard]] MaybeInterval product_of(const Interval& a, const Interval& b);
/// Only of what does not hold 0.
[[nodiscard]] Interval reciprocal_of(const Interval& a);
[[nodiscard]] Interval power_of(const Interval& a, std::uint32_t exponent);
[[nodiscard]] Interval absolute_of(const Interval& a);
[[nodiscard]] Interval least_of(const Interval& a, const Interval& b);
[[nodiscard]] Interval greatest_of(const Interval& a, const Interval& b);

/// Nothing where the bounds leave it open.
[[nodiscard]] std::optional<bool> is_less(const Interval& a, const Interval& b);
[[nodiscard]] std::optional<bool> is_at_most(const Interval& a, const Interval& b);
[[nodiscard]] std::optional<bool> is_equal(const Interval& a, const Interval& b);

}  // namespace scalepan
