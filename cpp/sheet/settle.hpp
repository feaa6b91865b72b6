// Works out what is due, from low to high, each formula once, and stops where a figure came out the
// same.
#pragma once

#include <vector>

#include "sheet/state.hpp"

namespace scalepan {

class Settler {
 public:
  /// The formulas and totals that ran, in the order they ran in.
  std::vector<Cell> settle(SheetState& state);

 private:
  void work_out(Cell cell);
  void run_formula(Cell cell);
  void run_on_figures(Cell cell, const Programme& programme);
  void run_total(Cell cell);
  void keep_number(Cell cell, const Rational& number);
  void keep(Cell cell, const Value& value);
  void hold(Cell cell, const HeldError& held);
  void hold_new(Cell cell, const Error& error);
  template <typename Replace>
  void tell_readers(Cell cell, Replace replace);
  void tell_number(Cell cell, const Rational& before, const Rational& after);
  void tell(Cell cell, const Heard& before);
  [[nodiscard]] Heard heard(Cell cell) const;

  SheetState* state_ = nullptr;
  std::vector<Cell> ran_;
  RunSpace space_;
};

/// An error in a cell's formula with its place: the cell, and the column in the formula's text.
[[nodiscard]] Error placed_in_cell(const SheetState& state, Cell cell, const Error& error);

}  // namespace scalepan
