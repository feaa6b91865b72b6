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

/// The singular of a word for a part counted in pieces (`cloves` gives `clove`), or nothing.
[[nodiscard]] std::optional<std::string_view> piece_noun(std::string_view word);

/// The plural of a piece noun or container known here.
[[nodiscard]] std::string_view plural_of_noun(std::string_view singular);

/// The singular of a word for a container (`tins` gives `tin`), or nothing.
[[nodiscard]] std::optional<std::string_view> container_noun(std::string_view word);

}  // namespace scalepan
