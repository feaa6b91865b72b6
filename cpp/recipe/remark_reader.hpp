// What stands beside amount and food, sorted into the fields of the line.
#pragma once

#include <optional>
#include <string_view>

#include "recipe/line_segments.hpp"
#include "recipe/line_source.hpp"
#include "recipe/written_line.hpp"

namespace scalepan {

class RemarkReader {
 public:
  RemarkReader(WrittenLine& line, const LineSource& source) : line_(line), source_(source) {}

  /// Throws `line.second_measure` for a measure that contradicts the amount, with its offset.
  void read(const Segment& segment);
  /// `/7oz` of `200g/7oz`, `or 6 oz` of `4 cups or 6 oz`, behind the amount; moves past it.
  void read_slashed_measure(Cursor& cursor);
  void add_beside(std::string_view text);
  void add_note(std::string_view note);

 private:
  bool read_amount_remark(std::string_view text);
  bool read_measures(Cursor cursor);
  [[nodiscard]] static bool counts_food(std::string_view text);
  void expect_one_food(const SecondMeasure& measure, std::size_t at) const;
  void expect_food_added(std::string_view added) const;
  void read_word_remark(std::string_view text, bool bracket);
  bool names_the_food(std::string_view text);
  [[nodiscard]] std::optional<SecondMeasure> read_second(Cursor& cursor) const;
  void take_second(SecondMeasure second, std::size_t at);
  void add_second(SecondMeasure second, std::size_t at);

  WrittenLine& line_;
  const LineSource& source_;
};

}  // namespace scalepan
