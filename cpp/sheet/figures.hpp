// What the cells of a sheet came out as.
#pragma once

#include <memory>
#include <unordered_map>
#include <vector>

#include "exact/error.hpp"
#include "sheet/cell.hpp"
#include "sheet/value.hpp"

namespace scalepan {

/// Numbers first: they are told from all others by being zero.
enum class Condition : std::uint8_t { number, failed, interval, thing, unknown };

/// An error, with its offset in the programme at most, and the cell it arose in.
struct HeldError {
  std::shared_ptr<const Error> error;
  Cell origin = no_cell;
};

/// Single numbers stand in one array; whatever else a figure may be stands apart, so that it costs
/// the many numbers nothing.
class Figures {
 public:
  void resize(std::size_t cells);
  void reserve(std::size_t cells);

  [[nodiscard]] Condition condition(Cell cell) const {
    return static_cast<Condition>(conditions_[cell]);
  }
  [[nodiscard]] bool is_number(Cell cell) const { return conditions_[cell] == 0; }
  /// Of a cell that is a number.
  [[nodiscard]] const Rational& number(Cell cell) const { return numbers_[cell]; }
  [[nodiscard]] const Rational* numbers() const { return numbers_.data(); }
  /// Of a cell that has not failed and is known.
  [[nodiscard]] Value value(Cell cell) const;
  /// Of a cell that failed.
  [[nodiscard]] const HeldError& held(Cell cell) const { return held_.at(cell); }
  /// Whether every cell that has a number for its type is known as a single one.
  [[nodiscard]] bool all_plain() const { return not_plain_ == 0; }

  /// Of a cell that is a number: whether it came out another than before, which then is what
  /// `number` holds.
  bool swap_number(Cell cell, Rational& number) {
    Rational& kept = numbers_[cell];
    if (kept == number) return false;
    kept.swap(number);
    return true;
  }
  /// Whether the figure came out another than before.
  bool keep_number(Cell cell, Rational number) {
    if (is_number(cell)) return swap_number(cell, number);
    leave(cell, Condition::number);
    numbers_[cell].swap(number);
    return true;
  }
  bool keep(Cell cell, const Value& value);
  bool hold(Cell cell, const HeldError& held);
  /// The cell is known no more.
  void forget(Cell cell);
  /// Bytes held by what every cell has.
  [[nodiscard]] std::size_t bytes() const {
    return numbers_.capacity() * sizeof(Rational) + conditions_.capacity();
  }

 private:
  void leave(Cell cell, Condition next);

  std::vector<Rational> numbers_;
  std::vector<std::uint8_t> conditions_;
  std::unordered_map<Cell, Value> odd_;  // intervals and things
  std::unordered_map<Cell, HeldError> held_;
  std::size_t not_plain_ = 0;
};

}  // namespace scalepan
