#include "packs/stems.hpp"

#include <utility>

namespace scalepan {

void CoverWork::fail_too_many() {
  fail("cover.too_many", "the packs' sizes and prices make too many covers to look at",
       "leave out packs that are hardly worth it, or buy for a smaller need");
}

template <class Number>
Stems<Number>::Stems(std::shared_ptr<const std::vector<PackThing<Number>>> all,
                     std::vector<ThingIndex> things, CoverOrder order,
                     std::shared_ptr<CoverWork> work)
    : all_(std::move(all)), things_(std::move(things)), order_(order), work_(std::move(work)) {
  choose_filler();
  queue_alone();
  stems_.push_back({});
  stair_.emplace(size_of_filler(), price_of(filler_key()));
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
auto Stems<Number>::alone(ThingIndex thing) const -> Stream {
  const Key& key = (*all_)[thing].key;
  Stream stream;
  stream.fill = whole_part(total_of(key), size_of_filler());
  stream.residue = total_of(key) - stream.fill * size_of_filler();
  stream.excess = price_of(key) - stream.fill * price_of(filler_key());
  stream.head = {key, stream.fill, stream.residue, stream.excess, thing, 0};
  stream.ready = true;
  return stream;
}

template <class Number>
void Stems<Number>::queue_alone() {
  for (const ThingIndex thing : things_) {
    if (thing != filler_) alone_.push_back(alone(thing));
  }
  std::ranges::sort(alone_, [](const Stream& a, const Stream& b) {
    return a.head.key == b.head.key ? a.head.thing < b.head.thing : a.head.key < b.head.key;
  });
}

/// Whether an earlier stem, filled up to the total of the candidate, goes before it.
template <class Number>
bool Stems<Number>::refused(const Stem& candidate) const {
  const auto& tread = stair_->find(candidate.residue);
  if (order_ == CoverOrder::price_first && tread.excess != candidate.excess) {
    return tread.excess < candidate.excess;
  }
  const Stem& stem = stems_[tread.stem];
  FilledStem<Number> filled{tread.stem, candidate.fill - stem.fill};
  if (candidate.residue > stem.residue) filled.fillers += 1;
  const Key other = key_of(filled);
  if (!(other == candidate.key)) return other < candidate.key;
  const std::size_t row = (*all_)[candidate.thing].row;
  const std::size_t other_row = (*all_)[std::min(stem.thing, filler_)].row;
  if (row != other_row) return other_row < row;
  ThingCounts<Number> counts{{candidate.thing, 1}};
  add_counts(candidate.before, counts);
  return compare_rows(*all_, counts_of(filled), counts) <= 0;
}

/// Makes the candidate of the stem that the head stands at.
template <class Number>
void Stems<Number>::move_head(Stream& stream) const {
  const Stem& stem = stems_[stream.head.before];
  stream.head.key = stem.key + (*all_)[stream.head.thing].key;
  stream.head.fill = stem.fill + stream.fill;
  stream.head.residue = stem.residue + stream.residue;
  stream.head.excess = stem.excess + stream.excess;
  if (stream.head.residue < size_of_filler()) return;
  stream.head.residue -= size_of_filler();
  stream.head.excess -= price_of(filler_key());
  stream.head.fill += 1;
}

/// Moves on to the first head that is not refused; false where there is none yet.
template <class Number>
bool Stems<Number>::ready(Stream& stream) {
  Stem& head = stream.head;
  if (stream.ready && total_of(head.key) > largest_total()) return true;
  if (stream.ready) ++head.before;
  stream.ready = false;
  const Number& size = total_of((*all_)[head.thing].key);
  for (; head.before < stems_.size(); ++head.before) {
    const Stem& stem = stems_[head.before];
    if (stem.thing < head.thing || total_of(stem.key) + size <= largest_total()) continue;
    move_head(stream);
    if (refused(head)) continue;
    stream.looked_at = stems_.size();
    stream.ready = true;
    return true;
  }
  return false;
}

template <class Number>
bool Stems<Number>::goes_before(const Stem& a, const Stem& b) const {
  if (!(a.key == b.key)) return a.key < b.key;
  const std::size_t row_a = (*all_)[a.thing].row;
  const std::size_t row_b = (*all_)[b.thing].row;
  if (row_a != row_b) return row_a < row_b;
  ThingCounts<Number> counts_a{{a.thing, 1}};
  ThingCounts<Number> counts_b{{b.thing, 1}};
  add_counts(a.before, counts_a);
  add_counts(b.before, counts_b);
  const auto rows = compare_rows(*all_, counts_a, counts_b);
  return rows != 0 ? rows < 0 : a.thing < b.thing;
}

template <class Number>
auto Stems<Number>::next_stream() -> Stream* {
  Stream* next = nullptr;
  for (Stream& stream : streams_) {
    if (!ready(stream)) continue;
    if (next == nullptr || goes_before(stream.head, next->head)) next = &stream;
  }
  while (next_alone_ < alone_.size() && total_of(alone_[next_alone_].head.key) <= largest_total()) {
    ++next_alone_;
  }
  if (next_alone_ < alone_.size()) {
    Stream& alone = alone_[next_alone_];
    if (next == nullptr || goes_before(alone.head, next->head)) next = &alone;
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
    const bool stem = fresh || !refused(next->head);
    if (stem) accept(next->head);
    if (!alone) {
      ++next->head.before;
      next->ready = false;
    } else {
      ++next_alone_;
      if (stem) start_stream(*next);
    }
    if (stem) return true;
  }
  return false;
}

template <class Number>
void Stems<Number>::start_stream(Stream stream) {
  stream.head.before = 1;
  stream.ready = false;
  streams_.push_back(stream);
}

template <class Number>
void Stems<Number>::accept(const Stem& stem) {
  work_->keep_one();
  const auto index = static_cast<std::uint32_t>(stems_.size());
  const bool cheaper_wins = order_ == CoverOrder::price_first;
  work_->look(stair_->put(stem.residue, {stem.excess, index}, cheaper_wins) / 4);
  stems_.push_back(stem);
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
