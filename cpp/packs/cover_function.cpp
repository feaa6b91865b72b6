#include "packs/cover_function.hpp"

#include <atomic>
#include <mutex>
#include <utility>
#include <variant>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "packs/cover_numbers.hpp"
#include "packs/cover_programme.hpp"

namespace scalepan {

class CoverFunction::Solver {
 public:
  Solver(std::span<const Purchase> purchases, CoverOrder order)
      : purchases_(purchases.begin(), purchases.end()) {
    expect_valid(purchases_);
    for (const Purchase& purchase : purchases_) rows_ = std::max(rows_, purchase.row + 1);
    numbers_ = numbers_for(purchases_);
    if (numbers_.words) {
      words_.emplace(word_things(purchases_, numbers_, order), order);
      words_->settle_if_cheap();
    } else {
      fractions_.emplace(fraction_things(purchases_, order), order);
      fractions_->settle_if_cheap();
    }
    note_settled();
  }

  /// None where there is not so much to buy.
  std::optional<CoverStep> find(const CoverQuestion& question) {
    if (settled_.load(std::memory_order_acquire)) return find_now(question);
    const std::scoped_lock lock(mutex_);
    const auto found = find_now(question);
    note_settled();
    return found;
  }

  std::optional<CoverPeriod> period() {
    const std::scoped_lock lock(mutex_);
    const auto known = words_ ? words_period() : fractions_period();
    note_settled();
    return known;
  }

  std::optional<Rational> most() {
    const std::scoped_lock lock(mutex_);
    const auto most = words_ ? words_->most() : fractions_->most();
    return most ? std::optional(*most * numbers_.size_step) : std::nullopt;
  }

  std::string kernel() {
    const std::scoped_lock lock(mutex_);
    const bool stems = words_ ? words_->by_stems() : fractions_->by_stems();
    return std::string(stems ? "stems" : "steps") + (words_ ? " in words" : " in fractions");
  }

  const CoverTable* table() {
    return settled_.load(std::memory_order_acquire) && table_ ? &*table_ : nullptr;
  }

  [[nodiscard]] const CoverNumbers& numbers() const { return numbers_; }
  [[nodiscard]] const std::vector<Purchase>& purchases() const { return purchases_; }

  /// The cover of these purchases for a need.
  [[nodiscard]] Cover cover_of(const std::map<std::size_t, Rational>& counts,
                               const Rational& need) const {
    Cover cover;
    cover.counts.resize(rows_);
    cover.bought.resize(purchases_.size());
    for (const auto& [index, count] : counts) {
      const Purchase& purchase = purchases_[index];
      cover.bought[index] = count;
      cover.counts[purchase.row] += count * purchase.packs;
      cover.price += count * purchase.price;
      cover.total += count * purchase.size;
    }
    cover.leftover = cover.total - (need.sign() > 0 ? need : Rational(0));
    return cover;
  }

 private:
  std::optional<CoverStep> find_now(const CoverQuestion& question) {
    const std::optional<FoundStep> found =
        words_ ? words_->find(in_words(question)) : fractions_->find(question);
    if (!found) return std::nullopt;
    const Rational upto = found->upto * numbers_.size_step;
    return CoverStep{found->after * numbers_.size_step, upto, cover_of(found->counts, upto)};
  }

  [[nodiscard]] CoverQuestion in_words(const CoverQuestion& question) const {
    const Rational steps = question.need / numbers_.size_step;
    return {question.above ? floor(steps) + 1 : ceil(steps), false, question.with_before};
  }

  std::optional<CoverPeriod> words_period() { return told_period(words_->period()); }
  std::optional<CoverPeriod> fractions_period() { return told_period(fractions_->period()); }

  template <class Period>
  std::optional<CoverPeriod> told_period(const std::optional<Period>& period) const {
    if (!period) return std::nullopt;
    return CoverPeriod{period->from * numbers_.size_step, purchases_[period->filler].size,
                       period->filler};
  }

  void note_settled() {
    if (settled_.load(std::memory_order_relaxed)) return;
    if (!(words_ ? words_->settled() : fractions_->settled())) return;
    if (words_) table_.emplace(words_->steps(), words_->order());
    settled_.store(true, std::memory_order_release);
  }

  std::vector<Purchase> purchases_;
  std::size_t rows_ = 0;
  CoverNumbers numbers_;
  std::optional<CoverProgramme<std::int64_t>> words_;
  std::optional<CoverProgramme<Rational>> fractions_;
  std::optional<CoverTable> table_;
  std::mutex mutex_;
  std::atomic<bool> settled_ = false;
};

CoverFunction::CoverFunction(std::span<const Purchase> purchases, CoverOrder order)
    : solver_(std::make_unique<Solver>(purchases, order)) {}

CoverFunction::~CoverFunction() = default;
CoverFunction::CoverFunction(CoverFunction&&) noexcept = default;
CoverFunction& CoverFunction::operator=(CoverFunction&&) noexcept = default;

void fail_limit(const std::string& most, const std::string& need) {
  fail("cover.limit",
       "at most " + most + " can be bought within the limits, but " + need + " is needed",
       "raise a limit, add a pack, or buy for a smaller need");
}

Cover CoverFunction::at(const Rational& need) const {
  if (need.sign() <= 0) return solver_->cover_of({}, need);
  std::optional<CoverStep> found = solver_->find({need, false, false});
  if (!found) fail_limit(exact_text(*most()), exact_text(need));
  found->cover.leftover = found->cover.total - need;
  return std::move(found->cover);
}

CoverStep CoverFunction::step(const Rational& need) const {
  if (need.sign() <= 0) fail("cover.need", "a step meets needs above zero only");
  std::optional<CoverStep> found = solver_->find({need, false, true});
  if (!found) fail_limit(exact_text(*most()), exact_text(need));
  return std::move(*found);
}

std::optional<CoverStep> CoverFunction::step_above(const Rational& need) const {
  return solver_->find({need, true, true});
}

std::vector<CoverStep> CoverFunction::steps(const Rational& low, const Rational& high) const {
  if (low.sign() < 0 || high <= low) {
    fail("cover.need", "steps are listed from a need not below zero up to a larger one");
  }
  std::vector<CoverStep> steps;
  for (Rational need = low; need < high; need = steps.back().upto) {
    if (steps.size() >= CoverWork::most_covers) CoverWork::fail_too_many();
    std::optional<CoverStep> found = step_above(need);
    if (!found) break;
    steps.push_back(std::move(*found));
  }
  return steps;
}

std::optional<CoverPeriod> CoverFunction::period() const { return solver_->period(); }
std::optional<Rational> CoverFunction::most() const { return solver_->most(); }
const std::vector<Purchase>& CoverFunction::purchases() const { return solver_->purchases(); }
std::string CoverFunction::kernel() const { return solver_->kernel(); }
const CoverTable* CoverFunction::table() const { return solver_->table(); }
const Rational& CoverFunction::size_step() const { return solver_->numbers().size_step; }
const Rational& CoverFunction::price_step() const { return solver_->numbers().price_step; }

}  // namespace scalepan
