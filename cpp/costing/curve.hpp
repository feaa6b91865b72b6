// Curves: the four costs over numbers of portions, exact at every point.
//
// Between two breakpoints every item is bought alike, so that its till stays as it is and its
// other costs follow the need. What is asked for is computed when it is asked for, once.
#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "costing/costing.hpp"
#include "costing/curve_counts.hpp"
#include "costing/curve_points.hpp"
#include "costing/item_course.hpp"
#include "costing/till_kernel.hpp"
#include "exact/word_column.hpp"

namespace scalepan {

/// The packs of one item change here, seen from the point before.
struct Breakpoint {
  Rational portions;
  std::string item;
  PacksTaken packs_before;
  PacksTaken packs;
};

/// Where the packs of one item come out even: nothing is left of them.
struct EvenCounts {
  std::string item;
  std::vector<CountRun> counts;
};

/// Portions of another size, spare ones and losses would be lost where a costing is asked for other
/// numbers of portions. Throws `cost.curve`.
void expect_by_portions(const Recipe& recipe);

/// So many points are an oversight, not a curve.
inline constexpr std::size_t most_curve_points = 1'000'000;
/// Throws `cost.curve` for more.
void expect_curve_points(std::size_t count);
/// So many changes of packs can be held.
inline constexpr std::size_t most_breakpoints = 1'000'000;

/// Called now and then in what may take long; may throw to end it.
using Pulse = std::function<void()>;

/// All that a curve tells, of one whose figures are those of a sheet at the time it was made.
struct CurveRecord {
  std::vector<Rational> till;
  std::vector<Rational> used;
  std::vector<Rational> thrown;
  std::vector<Rational> borne;
  std::vector<Breakpoint> breakpoints;
  std::vector<EvenCounts> even;
  std::vector<std::string> unpriced;
  std::string kernel;
};

/// Shared by any number of threads.
class Curve {
 public:
  /// In the order given. Throws what `expect_by_portions` throws, `cost.curve` for too many points,
  /// and the first error that the costings at the points would throw, such as `recipe.portions` for
  /// one that is not above zero, and the errors of the covers.
  Curve(const Costing& costing, CurvePoints points, Pulse pulse = {});
  /// As it was recorded; the costing tells the money.
  Curve(const Costing& costing, CurvePoints points, CurveRecord record);

  [[nodiscard]] const Costing& costing() const { return costing_; }
  /// Nothing where the plan of the costing tells all.
  [[nodiscard]] std::optional<CurveRecord> record() const;

  [[nodiscard]] const CurvePoints& points() const { return points_; }
  [[nodiscard]] std::string currency() const;  // ISO 4217 code
  /// Ids of lines that no point includes.
  [[nodiscard]] const std::vector<std::string>& unpriced() const { return unpriced_; }
  /// How the till is computed, and where not in machine words, why.
  [[nodiscard]] const std::string& kernel() const { return kernel_.text; }

  /// One entry a point, in money. Throws `cost.which`.
  [[nodiscard]] const std::vector<Rational>& cost(std::string_view which) const;
  /// The till alone comes in whole steps. Throws `cost.which`, and `cost.column` for another cost
  /// or for steps that do not fit 64 bits.
  [[nodiscard]] std::shared_ptr<WordColumn> column(std::string_view which) const;

  /// In the order of the points, and there of the items. Throws `cost.curve` for too many.
  [[nodiscard]] const std::vector<Breakpoint>& breakpoints() const;
  /// Of each priced item.
  [[nodiscard]] std::vector<EvenCounts> even_counts() const;
  /// None where there is no point. Throws `cost.which`.
  [[nodiscard]] std::optional<CheapestCount> cheapest(std::string_view which) const;
  /// In ascending order. Throws `cost.which`.
  [[nodiscard]] std::vector<DominatedCounts> dominated(std::string_view which) const;

 private:
  struct Lists {
    std::vector<Rational> till;
    std::vector<Rational> used;
    std::vector<Rational> thrown;
    std::vector<Rational> borne;
  };

  void pulse(std::size_t turn) const;
  void take_from_sheet();
  void find_needs();
  [[nodiscard]] std::vector<std::vector<Rational>> needs_by_recipe() const;
  void expect_reachable() const;
  [[nodiscard]] bool is_reachable(std::size_t place) const;
  [[nodiscard]] const Lists& lists() const;
  [[nodiscard]] Lists make_lists() const;
  [[nodiscard]] const std::vector<Rational>& till_of_column() const;
  [[nodiscard]] WordColumn column_in_words() const;
  void add_by_cover(const ItemCourse& item, WordColumn& column) const;
  [[nodiscard]] std::vector<Breakpoint> make_breakpoints() const;
  [[nodiscard]] std::vector<CountRun> even_counts_of(const ItemCourse& item) const;

  Costing costing_;
  CurvePoints points_;
  Pulse pulse_;
  std::vector<ItemCourse> items_;  // the priced ones
  std::optional<Rational> end_;    // of the tapers
  TillKernel kernel_;
  std::vector<std::string> unpriced_;
  std::optional<std::vector<EvenCounts>> even_;  // where the sheet tells them

  mutable std::mutex mutex_;
  mutable std::optional<Lists> lists_;
  mutable std::optional<std::vector<Rational>> till_;  // of the column
  mutable std::shared_ptr<WordColumn> column_;
  mutable std::optional<std::vector<Breakpoint>> breakpoints_;
};

}  // namespace scalepan
