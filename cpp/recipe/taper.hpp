// Tapers: for seasonings that are not multiplied in full in a large batch.
#pragma once

#include <string>
#include <string_view>

#include "exact/ramp.hpp"

namespace scalepan {

/// The points behind `tapered`: `(2, 1.5), (4, 2)`, with `, then 1/2` where it goes on; the point
/// (1, 1) is always among them. Throws `rule.taper` and `ramp.order`.
[[nodiscard]] Ramp parse_taper(std::string_view text);
/// As it is written.
[[nodiscard]] std::string text_of(const Ramp& taper);

/// One of the published rules, `herbs`; all are common practice, and their sources disagree.
/// Throws `rule.taper` with the names there are.
[[nodiscard]] Ramp taper_named(std::string_view name);
/// The source of a named one.
[[nodiscard]] std::string_view source_of_taper(std::string_view name);

}  // namespace scalepan
