// Near misses: the known names closest to a misspelt one.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace scalepan {

/// Insertions, deletions, changes and swaps of neighbouring letters that turn one name into the
/// other (optimal string alignment distance).
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

/// At most `most` names within a distance fit for the name's length, nearest first; equals keep
/// the order of `known`.
[[nodiscard]] std::vector<std::string> nearest_names(std::string_view name,
                                                     std::span<const std::string_view> known,
                                                     std::size_t most = 3);

/// `nearest: tbsp, tsp`, or empty.
[[nodiscard]] std::string nearest_hint(const std::vector<std::string>& names);

}  // namespace scalepan
