// The live sheet: named cells, of which some are given and some follow by formulas.
//
// A change runs the formulas that depend on it, each once, and no others; it stops where a figure
// came out the same. A formula that fails leaves its error in its cell and in those that read it,
// until what is wrong is mended.
//
// Changes are made together or not at all: one that is refused leaves the sheet as it was. Any
// number of threads may read while one changes.
#pragma once

#include <deque>
#include <memory>
#include <shared_mutex>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "exact/error.hpp"
#include "measure/quantity.hpp"
#include "sheet/change.hpp"
#include "sheet/meet.hpp"
#include "sheet/settle.hpp"
#include "sheet/state.hpp"
#include "sheet/why_tree.hpp"

namespace scalepan {

/// What a cell comes out as: its value, or why it has none.
using Outcome = std::variant<CellValue, Error>;

class Sheet {
 public:
  explicit Sheet(std::shared_ptr<const FunctionTable> functions, ValueGuard guard = nullptr);

  /// Makes all changes in their order, or none. Throws `sheet.name`, `sheet.taken`,
  /// `sheet.unknown`, `sheet.formula`, `sheet.dimension`, `sheet.reason`, `sheet.released`,
  /// `sheet.overridden`, `sheet.read`, `sheet.in_rows`, `sheet.row`, `sheet.many`, `sheet.cycle`
  /// with the chain, and what `Compiler` throws, with the cell and the column in its formula.
  void apply(const std::vector<Change>& changes);
  /// The same for changes in any order, as a file may have them: each after those it builds on.
  void restore(std::vector<Change> changes);

  /// Whether there was a change to take back, or one that was taken back to make again.
  bool undo();
  bool redo();
  /// What was done so far is how the sheet begins: it can no longer be taken back.
  void forget_past();
  /// The cells that there are keep their names and stay: who made the sheet reads them.
  void keep_cells();
  /// Changes made, taken back and made again since then.
  [[nodiscard]] std::size_t changes_made() const;

  /// Throws `sheet.unknown`, and the error the cell holds, with the cell it arose in.
  [[nodiscard]] CellValue value(std::string_view name) const;
  /// The figure for people: `at least 31.2 GBP`. Throws the same.
  [[nodiscard]] std::string told(std::string_view name) const;
  /// As written; empty for a cell that is given. Throws `sheet.unknown`.
  [[nodiscard]] std::string formula(std::string_view name) const;
  [[nodiscard]] bool has(std::string_view name) const;
  /// Whether the cell holds no error. Throws `sheet.unknown`.
  [[nodiscard]] bool has_figure(std::string_view name) const;
  /// In the order they came in.
  [[nodiscard]] std::vector<std::string> cells() const;
  /// Of a block of rows, in their order. Throws `sheet.unknown`.
  [[nodiscard]] std::vector<std::string> rows(std::string_view block) const;
  [[nodiscard]] std::vector<std::string> columns(std::string_view block) const;
  [[nodiscard]] std::vector<std::string> blocks() const;
  /// Cells that read this one. Throws `sheet.unknown`.
  [[nodiscard]] std::vector<std::string> readers(std::string_view name) const;
  /// How the figure comes about. Throws `sheet.unknown`.
  [[nodiscard]] Why why(std::string_view name) const;
  /// The formulas and totals that the last change ran, in the order they ran in.
  [[nodiscard]] std::vector<std::string> ran() const;
  /// What makes an empty sheet this one; the same for all sheets that hold the same.
  [[nodiscard]] std::vector<Change> changes() const;

  /// What the cells come out as with some changes made, which are then taken back: no trace of
  /// them stays. Throws what `apply` throws.
  [[nodiscard]] std::vector<Outcome> values_with(const std::vector<Change>& changes,
                                                 const std::vector<std::string>& names);
  /// Every output for each value of the input, in coherent units. Throws `sheet.unknown`,
  /// `sheet.formula` and `sheet.type`.
  [[nodiscard]] Sweep sweep(std::string_view input, const std::vector<Quantity>& values,
                            const std::vector<std::string>& outputs, const SweepPulse& pulse) const;
  /// Where the output meets the target or keeps to it, in coherent units of the input. Throws the
  /// same, and `sheet.no_form`, `sheet.many` and `sheet.dimension`.
  [[nodiscard]] Meetings meetings(std::string_view input, std::string_view output,
                                  const Quantity& target, const Quantity& low, const Quantity& high,
                                  const SweepPulse& pulse, Aim aim = Aim::equal) const;
  /// How a cell's figures are shown. Throws `sheet.unknown`.
  [[nodiscard]] ValueType type(std::string_view name) const;
  /// Bytes held by what every cell has.
  [[nodiscard]] std::size_t bytes() const;

 private:
  [[nodiscard]] Path path_from(std::string_view input,
                               const std::vector<std::string>& outputs) const;
  /// In coherent units; the input could have that value.
  [[nodiscard]] Rational possible(const Quantity& quantity, std::string_view input,
                                  const ValueType& type) const;
  EditSteps make(const std::vector<Change>& changes);
  EditSteps play_back(EditSteps steps);
  void settle();
  void remember(EditSteps steps);

  mutable std::shared_mutex mutex_;
  SheetState state_;
  Settler settler_{state_};
  std::size_t changes_made_ = 0;
  std::deque<EditSteps> done_;
  std::vector<EditSteps> undone_;
};

}  // namespace scalepan
