// Rows of the published layout of the USDA Standard Reference: one record a line, fields parted by
// carets, texts between tildes (`~01001~^~0100~^~Butter, salted~^...^6.38`).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exact/error.hpp"
#include "exact/rational.hpp"

namespace scalepan {

/// One file of a release: its text in UTF-8, and its name for errors.
struct ReleaseFile {
  std::string_view text;
  std::string name;
};

/// Reads a file row by row. Blank lines are passed over; line ends may be those of any system.
class CaretTable {
 public:
  CaretTable(const ReleaseFile& file, std::size_t fields) : file_(file), expected_(fields) {}

  /// Moves to the next row; false at the end. Throws `food.release` with file, line and column
  /// where the row has another number of fields.
  bool next();

  /// A field between tildes, counted from 0; a view into the file. Throws `food.release`.
  [[nodiscard]] std::string_view text(std::size_t field) const;
  /// A bare number; nothing where the field is blank. Throws `food.release`.
  [[nodiscard]] std::optional<Rational> number(std::size_t field) const;

  /// Throws `food.release` at the field, counting lines and columns from 1.
  [[noreturn]] void fail_in(std::size_t field, const std::string& message) const;
  /// Of the present row, from 1.
  [[nodiscard]] int line() const { return line_; }

 private:
  void split();

  ReleaseFile file_;
  std::size_t expected_;
  std::size_t position_ = 0;
  int line_ = 0;
  std::string_view row_;
  std::vector<std::string_view> fields_;
};

}  // namespace scalepan
