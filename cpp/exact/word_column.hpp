// Exact figures as counts of one step, in machine words.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "exact/rational.hpp"
#include "exact/word_array.hpp"

namespace scalepan {

/// Each figure is its count times the step.
struct WordColumn {
  Rational step;
  std::size_t size = 0;
  WordArray counts;
};

/// In the largest step that all are multiples of; 1 where all are 0. None where a count is no word.
[[nodiscard]] std::optional<WordColumn> column_of(std::span<const Rational> figures);
/// The figures of the counts.
[[nodiscard]] Rational figure_at(const WordColumn& column, std::size_t place);

}  // namespace scalepan
