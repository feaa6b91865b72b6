// The text of a line, cleared of what says nothing, every offset kept.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace scalepan {

/// What a line may be at most, in bytes: the longest of printed books have some 200.
inline constexpr std::size_t longest_line = 1000;

struct PlainText {
  std::string text;
  std::vector<std::size_t> tabs;  // their offsets; in the text they are spaces
};

/// The text with every space and bracket a plain one. Throws `line.too_long`,
/// `line.control_character` and `number.script` (digits of another script), with their offsets.
[[nodiscard]] PlainText plain_text(std::string_view text);

/// Without bullets, footnote marks and punctuation at its ends.
[[nodiscard]] std::string_view without_marks(std::string_view text);

}  // namespace scalepan
