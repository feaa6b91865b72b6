// The steps of a cover function, listed in ascending order as far as they are asked for.
//
// A step is a best cover that is best for its own total: it meets the needs above the total of
// the step before and up to its own. The first step is the empty cover.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "packs/cover_key.hpp"

namespace scalepan {

/// From here on every step is an earlier one and so many fillers more.
template <class Number>
struct StepPeriod {
  Number from{};          // holds for every need above it; the total of the last step listed
  std::size_t begin = 0;  // the first step listed of the last filler size up to `from`
  ThingIndex filler = 0;
  CoverKey<Number> key;  // of the filler
};

template <class Number>
class ListedSteps {
 public:
  using Key = CoverKey<Number>;

  ListedSteps(std::shared_ptr<const std::vector<PackThing<Number>>> all, CoverOrder order)
      : all_(std::move(all)), order_(order) {}
  virtual ~ListedSteps() = default;
  ListedSteps(const ListedSteps&) = delete;
  ListedSteps& operator=(const ListedSteps&) = delete;

  /// Lists one more step; false once the rest follows from the period, or there is no more to buy.
  /// Throws `cover.too_many`.
  virtual bool extend() = 0;
  [[nodiscard]] bool ended() const { return ended_; }
  [[nodiscard]] const std::optional<StepPeriod<Number>>& period() const { return period_; }
  [[nodiscard]] bool closed() const { return ended_ || period_.has_value(); }

  [[nodiscard]] std::size_t size() const { return keys_.size(); }
  [[nodiscard]] const std::vector<Key>& keys() const { return keys_; }
  [[nodiscard]] const Number& largest_total() const { return keys_.back().total(order_); }

  /// Whether there is such a step, listed or by the period.
  [[nodiscard]] bool has(std::size_t step);
  /// Only where `has(step)`.
  [[nodiscard]] Key key(std::size_t step) const;
  void add_counts(std::size_t step, ThingCounts<Number>& counts) const;

 protected:
  virtual void add_listed_counts(std::size_t step, ThingCounts<Number>& counts) const = 0;
  void list(const Key& key) { keys_.push_back(key); }
  void end() { ended_ = true; }
  void repeat(ThingIndex filler);

  [[nodiscard]] const std::vector<PackThing<Number>>& things() const { return *all_; }
  [[nodiscard]] CoverOrder order() const { return order_; }
  [[nodiscard]] const Number& total_of(const Key& key) const { return key.total(order_); }

 private:
  /// A step listed, and how many fillers a later one adds to it.
  [[nodiscard]] std::pair<std::size_t, std::size_t> listed(std::size_t step) const;

  std::shared_ptr<const std::vector<PackThing<Number>>> all_;
  CoverOrder order_;
  std::vector<Key> keys_{Key()};
  bool ended_ = false;
  std::optional<StepPeriod<Number>> period_;
};

extern template class ListedSteps<std::int64_t>;
extern template class ListedSteps<Rational>;

}  // namespace scalepan
