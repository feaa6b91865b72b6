#include "exact/word_column.hpp"

namespace scalepan {

std::optional<WordColumn> column_of(std::span<const Rational> figures) {
  Rational step;
  for (const Rational& figure : figures) step = common_step(step, figure);
  if (step.is_zero()) step = 1;
  WordColumn column{step, figures.size(), word_array(figures.size())};
  for (std::size_t i = 0; i < figures.size(); ++i) {
    const Rational count = figures[i] / step;
    if (!count.is_word()) return std::nullopt;
    column.counts[i] = count.word_numerator();
  }
  return column;
}

Rational figure_at(const WordColumn& column, std::size_t place) {
  return column.counts[place] * column.step;
}

}  // namespace scalepan
