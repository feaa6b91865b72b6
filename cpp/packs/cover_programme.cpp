#include "packs/cover_programme.hpp"

#include <utility>

#include "packs/either_steps.hpp"

namespace scalepan {

namespace {

/// Beyond these the choices would be too many, or nested too deep.
constexpr std::size_t most_branches = 8;
constexpr std::size_t most_choices = 2000;

/// Made at once, so that most functions are known in full from the beginning.
constexpr std::size_t few_steps = 1024;
constexpr std::size_t few_looks = 20'000;

/// Where the stems alone can answer, more steps are listed only as questions are asked.
constexpr std::size_t steps_a_question = 256;
constexpr std::size_t most_listed = 65'536;

/// Far above all totals that listing can reach (`CoverNumbers` has the bound).
constexpr std::int64_t beyond_listing = std::int64_t{1} << 62U;

void to_number(const Rational& amount, Rational& out) { out = amount; }
void to_number(const Rational& amount, std::int64_t& out) {
  const bool small = amount < Rational(beyond_listing);
  out = small ? amount.word_numerator() : beyond_listing;
}

/// Where nothing can be bought any number of times, before the limited things are added.
template <class Number>
class NoSteps final : public ListedSteps<Number> {
 public:
  NoSteps(std::shared_ptr<const std::vector<PackThing<Number>>> all, CoverOrder order)
      : ListedSteps<Number>(std::move(all), order) {
    this->end();
  }
  bool extend() override { return false; }

 protected:
  void add_listed_counts(std::size_t, ThingCounts<Number>&) const override {}
};

}  // namespace

template <class Number>
CoverProgramme<Number>::CoverProgramme(std::vector<LimitedThing<Number>> things, CoverOrder order)
    : order_(order) {
  std::ranges::sort(things, [](const auto& a, const auto& b) {
    if (a.thing.row != b.thing.row) return a.thing.row < b.thing.row;
    return a.thing.key.packs != b.thing.key.packs ? a.thing.key.packs < b.thing.key.packs
                                                  : a.thing.purchase < b.thing.purchase;
  });
  all_ = things_of(things);
  sort_out(things);
  if (branches_.size() > most_branches) CoverWork::fail_too_many();
  steps_ = unlimited(free_, 0);
  for (const Limit& limit : limits_) {
    steps_ = limited(steps_, limit.thing, limit.least, limit.limit);
  }
  for (const auto& [number, alternatives] : only_one_) steps_ = one_of(steps_, alternatives);
  if (choices_ > 0 || free_.empty()) stems_ = nullptr;
}

template <class Number>
auto CoverProgramme<Number>::things_of(const std::vector<LimitedThing<Number>>& things) -> All {
  std::vector<PackThing<Number>> all;
  all.reserve(things.size());
  for (const LimitedThing<Number>& thing : things) all.push_back(thing.thing);
  return std::make_shared<const std::vector<PackThing<Number>>>(std::move(all));
}

template <class Number>
void CoverProgramme<Number>::sort_out(const std::vector<LimitedThing<Number>>& things) {
  for (std::size_t i = 0; i < things.size(); ++i) {
    const auto index = static_cast<ThingIndex>(i);
    if (things[i].limit || things[i].one_of) continue;
    if (things[i].least == Number(1)) {
      free_.push_back(index);
    } else {
      branches_.push_back({index, things[i].least});
    }
  }
  for (std::size_t i = 0; i < things.size(); ++i) {
    const auto index = static_cast<ThingIndex>(i);
    if (things[i].one_of) {
      if (!beaten(things[i])) only_one_[*things[i].one_of].push_back(index);
    } else if (things[i].limit && !beaten(things[i])) {
      limits_.push_back({index, things[i].least, *things[i].limit});
    }
  }
}

/// A limited thing beside an unlimited one that is cheaper and at least as large.
template <class Number>
bool CoverProgramme<Number>::beaten(const LimitedThing<Number>& thing) const {
  if (order_ != CoverOrder::price_first) return false;
  const CoverKey<Number>& key = thing.thing.key;
  return std::ranges::any_of(free_, [&](ThingIndex other) {
    const CoverKey<Number>& known = (*all_)[other].key;
    return known.price(order_) < key.price(order_) && known.total(order_) >= key.total(order_);
  });
}

template <class Number>
auto CoverProgramme<Number>::unlimited(std::vector<ThingIndex> free, std::size_t next) -> Steps {
  if (next < branches_.size()) {
    const Branch& branch = branches_[next];
    std::vector<ThingIndex> more = free;
    more.push_back(branch.thing);
    std::ranges::sort(more);
    const Steps without = unlimited(std::move(free), next + 1);
    return either(without, unlimited(std::move(more), next + 1), branch.thing, branch.least);
  }
  if (free.empty()) return std::make_shared<NoSteps<Number>>(all_, order_);
  stems_ = std::make_shared<Stems<Number>>(all_, std::move(free), order_, work_);
  return std::make_shared<FilledSteps<Number>>(all_, stems_, order_, work_);
}

template <class Number>
auto CoverProgramme<Number>::either(const Steps& without, const Steps& with, ThingIndex thing,
                                    const Number& count) -> Steps {
  if (++choices_ > most_choices) CoverWork::fail_too_many();
  Bundle<Number> bundle{thing, count, (*all_)[thing].key * count};
  return std::make_shared<EitherSteps<Number>>(all_, without, with, std::move(bundle), order_,
                                               work_);
}

/// Up to `most` of a thing, as a sum of bundles of 1, 2, 4 ... and of what is then left.
template <class Number>
auto CoverProgramme<Number>::bundled(Steps steps, ThingIndex thing, Number most) -> Steps {
  for (Number count(1); most > Number{}; count += count) {
    const Number taken = std::min(count, most);
    steps = either(steps, steps, thing, taken);
    most -= taken;
  }
  return steps;
}

template <class Number>
auto CoverProgramme<Number>::limited(const Steps& steps, ThingIndex thing, const Number& least,
                                     const Number& limit) -> Steps {
  if (least == Number(1)) return bundled(steps, thing, limit);
  return either(steps, bundled(steps, thing, limit - least), thing, least);
}

template <class Number>
auto CoverProgramme<Number>::one_of(const Steps& steps, const std::vector<ThingIndex>& things)
    -> Steps {
  Steps best = steps;
  for (const ThingIndex thing : things) best = either(best, steps, thing, Number(1));
  return best;
}

template <class Number>
const Number& CoverProgramme<Number>::size_of(ThingIndex thing) const {
  return (*all_)[thing].key.total(order_);
}

template <class Number>
void CoverProgramme<Number>::settle_if_cheap() {
  while (!steps_->closed() && steps_->size() < few_steps && work_->looks() < few_looks) {
    steps_->extend();
  }
  may_list_ = steps_->size();
}

template <class Number>
void CoverProgramme<Number>::list_to(const Number& target) {
  may_list_ = std::min(may_list_ + steps_a_question, most_listed);
  while (!steps_->closed() && steps_->largest_total() <= target) {
    if (stems_ && steps_->size() >= may_list_) break;
    steps_->extend();
  }
}

template <class Number>
void CoverProgramme<Number>::grow_stems_to(const Number& target) {
  while (!stems_->complete() && stems_->largest_total() <= target) stems_->grow();
}

template <class Number>
std::optional<FoundStep> CoverProgramme<Number>::find(const CoverQuestion& question) {
  Number target{};
  to_number(question.need, target);
  if (!steps_->closed()) list_to(target);
  const Rational listed(steps_->largest_total());
  const bool within = question.above ? question.need < listed : question.need <= listed;
  if (!within && steps_->ended()) return std::nullopt;
  if (within || steps_->closed()) return in_list(question);
  by_stems_ = true;
  grow_stems_to(target);
  return in_stems(question);
}

namespace {

/// A need as some fillers, taken off as long as it stays above the start of the period, and a
/// rest.
struct Reduced {
  Rational fillers;
  Rational rest;
};

Reduced reduce(const CoverQuestion& question, const Rational& from, const Rational& filler) {
  if (question.above ? question.need < from : question.need <= from) return {0, question.need};
  const Rational over = (question.need - from) / filler;
  const Rational fillers = question.above ? floor(over) + 1 : ceil(over);
  return {fillers, question.need - fillers * filler};
}

}  // namespace

template <class Number>
FoundStep CoverProgramme<Number>::in_list(const CoverQuestion& question) const {
  const auto& period = steps_->period();
  const Rational from(steps_->largest_total());
  const Rational filler = period ? Rational(size_of(period->filler)) : Rational(0);
  const Reduced reduced = period ? reduce(question, from, filler) : Reduced{0, question.need};
  Number target{};
  to_number(reduced.rest, target);
  const auto& keys = steps_->keys();
  const auto place = std::ranges::partition_point(keys, [&](const CoverKey<Number>& key) {
    const Number& total = key.total(order_);
    return question.above ? total <= target : total < target;
  });
  const auto index = static_cast<std::size_t>(place - keys.begin());
  ThingCounts<Number> counts;
  steps_->add_counts(index, counts);
  FoundStep found;
  found.counts = by_purchase(counts, period ? period->filler : 0, reduced.fillers);
  const Rational added = reduced.fillers * filler;
  found.upto = Rational(keys[index].total(order_)) + added;
  if (reduced.fillers.sign() > 0 && index == period->begin) {
    found.after = from + added - filler;
  } else {
    found.after = Rational(keys[index - 1].total(order_)) + added;
  }
  return found;
}

template <class Number>
FoundStep CoverProgramme<Number>::in_stems(const CoverQuestion& question) const {
  const Rational filler(size_of(stems_->filler()));
  const Rational from(stems_->largest_total());
  const Reduced reduced = reduce(question, from, filler);
  const Rational added = reduced.fillers * filler;
  FoundStep found;
  if (reduced.fillers.sign() > 0) found.after = from + added - filler;
  FilledStem<Number> best;
  if (question.above ? reduced.rest.sign() >= 0 : reduced.rest.sign() > 0) {
    Number target{};
    to_number(reduced.rest, target);
    best = stems_->best_for(target, question.above);
    if (question.with_before) {
      const Number price = stems_->key_of(best).price(order_);
      const Rational before(stems_->step_before(target, price, question.above));
      found.after = std::max(found.after, before + added);
    }
  }
  found.upto = Rational(stems_->key_of(best).total(order_)) + added;
  found.counts = by_purchase(stems_->counts_of(best), stems_->filler(), reduced.fillers);
  return found;
}

template <class Number>
std::map<std::size_t, Rational> CoverProgramme<Number>::by_purchase(
    const ThingCounts<Number>& counts, ThingIndex filler, const Rational& fillers) const {
  std::map<std::size_t, Rational> purchases;
  for (const auto& [thing, count] : counts) purchases[(*all_)[thing].purchase] += Rational(count);
  if (!fillers.is_zero()) purchases[(*all_)[filler].purchase] += fillers;
  return purchases;
}

template <class Number>
std::optional<Rational> CoverProgramme<Number>::most() {
  if (!free_.empty() || !branches_.empty()) return std::nullopt;
  Rational sum;
  for (const Limit& limit : limits_) {
    sum += Rational(limit.limit) * Rational(size_of(limit.thing));
  }
  for (const auto& [number, alternatives] : only_one_) {
    Rational largest;
    for (const ThingIndex thing : alternatives) {
      largest = std::max(largest, Rational(size_of(thing)));
    }
    sum += largest;
  }
  return sum;
}

template <class Number>
auto CoverProgramme<Number>::period() -> std::optional<Period> {
  if (free_.empty() && branches_.empty()) return std::nullopt;
  Number target{};
  to_number(Rational(beyond_listing), target);
  if (!steps_->closed() && stems_) grow_stems_to(target);
  if (!stems_) list_to(target);
  const bool listed = steps_->period().has_value();
  const ThingIndex filler = listed ? steps_->period()->filler : stems_->filler();
  return Period{Rational(listed ? steps_->period()->from : stems_->largest_total()),
                (*all_)[filler].purchase};
}

template class CoverProgramme<std::int64_t>;
template class CoverProgramme<Rational>;

}  // namespace scalepan
