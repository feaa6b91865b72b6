// What names in the formulas of a sheet mean.
#pragma once

#include "sheet/state.hpp"

namespace scalepan {

/// The cell of a column's sum; made where there is none yet.
Cell total_of(SheetState& state, Home home);

/// In a cell's formula.
class NamesInFormula : public Names {
 public:
  explicit NamesInFormula(SheetState& state) : state_(state) {}

  [[nodiscard]] std::optional<Found> find(std::string_view name) const override;
  [[nodiscard]] std::optional<Found> find_total(std::string_view column) const override;
  [[nodiscard]] std::vector<std::string> nearest(std::string_view name) const override;

 private:
  SheetState& state_;
};

/// In a column's formula: the columns of its rows, then cells.
class NamesInColumn final : public NamesInFormula {
 public:
  NamesInColumn(SheetState& state, const RowBlock& block) : NamesInFormula(state), block_(block) {}

  [[nodiscard]] std::optional<Found> find(std::string_view name) const override;
  [[nodiscard]] std::vector<std::string> nearest(std::string_view name) const override;

 private:
  const RowBlock& block_;
};

}  // namespace scalepan
