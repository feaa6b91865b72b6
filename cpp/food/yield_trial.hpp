// One trial of a yield test: what was bought, what came off, what remained, each stage closed.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "food/yield_row.hpp"

namespace scalepan {

/// What came off, or was lost. Its weight has no stage.
struct TrialPart {
  YieldWord what = YieldWord::by_product;
  std::string name;
  Quantity weight;
  bool is_rest = false;           // a loss that was derived, never weighed
  std::optional<Quantity> value;  // money, in all
  std::string use;
};

/// Weights are there as far as the trial went, and each stage closes exactly:
/// bought = parts cut + edible (or drained), cooked = parts off + served.
struct YieldTrial {
  std::string name;
  std::string food;  // as written beside its first weight; may be empty
  std::optional<Quantity> bought;
  std::optional<Quantity> cost;  // money, in all
  std::optional<Unit> priced_per;
  std::vector<TrialPart> cut;  // by-products and losses before cooking
  std::optional<Quantity> edible;
  std::optional<Quantity> drained;
  std::optional<Quantity> pan;  // what was cooked, at EP
  std::optional<Quantity> cooked;
  std::vector<TrialPart> off;  // taken off and lost after cooking
  std::optional<Quantity> served;

  /// The weight at a stage, or nothing. Of EP the edible weight.
  [[nodiscard]] const std::optional<Quantity>& at(Stage stage) const;
  /// What remains of the bought: the edible weight or the drained.
  [[nodiscard]] const std::optional<Quantity>& usable() const { return drained ? drained : edible; }
};

/// More would be another kind of study, whose exact sums grow without end.
inline constexpr std::size_t most_rows = 2000;

/// The trials of a test by their names, in the order in which they begin.
/// Throws `yield.missing` for rows that need another, `yield.duplicate`, `yield.stages` for edible
/// and drained at once, `yield.kind` where weight meets volume, `yield.currency`, `yield.closing`
/// where a stage does not close, naming both sides and the gap, `yield.credit` for by-products
/// worth more than was paid, `yield.food` for trials of different foods, and `yield.too_many`.
[[nodiscard]] std::vector<YieldTrial> make_trials(std::span<const WeighedRow> rows);

/// The sum of the values of parts; nothing where none has one.
[[nodiscard]] std::optional<Quantity> credit_of(std::span<const TrialPart> parts);

}  // namespace scalepan
