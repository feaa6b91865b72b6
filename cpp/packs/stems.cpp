#include "packs/stems.hpp"

#include <utility>

namespace scalepan {

void CoverWork::fail_too_many() {
  fail("cover.too_many", "the packs' sizes and prices make too many covers to look at",
       "leave out packs that are hardly worth it, or buy for a smaller need");
}

template <class Number>
Stems<Number>::Stems(std::shared_ptr<const std::vector<Thing<Number>>> all,
                     std::vector<ThingIndex> things, CoverOrder order,
                     std::shared_ptr<CoverWork> work)
    : all_(std::move(all)), things_(std::move(things)), order_(order), work_(std::move(work)) {
  choose_filler();
  queue_alone();
  stems_.push_back({});
  stair_residues_.push_back(Number{});
  stair_.push_back(0);
}

template <class Number>
void Stems<Number>::choose_filler() {
  const auto better = [&](ThingIndex a, ThingIndex b) {
    const Key& left = (*all_)[a].key;
    const Key& right = (*all_)[b].key;
    const auto price_a = exact_product(price_of(left), total_of(right));
    const auto price_b = exact_product(price_of(right), total_of(left));
    if (price_a != price_b) return price_a < price_b;
    const auto packs_a = exact_product(left.packs, total_of(right));
    const auto packs_b = exact_product(right.packs, total_of(left));
    return packs_a != packs_b ? packs_a < packs_b : a < b;
  };
  filler_ = *std::ranges::min_element(things_, better);
}

template <class Number>
void Stems<Number>::queue_alone() {
  for (const ThingIndex thing : things_) {
    if (thing == filler_) continue;
    alone_.push_back({thing, 0, true, 0, (*all_)[thing].key});
  }
  std::ranges::sort(alone_, [](const Stream& a, const Stream& b) {
    return a.key == b.key ? a.thing < b.thing : a.key < b.key;
  });
}

template <class Number>
auto Stems<Number>::stem_of(const Key& key, ThingIndex thing, std::uint32_t before) const -> Stem {
  Stem stem{key, whole_part(total_of(key), size_of_filler()), {}, {}, thing, before};
  stem.residue = total_of(key) - stem.fill * size_of_filler();
  stem.excess = price_of(key) - stem.fill * price_of(filler_key());
  return stem;
}

template <class Number>
FilledStem<Number> Stems<Number>::filled_now(const Stem& candidate) const {
  const auto place = std::ranges::lower_bound(stair_residues_, candidate.residue);
  const bool around = place == stair_residues_.end();
  const auto at = around ? 0 : static_cast<std::size_t>(place - stair_residues_.begin());
  const Stem& stem = stems_[stair_[at]];
  Number fillers = candidate.fill - stem.fill;
  if (around) fillers += 1;
  return {stair_[at], fillers};
}

/// Whether an earlier stem, filled up to the total of a candidate, goes before it.
template <class Number>
bool Stems<Number>::refused(const Key& key, ThingIndex thing, std::uint32_t before) const {
  if (total_of(key) <= largest_total()) return true;
  const FilledStem<Number> filled = filled_now(stem_of(key, thing, before));
  const Key other = key_of(filled);
  if (!(other == key)) return other < key;
  ThingCounts<Number> counts{{thing, 1}};
  add_counts(before, counts);
  return compare_rows(*all_, counts_of(filled), counts) <= 0;
}

/// Moves on to the first head that is not refused; false where there is none yet.
template <class Number>
bool Stems<Number>::ready(Stream& stream) {
  if (stream.ready && total_of(stream.key) > largest_total()) return true;
  if (stream.ready) ++stream.head;
  stream.ready = false;
  const Key& thing = (*all_)[stream.thing].key;
  for (; stream.head < stems_.size(); ++stream.head) {
    const Stem& stem = stems_[stream.head];
    if (stem.thing < stream.thing) continue;
    stream.key = stem.key + thing;
    if (refused(stream.key, stream.thing, stream.head)) continue;
    stream.looked_at = stems_.size();
    stream.ready = true;
    return true;
  }
  return false;
}

template <class Number>
bool Stems<Number>::goes_before(const Stream& a, const Stream& b) const {
  if (!(a.key == b.key)) return a.key < b.key;
  const std::size_t row_a = (*all_)[a.thing].row;
  const std::size_t row_b = (*all_)[b.thing].row;
  if (row_a != row_b) return row_a < row_b;
  ThingCounts<Number> counts_a{{a.thing, 1}};
  ThingCounts<Number> counts_b{{b.thing, 1}};
  add_counts(a.head, counts_a);
  add_counts(b.head, counts_b);
  const auto rows = compare_rows(*all_, counts_a, counts_b);
  return rows != 0 ? rows < 0 : a.thing < b.thing;
}

template <class Number>
auto Stems<Number>::next_stream() -> Stream* {
  Stream* next = nullptr;
  for (Stream& stream : streams_) {
    if (ready(stream) && (next == nullptr || goes_before(stream, *next))) next = &stream;
  }
  while (next_alone_ < alone_.size() && total_of(alone_[next_alone_].key) <= largest_total()) {
    ++next_alone_;
  }
  if (next_alone_ < alone_.size()) {
    Stream& alone = alone_[next_alone_];
    if (next == nullptr || goes_before(alone, *next)) next = &alone;
  }
  return next;
}

template <class Number>
bool Stems<Number>::grow() {
  while (!complete_) {
    work_->look(streams_.size() + 1);
    Stream* next = next_stream();
    if (next == nullptr) {
      complete_ = true;
      return false;
    }
    const bool alone = next_alone_ < alone_.size() && next == &alone_[next_alone_];
    const bool fresh = next->looked_at == stems_.size();
    if (!fresh && refused(next->key, next->thing, next->head)) {
      if (alone) {
        ++next_alone_;
      } else {
        ++next->head;
        next->ready = false;
      }
      continue;
    }
    accept(*next);
    if (alone) {
      streams_.push_back({next->thing, 1, false, 0, {}});
      ++next_alone_;
    }
    return true;
  }
  return false;
}

template <class Number>
void Stems<Number>::accept(const Stream& stream) {
  work_->keep_one();
  const Stem stem = stem_of(stream.key, stream.thing, stream.head);
  put_on_stair(stem);
  stems_.push_back(stem);
}

/// Takes away what a new stem beats at the residues below its own. The empty stem stays: nothing
/// is cheaper than a price without any excess.
template <class Number>
void Stems<Number>::put_on_stair(const Stem& stem) {
  const auto place = std::ranges::lower_bound(stair_residues_, stem.residue);
  auto end = static_cast<std::size_t>(place - stair_residues_.begin());
  auto begin = end;
  if (place != stair_residues_.end() && *place == stem.residue) ++end;
  if (order_ == CoverOrder::price_first) {
    while (begin > 0 && stem.excess < stems_[stair_[begin - 1]].excess) --begin;
  }
  work_->look((stair_.size() - begin) / 4);  // they move up
  const auto index = static_cast<std::uint32_t>(stems_.size());
  const auto at = static_cast<std::ptrdiff_t>(begin);
  if (begin == end) {
    stair_residues_.insert(stair_residues_.begin() + at, stem.residue);
    stair_.insert(stair_.begin() + at, index);
    return;
  }
  stair_residues_[begin] = stem.residue;
  stair_[begin] = index;
  const auto last = static_cast<std::ptrdiff_t>(end);
  stair_residues_.erase(stair_residues_.begin() + at + 1, stair_residues_.begin() + last);
  stair_.erase(stair_.begin() + at + 1, stair_.begin() + last);
}

template <class Number>
FilledStem<Number> Stems<Number>::filled_for(std::size_t stem, const Number& fill,
                                             const Number& residue, bool above) const {
  Number fillers = fill - stems_[stem].fill;
  if (above ? residue >= stems_[stem].residue : residue > stems_[stem].residue) fillers += 1;
  return {stem, fillers > Number{} ? fillers : Number{}};
}

template <class Number>
FilledStem<Number> Stems<Number>::best_for(const Number& need, bool above) const {
  const Number fill = whole_part(need, size_of_filler());
  const Number residue = need - fill * size_of_filler();
  FilledStem<Number> best = filled_for(0, fill, residue, above);
  Key best_key = key_of(best);
  for (std::size_t i = 1; i < stems_.size(); ++i) {
    const FilledStem<Number> filled = filled_for(i, fill, residue, above);
    const Key key = key_of(filled);
    const bool better = key == best_key
                            ? compare_rows(*all_, counts_of(filled), counts_of(best)) < 0
                            : key < best_key;
    if (!better) continue;
    best = filled;
    best_key = key;
  }
  return best;
}

template <class Number>
Number Stems<Number>::step_before(const Number& need, const Number& price, bool above) const {
  Number largest{};
  for (const Stem& stem : stems_) {
    const Number& total = total_of(stem.key);
    if (above ? total > need : total >= need) continue;
    if (order_ == CoverOrder::price_first && price_of(stem.key) > price) continue;
    Number fillers = whole_part(need - total, size_of_filler());
    if (!above && total + fillers * size_of_filler() == need) fillers -= 1;
    if (order_ == CoverOrder::price_first && price_of(filler_key()) > Number{}) {
      fillers = std::min(fillers, whole_part(price - price_of(stem.key), price_of(filler_key())));
    }
    largest = std::max(largest, Number(total + fillers * size_of_filler()));
  }
  return largest;
}

template <class Number>
void Stems<Number>::add_counts(std::size_t stem, ThingCounts<Number>& counts) const {
  for (; stem != 0; stem = stems_[stem].before) counts[stems_[stem].thing] += 1;
}

template <class Number>
ThingCounts<Number> Stems<Number>::counts_of(const FilledStem<Number>& cover) const {
  ThingCounts<Number> counts;
  if (cover.fillers > Number{}) counts[filler_] = cover.fillers;
  add_counts(cover.stem, counts);
  return counts;
}

template class Stems<std::int64_t>;
template class Stems<Rational>;

}  // namespace scalepan
