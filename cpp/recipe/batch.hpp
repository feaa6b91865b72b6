// The batch: what the lines of a recipe come to together, before and after cooking, and how many
// loads it takes.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "exact/error.hpp"
#include "food/catalog.hpp"
#include "measure/loads.hpp"
#include "recipe/line.hpp"
#include "recipe/size.hpp"

namespace scalepan {

/// What a recipe's file says of its batch. Empty texts say nothing.
struct BatchInput {
  PlacedText makes;    // measured at the written size: `1.2 kg`, `3 L`, `24 pieces`
  PlacedText loss;     // `12 % of the raw batch`
  PlacedText load;     // what a pan, tray or oven takes at once: `12 portions`, `4 kg`, `2 trays`
  Rational trays = 1;  // the written size fills
};

/// The weight of a line's coherent unit in the batch: trimmed, and of it the share that stays in
/// the food; nothing where no fact gives it.
using UnitWeight = std::optional<Rational>;

/// Of a line of a food: in g of what is edible, or as it is where it is cooked or drained. Where
/// no edible share is known, all of it is taken as edible.
[[nodiscard]] UnitWeight weight_of_unit(const Line& line, const Catalog& catalog);

class Batch {
 public:
  /// `weights` has one entry a line. Throws `batch.makes`,
  /// `batch.loss` and `batch.load`, each with its place.
  Batch(const BatchInput& input, const std::vector<Line>& lines,
        const std::vector<UnitWeight>& weights, const Rational& serves, Measures measures);

  /// Ids of lines whose weight no fact gives; where there are any, nothing is known of the weight
  /// before cooking, and what is measured goes in proportion.
  [[nodiscard]] const std::vector<std::string>& unweighed() const { return unweighed_; }
  /// As stated, for the written size.
  [[nodiscard]] const std::optional<Quantity>& makes() const { return makes_; }
  [[nodiscard]] bool has_load() const { return load_.has_value(); }
  /// Not where it is measured by volume or in pieces and no loss is stated: what boils away, or
  /// stays in the sieve, is in none of its lines.
  [[nodiscard]] bool tells_weight() const;

  /// How many pans, trays or ovens full; 1 where no capacity is stated.
  [[nodiscard]] Rational loads_at(const Size& size) const;
  /// What goes into each of them, in what the capacity is stated in; nothing where none is.
  /// Portions are as large as written; a started portion, piece or tray counts whole.
  [[nodiscard]] std::optional<Loads> loads(const Size& size, LoadSplit split) const;
  /// In g.
  [[nodiscard]] std::optional<Quantity> before_cooking(const Size& size) const;
  /// In g: as measured, or what the loss leaves; nothing unless it `tells_weight`.
  [[nodiscard]] std::optional<Quantity> weight(const Size& size) const;
  /// In what `makes` is stated in, else the weight.
  [[nodiscard]] std::optional<Quantity> amount(const Size& size) const;

  /// How a target depends on the factor: `per * growth(factor)`, where growth is the weight before
  /// cooking, or the factor itself.
  struct Course {
    Growth growth;
    Rational per;
  };
  /// For a target in the unit of the weight, before or after cooking, or of `makes`.
  /// Throws `batch.unknown`, which says what is missing.
  [[nodiscard]] Course course_of(const Quantity& target, bool before, const Growing& growing) const;
  /// Adds an amount for every load as a function of the factor.
  void add_load_growth(Growth& growth, const Rational& each, const Growing& growing) const;

 private:
  struct Part {
    Rule rule;
    Rational written;
    Rational grams;  // a coherent unit
  };
  /// What the number of loads follows, and how much of that goes into one.
  enum class LoadBy : std::uint8_t { weight, factor };
  struct Load {
    LoadBy by = LoadBy::factor;
    Rational width;
    Quantity capacity;      // as stated
    bool of_lines = false;  // what a load holds is the weight of its lines
  };

  void read_makes(const PlacedText& text, Measures measures);
  void read_loss(const PlacedText& text);
  void read_load(const BatchInput& input, Measures measures);
  [[nodiscard]] Load load_of_measure(const Quantity& capacity) const;
  [[nodiscard]] Rational course_of_loads(const Size& size) const;
  [[nodiscard]] bool weighed() const { return unweighed_.empty(); }
  /// Else what is measured goes in proportion.
  [[nodiscard]] bool follows_weight() const {
    return weighed() && !(written_grams_ + grams_each_load_).is_zero();
  }
  [[nodiscard]] Size written_size() const { return size_of_portions(serves_, serves_); }
  [[nodiscard]] Rational grams_at(const Size& size) const;
  [[nodiscard]] Rational grams_with_loads(const Size& size) const;
  [[nodiscard]] Growth growth_without_loads(const Growing& growing) const;
  [[nodiscard]] Growth growth_before(const Growing& growing) const;
  [[noreturn]] void fail_unknown(const Quantity& target) const;

  std::vector<Part> parts_;
  std::vector<std::string> unweighed_;
  Rational serves_;
  std::optional<Quantity> makes_;
  Rational kept_ = 1;  // weight after cooking over weight before
  bool loss_stated_ = false;
  Rational grams_each_load_;  // of the lines by the load
  Rational written_grams_;    // at the written size, less the lines by the load
  std::optional<Load> load_;
};

}  // namespace scalepan
