// A text of a line cut at its marks: commas, semicolons, double dashes and brackets.
#pragma once

#include <string_view>
#include <vector>

namespace scalepan {

struct Segment {
  std::string_view text;  // trimmed, a view into the line, not empty
  bool bracket = false;
};

/// The segments in order. Throws `line.bracket` for a bracket that is not closed, with its offset
/// in `line`, of which `text` is a part.
[[nodiscard]] std::vector<Segment> cut_segments(std::string_view text, std::string_view line);

/// The words apart by spaces, without the punctuation at their ends.
[[nodiscard]] std::vector<std::string_view> words_of(std::string_view text);

/// The text from the first of these words to the last.
[[nodiscard]] std::string_view text_of(const std::vector<std::string_view>& words,
                                       std::size_t first, std::size_t last);

}  // namespace scalepan
