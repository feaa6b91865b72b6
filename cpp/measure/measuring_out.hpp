// Measuring out: an exact amount told as what spoons, cups, jugs, scales, ladles and dishers give.
//
// What "nearest" and "shortest" mean, and why the answer is both, is in measure/fills.hpp. Where
// the smallest measure may be filled without limit, the error is at most half of it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "measure/fills.hpp"
#include "measure/quantity.hpp"

namespace scalepan {

/// The marks of a graduated measure between two amounts, at every multiple of `step`.
struct Graduation {
  Quantity step;
  Quantity from;
  Quantity to;
};

/// One measure of a kitchen. A jug or a scale has graduations; `size` is then the most it holds.
struct KitchenMeasure {
  std::string name;    // `tbsp`, `1/2 cup`, `no. 8 disher`
  std::string plural;  // `tbsp`, `cups`
  Quantity size;
  std::optional<Rational> most;  // how many may be used at once
  std::vector<Graduation> graduations;
  std::string source;
};

struct MeasuredPiece {
  Rational count;
  std::string name;  // of a reading its mark: `350 mL`
};

struct MeasuredOut {
  std::vector<MeasuredPiece> pieces;  // the largest first; none where all are too large
  std::string text;                   // `2 tbsp + 1 tsp`
  Quantity amount;                    // what the pieces hold, in the unit and stage asked about
  Quantity error;                     // amount less exact
};

/// What an answer is asked to be beside the nearest.
struct MeasuringWish {
  std::optional<Rational> most_pieces;  // fills and readings, a whole number above zero
  // A share of the amount, such as 1 %: of the measures only the largest are used, as few of them
  // as come so near; all of them where none do.
  std::optional<Quantity> within;
};

/// Measures that are used together, all of weight or all of volume.
class MeasureSet {
 public:
  /// Throws `measure.none`, `measure.kind`, `measure.size`, `measure.step`, `measure.most`,
  /// `measure.name`, and what FillFinder throws.
  MeasureSet(std::string name, std::vector<KitchenMeasure> measures);

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] Dimension dimension() const { return measures_.front().size.dimension(); }
  /// The largest first.
  [[nodiscard]] const std::vector<KitchenMeasure>& measures() const { return measures_; }

  /// The nearest amount the measures give; of two equally near the larger. An amount below half
  /// of the smallest measure has no piece, and the text says so.
  /// Throws `measure.kind`, `measure.negative`, `measure.pieces` and `measure.within`.
  [[nodiscard]] MeasuredOut nearest(const Quantity& exact, const MeasuringWish& wish = {}) const;

 private:
  void expect_measurable(const Quantity& exact, const MeasuringWish& wish) const;
  [[nodiscard]] MeasuredOut told(const Quantity& exact, const Filling& filling) const;
  [[nodiscard]] std::string told_nothing(const Quantity& exact) const;

  std::string name_;
  std::vector<KitchenMeasure> measures_;  // the largest first
  FillFinder finder_;
};

}  // namespace scalepan
