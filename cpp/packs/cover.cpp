#include "packs/cover.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "exact/error.hpp"

namespace scalepan {

namespace {

[[noreturn]] void fail_too_fine() {
  fail("cover.too_fine", "the packs' sizes or prices have no workable common step",
       "give sizes and prices with fewer digits, or fewer packs of unlike units");
}

[[noreturn]] void fail_too_many() {
  fail("cover.too_many",
       "more than " + std::to_string(CoverFinder::most_totals) +
           " sums of packs would have to be looked at",
       "leave out packs that are hardly worth it, or buy for a smaller need");
}

std::int64_t steps_of(const Rational& amount, const Rational& step) {
  const Rational steps = amount / step;
  if (!steps.is_word()) fail_too_fine();
  return steps.word_numerator();
}

Rational common_step_of(std::span<const Pack> packs, Rational Pack::* part) {
  std::optional<Rational> step;
  for (const Pack& pack : packs) {
    const Rational& amount = pack.*part;
    if (amount.is_zero()) continue;
    step = step ? common_step(*step, amount) : amount;
  }
  return step.value_or(1);
}

void expect_valid(std::span<const Pack> packs) {
  if (packs.empty()) fail("cover.no_packs", "there is no pack to choose from");
  for (const Pack& pack : packs) {
    if (pack.size.sign() <= 0) fail("cover.pack_size", "the size of a pack must be above zero");
    if (pack.price.sign() < 0) fail("cover.price", "the price of a pack is below zero");
  }
}

}  // namespace

CoverFinder::CoverFinder(std::span<const Pack> packs) : packs_(packs.begin(), packs.end()) {
  expect_valid(packs);
  size_step_ = common_step_of(packs, &Pack::size);
  price_step_ = common_step_of(packs, &Pack::price);
  for (std::size_t row = 0; row < packs.size(); ++row) {
    others_.push_back(
        {row, steps_of(packs[row].size, size_step_), steps_of(packs[row].price, price_step_)});
  }
  choose_best();
  drop_beaten();
}

void CoverFinder::choose_best() {
  const auto better = [](const Choice& a, const Choice& b) {
    const Wide left = wide_product(a.price, b.size);
    const Wide right = wide_product(b.price, a.size);
    if (left != right) return left < right;
    return a.size != b.size ? a.size > b.size : a.row < b.row;
  };
  const auto best = std::ranges::min_element(others_, better);
  best_ = *best;
  others_.erase(best);
}

void CoverFinder::drop_beaten() {
  std::vector<Choice> all = others_;
  all.push_back(best_);
  std::erase_if(others_, [&](const Choice& choice) {
    return std::ranges::any_of(all, [&](const Choice& other) {
      const bool cheaper = other.price < choice.price && other.size >= choice.size;
      const bool same = other.price == choice.price && other.size == choice.size;
      return cheaper || (same && other.row < choice.row);
    });
  });
}

/// A whole cover: some others, filled up with best packs.
struct CoverFinder::Candidate {
  Wide price;
  Wide total;
  Wide packs;
  std::vector<std::int64_t> counts;  // by row
};

/// One run of the dynamic programme, on grid steps.
class CoverFinder::Search {
 public:
  Search(const CoverFinder& finder, std::int64_t need) : finder_(finder), need_(need) {}

  std::vector<std::int64_t> run() {
    open_.emplace(0, Label{0, 0, std::vector<std::int64_t>(finder_.others_.size(), 0)});
    while (!open_.empty()) {
      const auto node = open_.extract(open_.begin());
      if (++looked_at_ > most_totals) fail_too_many();
      consider(node.key(), node.mapped());
      if (node.key() < need_) extend(node.key(), node.mapped());
    }
    return best_->counts;
  }

 private:
  struct Label {
    std::int64_t price = 0;
    std::int64_t packs = 0;
    std::vector<std::int64_t> counts;  // one an other choice, in row order
  };

  [[nodiscard]] std::int64_t price_of(std::int64_t price, std::int64_t more) const {
    std::int64_t sum = 0;
    if (!add_words(price, more, sum)) fail_too_fine();
    return sum;
  }

  [[nodiscard]] bool can_win(std::int64_t total, std::int64_t price) const {
    if (!best_) return true;
    const std::int64_t rest = std::max<std::int64_t>(0, need_ - total);
    const Wide least =
        wide_product(price, finder_.best_.size) + wide_product(rest, finder_.best_.price);
    return least <= best_->price * Wide(finder_.best_.size);
  }

  void extend(std::int64_t total, const Label& label) {
    if (label.packs + 1 >= finder_.best_.size) return;
    for (std::size_t i = 0; i < finder_.others_.size(); ++i) {
      const Choice& choice = finder_.others_[i];
      std::int64_t next = 0;
      if (!add_words(total, choice.size, next)) fail_too_fine();
      const std::int64_t price = price_of(label.price, choice.price);
      if (!can_win(next, price)) continue;
      Label grown{price, label.packs + 1, label.counts};
      ++grown.counts[i];
      offer(next, std::move(grown));
    }
  }

  void offer(std::int64_t total, Label label) {
    const auto [place, fresh] = open_.try_emplace(total);
    if (fresh || wins(label, place->second)) place->second = std::move(label);
  }

  /// Whether one label of a total beats the other: cheaper, fewer packs, more of earlier rows.
  static bool wins(const Label& label, const Label& known) {
    if (label.price != known.price) return label.price < known.price;
    if (label.packs != known.packs) return label.packs < known.packs;
    return label.counts > known.counts;
  }

  /// The others at `total`, filled up with best packs.
  void consider(std::int64_t total, const Label& label) {
    const std::int64_t rest = std::max<std::int64_t>(0, need_ - total);
    const std::int64_t size = finder_.best_.size;
    const std::int64_t fill = rest / size + (rest % size > 0 ? 1 : 0);
    Candidate candidate{Wide(label.price) + wide_product(fill, finder_.best_.price),
                        Wide(total) + wide_product(fill, size),
                        Wide(label.packs) + Wide(fill),
                        {}};
    if (best_ && !maybe_better(candidate)) return;
    candidate.counts.assign(finder_.packs_.size(), 0);
    for (std::size_t i = 0; i < label.counts.size(); ++i) {
      candidate.counts[finder_.others_[i].row] = label.counts[i];
    }
    candidate.counts[finder_.best_.row] = fill;
    if (!best_ || better(candidate)) best_ = std::move(candidate);
  }

  [[nodiscard]] bool maybe_better(const Candidate& candidate) const {
    if (candidate.price != best_->price) return candidate.price < best_->price;
    if (candidate.total != best_->total) return candidate.total < best_->total;
    return candidate.packs <= best_->packs;
  }

  [[nodiscard]] bool better(const Candidate& candidate) const {
    const bool tie = candidate.price == best_->price && candidate.total == best_->total &&
                     candidate.packs == best_->packs;
    return tie ? candidate.counts > best_->counts : maybe_better(candidate);
  }

  const CoverFinder& finder_;
  std::int64_t need_;
  std::map<std::int64_t, Label> open_;
  std::optional<Candidate> best_;
  std::size_t looked_at_ = 0;
};

Cover CoverFinder::cheapest(const Rational& need) const {
  std::vector<Rational> counts(packs_.size(), Rational(0));
  if (need.sign() <= 0) return cover_of(counts, need);
  // Best packs that every best cover of a large need holds, taken off before the search.
  std::int64_t largest = best_.size;
  for (const Choice& choice : others_) largest = std::max(largest, choice.size);
  const Rational steps = ceil(need / size_step_);
  const Rational reach = others_.empty() ? Rational(0) : Rational(best_.size) * largest;
  Rational sure = floor((steps - reach) / best_.size);
  if (sure.sign() < 0) sure = 0;
  const Rational rest = steps - sure * best_.size;
  if (!rest.is_word()) fail_too_fine();
  const std::vector<std::int64_t> found = Search(*this, rest.word_numerator()).run();
  for (std::size_t row = 0; row < counts.size(); ++row) counts[row] = found[row];
  counts[best_.row] += sure;
  return cover_of(counts, need);
}

Cover CoverFinder::cover_of(const std::vector<Rational>& counts, const Rational& need) const {
  Cover cover{counts, 0, 0, 0};
  for (std::size_t row = 0; row < counts.size(); ++row) {
    cover.price += counts[row] * packs_[row].price;
    cover.total += counts[row] * packs_[row].size;
  }
  cover.leftover = cover.total - (need.sign() > 0 ? need : Rational(0));
  return cover;
}

Cover cheapest_cover(const Rational& need, std::span<const Pack> packs) {
  return CoverFinder(packs).cheapest(need);
}

}  // namespace scalepan
