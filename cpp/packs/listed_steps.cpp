#include "packs/listed_steps.hpp"

#include <utility>

namespace scalepan {

template <class Number>
bool ListedSteps<Number>::has(std::size_t step) {
  while (step >= keys_.size() && !closed()) {
    if (!extend()) break;
  }
  return step < keys_.size() || period_.has_value();
}

template <class Number>
std::pair<std::size_t, std::size_t> ListedSteps<Number>::listed(std::size_t step) const {
  if (step < keys_.size()) return {step, 0};
  const std::size_t span = keys_.size() - period_->begin;
  const std::size_t later = step - period_->begin;
  return {period_->begin + later % span, later / span};
}

template <class Number>
auto ListedSteps<Number>::key(std::size_t step) const -> Key {
  const auto [at, fillers] = listed(step);
  if (fillers == 0) return keys_[at];
  return keys_[at] + period_->key * Number(static_cast<std::int64_t>(fillers));
}

template <class Number>
void ListedSteps<Number>::add_counts(std::size_t step, ThingCounts<Number>& counts) const {
  const auto [at, fillers] = listed(step);
  if (fillers > 0) counts[period_->filler] += Number(static_cast<std::int64_t>(fillers));
  add_listed_counts(at, counts);
}

template <class Number>
void ListedSteps<Number>::repeat(ThingIndex filler) {
  const Key& key = things()[filler].key;
  const Number from = largest_total();
  const auto within = [&](const Key& step) { return total_of(step) + total_of(key) > from; };
  const auto begin = std::ranges::partition_point(keys_, [&](const Key& k) { return !within(k); });
  period_ = StepPeriod<Number>{from, static_cast<std::size_t>(begin - keys_.begin()), filler, key};
}

template class ListedSteps<std::int64_t>;
template class ListedSteps<Rational>;

}  // namespace scalepan
