// Yield tests: what trials of one food say together.
//
// Trials are summed up in two ways, which differ where the trials differ in size, and neither is
// ever given without its name: the ratio of sums (all that remained over all there was, each pound
// counting alike) and the mean of ratios (each trial counting alike).
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "food/yield_trial.hpp"

namespace scalepan {

/// One ratio over several trials.
struct TrialRatio {
  Quantity of_sums;
  Quantity mean;
  Quantity low;  // of the trials' own ratios
  Quantity high;
  std::size_t trials = 0;

  /// 1 less the ratio, a plain number: what is lost of the amount below the line.
  [[nodiscard]] TrialRatio rest() const;
};

/// What of the weight at one stage remains at another: `EP/AP`, `cooked/EP`, `served/AP`.
/// Over stages that lie apart, the amount at `from` is that which went on to the next stage.
struct YieldShare {
  Stage from = Stage::as_purchased;
  Stage to = Stage::edible;
  TrialRatio ratio;
};

/// What came off, as a share of the weight at `of`. A trial without the part counts with none.
struct PartShare {
  YieldWord what = YieldWord::by_product;
  std::string name;
  std::string use;  // of the first trial that has it
  Stage of = Stage::as_purchased;
  Quantity weight;  // of all trials
  std::optional<Quantity> value;
  TrialRatio ratio;
};

/// What the food costs at a stage, all trials with a price together. Money goes on from stage to
/// stage with the part of the weight that does, less the value of what came off.
struct StageCost {
  Stage stage = Stage::edible;
  std::size_t trials = 0;
  Quantity weight;  // at the stage
  Quantity value;   // money: what this weight cost
  Quantity bought;  // the bought weight behind it
  Quantity paid;    // money: what that cost
  Unit per;         // the weight unit prices are told for, that of the first price

  /// Money per unit at the stage.
  [[nodiscard]] Quantity per_unit() const { return per_unit_of(value / weight); }
  /// The dealer's price: money per unit bought.
  [[nodiscard]] Quantity price() const;
  /// Cost per unit over price per unit bought, AP/EP and so on.
  [[nodiscard]] Quantity factor() const { return (value / weight) / (paid / bought); }
  /// 100 / yield %: the cost factor where nothing that came off is worth anything.
  [[nodiscard]] Quantity yield_factor() const { return bought / weight; }
  /// The cost per unit at another price per unit bought, by the cost factor. A price without a
  /// stage is of what is bought. Throws `yield.price`.
  [[nodiscard]] Quantity at_price(const Quantity& price) const;
  /// Money for a portion of the stage; a size without a stage is at this one.
  /// Throws `yield.portion` and `quantity.convert` for another stage.
  [[nodiscard]] Quantity portion_cost(const Quantity& size) const;
  /// The same at another price: portion factor times price.
  [[nodiscard]] Quantity portion_cost(const Quantity& size, const Quantity& price) const;
  /// Portion cost over price per unit bought: the bought weight that a portion costs as much as.
  [[nodiscard]] Quantity portion_factor(const Quantity& size) const;

 private:
  [[nodiscard]] Quantity per_unit_of(const Quantity& cost) const;
  [[nodiscard]] Quantity size_at_stage(const Quantity& size) const;
};

class YieldTest {
 public:
  explicit YieldTest(std::vector<YieldTrial> trials) : trials_(std::move(trials)) {}

  [[nodiscard]] const std::vector<YieldTrial>& trials() const { return trials_; }
  /// As the first trial that names it writes it; may be empty.
  [[nodiscard]] std::string food() const;
  /// One step first (EP/AP, drained/AP, cooked/EP, served/cooked), then cooked/AP and served/AP;
  /// those that a trial has.
  [[nodiscard]] std::vector<YieldShare> shares() const;
  /// Those cut first, in the order in which they appear.
  [[nodiscard]] std::vector<PartShare> parts() const;
  /// At each stage after buying that a trial with a price reached; none where no trial has one.
  [[nodiscard]] std::vector<StageCost> costs() const;

 private:
  std::vector<YieldTrial> trials_;
};

}  // namespace scalepan
