// Words that a recipe line has beside amounts and foods.
#pragma once

#include <optional>
#include <string_view>

#include "measure/dimension.hpp"

namespace scalepan {

/// The stage that a preparation brings a food to: `peeled` EP, `boiled` cooked, `drained`
/// drained; nothing for a word that is no preparation. Common practice, no published source.
[[nodiscard]] std::optional<Stage> stage_of_preparation(std::string_view word);

/// `small`, `medium`, `large` ...: the size of a piece.
[[nodiscard]] bool is_size_word(std::string_view word);

}  // namespace scalepan
