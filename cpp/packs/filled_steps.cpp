#include "packs/filled_steps.hpp"

#include <utility>

namespace scalepan {

template <class Number>
FilledSteps<Number>::FilledSteps(std::shared_ptr<const std::vector<PackThing<Number>>> all,
                                 std::shared_ptr<Stems<Number>> stems, CoverOrder order,
                                 std::shared_ptr<CoverWork> work)
    : ListedSteps<Number>(std::move(all), order),
      stems_(std::move(stems)),
      work_(std::move(work)) {}

template <class Number>
bool FilledSteps<Number>::has_stem(std::size_t stem) {
  while (stem >= stems_->size() && stems_->grow()) {
  }
  return stem < stems_->size();
}

template <class Number>
void FilledSteps<Number>::take(const Key& key, Origin origin) {
  work_->keep_one();
  work_->look(2);
  this->list(key);
  origins_.push_back(origin);
}

/// A stem goes before filled steps of its key, else it would be none.
template <class Number>
bool FilledSteps<Number>::extend() {
  if (this->closed()) return false;
  if (!has_stem(next_stem_)) {
    this->repeat(stems_->filler());
    return false;
  }
  const Key& stem = stems_->key(next_stem_);
  const auto& keys = this->keys();
  const Key& filler = stems_->filler_key();
  while (this->total_of(keys[next_filled_]) + this->total_of(filler) <= this->largest_total()) {
    ++next_filled_;
  }
  const Key filled = keys[next_filled_] + filler;
  if (filled < stem) {
    take(filled, {static_cast<std::uint32_t>(next_filled_++), false});
  } else {
    take(stem, {static_cast<std::uint32_t>(next_stem_++), true});
  }
  return true;
}

template <class Number>
void FilledSteps<Number>::add_listed_counts(std::size_t step, ThingCounts<Number>& counts) const {
  Number fillers{};
  for (; !origins_[step].stem; step = origins_[step].before) fillers += 1;
  if (fillers > Number{}) counts[stems_->filler()] += fillers;
  stems_->add_counts(origins_[step].before, counts);
}

template class FilledSteps<std::int64_t>;
template class FilledSteps<Rational>;

}  // namespace scalepan
