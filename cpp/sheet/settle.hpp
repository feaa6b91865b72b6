// Works out what is due, from low to high, each formula once, and stops where a figure came out the
// same.
#pragma once

#include <vector>

#include "sheet/evaluate.hpp"
#include "sheet/state.hpp"

namespace scalepan {

class Settler {
 public:
  explicit Settler(SheetState& state) : state_(state), evaluator_(state.figures, *this) {}

  void settle();
  /// The formulas and totals that ran last, in the order they ran in.
  [[nodiscard]] const std::vector<Cell>& ran() const { return ran_; }
  void put_ran(std::vector<Cell> ran) { ran_ = std::move(ran); }

  void keep_number(Cell cell, Rational number);
  void keep(Cell cell, const Value& value);
  void hold(Cell cell, const HeldError& held);
  void hold_new(Cell cell, const Error& error);

 private:
  void work_out(Cell cell);
  void run_total(Cell cell);
  template <typename Replace>
  void tell_readers(Cell cell, Replace replace);

  SheetState& state_;
  Evaluator<Settler> evaluator_;
  std::vector<Cell> ran_;
};

/// The error that a cell holds, with the cell it arose in and the column in its formula, as these
/// are called and written now.
[[nodiscard]] Error error_of(const SheetState& state, Cell cell);

}  // namespace scalepan
