// Words that tell how a food is.
#pragma once

#include <string_view>

namespace scalepan {

/// Whether a text tells how a food is or what is done to it: `finely chopped`, `cut in cubes`,
/// `½-inch thick`, `at room temperature`.
[[nodiscard]] bool tells_state(std::string_view text);

}  // namespace scalepan
