#include "packs/either_steps.hpp"

#include <utility>

namespace scalepan {

template <class Number>
EitherSteps<Number>::EitherSteps(std::shared_ptr<const std::vector<PackThing<Number>>> all,
                                 std::shared_ptr<ListedSteps<Number>> without,
                                 std::shared_ptr<ListedSteps<Number>> with, Bundle<Number> bundle,
                                 CoverOrder order, std::shared_ptr<CoverWork> work)
    : ListedSteps<Number>(std::move(all), order),
      without_(std::move(without)),
      with_(std::move(with)),
      bundle_(std::move(bundle)),
      work_(std::move(work)) {}

/// To the first step with a larger total than all listed; false where there is none.
template <class Number>
bool EitherSteps<Number>::skip_covered(ListedSteps<Number>& steps, std::size_t& next,
                                       const Key& more) {
  for (; steps.has(next); ++next) {
    if (this->total_of(steps.key(next) + more) > this->largest_total()) return true;
    work_->look(1);
  }
  return false;
}

template <class Number>
bool EitherSteps<Number>::bundle_first(const Key& without, const Key& with) const {
  if (!(without == with)) return with < without;
  ThingCounts<Number> counts_without;
  without_->add_counts(next_without_, counts_without);
  ThingCounts<Number> counts_with{{bundle_.thing, bundle_.count}};
  with_->add_counts(next_with_, counts_with);
  return compare_rows(this->things(), counts_with, counts_without) < 0;
}

template <class Number>
bool EitherSteps<Number>::extend() {
  if (this->closed()) return false;
  const bool without = skip_covered(*without_, next_without_, Key());
  const bool with = skip_covered(*with_, next_with_, bundle_.key);
  if (!without && !with) {
    this->end();
    return false;
  }
  const Key key_without = without ? without_->key(next_without_) : Key();
  const Key key_with = with ? with_->key(next_with_) + bundle_.key : Key();
  const bool bundle = with && (!without || bundle_first(key_without, key_with));
  work_->keep_one();
  work_->look(2);
  this->list(bundle ? key_with : key_without);
  origins_.push_back({bundle, bundle ? next_with_++ : next_without_++});
  close_where_both_have();
  return true;
}

template <class Number>
void EitherSteps<Number>::close_where_both_have() {
  if (!without_->closed() || !with_->closed()) return;
  if (!from_known_) {
    repeats_from_ = both_repeat_from();
    from_known_ = true;
  }
  if (!repeats_from_ || Rational(this->largest_total()) < *repeats_from_) return;
  this->repeat(with_->period()->filler);
}

/// None where both end.
template <class Number>
std::optional<Rational> EitherSteps<Number>::both_repeat_from() const {
  if (!with_->period()) return std::nullopt;
  const Rational with(with_->period()->from + this->total_of(bundle_.key));
  if (!without_->period()) return std::max(with, Rational(without_->largest_total()));
  if (without_->period()->filler == with_->period()->filler) {
    return std::max(with, Rational(without_->period()->from));
  }
  return std::max(with, one_wins_from());
}

/// Fillers of `without` of one total with whole fillers of `with`, at least a bundle of those.
template <class Number>
Rational EitherSteps<Number>::one_wins_from() const {
  const Rational mine(this->total_of(without_->period()->key));
  const Rational other(this->total_of(with_->period()->key));
  const Rational common = mine * other / common_step(mine, other);
  const Rational times = ceil(Rational(bundle_.count) * other / common);
  return Rational(without_->period()->from) + times * common;
}

template <class Number>
void EitherSteps<Number>::add_listed_counts(std::size_t step, ThingCounts<Number>& counts) const {
  const Origin& origin = origins_[step];
  if (!origin.bundle) return without_->add_counts(origin.step, counts);
  counts[bundle_.thing] += bundle_.count;
  with_->add_counts(origin.step, counts);
}

template class EitherSteps<std::int64_t>;
template class EitherSteps<Rational>;

}  // namespace scalepan
