#include "packs/priced_cover.hpp"

#include "exact/error.hpp"
#include "exact/number_text.hpp"

namespace scalepan {

namespace {

void expect_money(std::span<const PricedPurchase> purchases) {
  for (const PricedPurchase& purchase : purchases) {
    if (!purchase.price.dimension().currency()) {
      fail("cover.money", "the price " + purchase.price.text() + " is not in money",
           "write an ISO 4217 code after it: 4.10 EUR");
    }
    if (!(purchase.price.dimension() == purchases.front().price.dimension())) {
      fail_dimensions("cover.money", "prices meet in two currencies:", purchases.front().price,
                      purchase.price);
    }
  }
}

void expect_sizes(std::span<const PricedPurchase> purchases) {
  for (const PricedPurchase& purchase : purchases) {
    if (purchase.size.dimension() == purchases.front().size.dimension()) continue;
    fail_dimensions("cover.dimension", "packs of two kinds meet:", purchases.front().size,
                    purchase.size);
  }
}

/// The first text of each row.
std::vector<std::string> texts_by_row(std::span<const PricedPurchase> purchases) {
  std::vector<std::string> texts;
  std::vector<bool> known;
  for (const PricedPurchase& purchase : purchases) {
    if (purchase.row >= purchases.size()) {
      fail("cover.row",
           "there are " + std::to_string(purchases.size()) + " purchases, so none is of row " +
               std::to_string(purchase.row),
           "rows are counted from 0, one a pack");
    }
    if (purchase.row >= texts.size()) {
      texts.resize(purchase.row + 1);
      known.resize(purchase.row + 1);
    }
    if (!known[purchase.row]) texts[purchase.row] = purchase.text;
    known[purchase.row] = true;
  }
  return texts;
}

}  // namespace

std::string text_of(const PacksTaken& packs) {
  std::string text;
  for (const auto& [count, pack] : packs) {
    text += (text.empty() ? "" : " + ") + exact_text(count) + " x " + pack;
  }
  return text;
}

PricedFunction::PricedFunction(std::vector<PricedPurchase> purchases, CoverOrder order)
    : purchases_(std::move(purchases)), order_(order), row_texts_(texts_by_row(purchases_)) {
  expect_sizes(purchases_);
  expect_money(purchases_);
  std::vector<Purchase> plain;
  plain.reserve(purchases_.size());
  for (const PricedPurchase& p : purchases_) {
    plain.push_back(
        {p.size.coherent() * p.packs, p.price.coherent(), p.row, p.packs, p.least, p.limit});
  }
  function_ = std::make_shared<const CoverFunction>(plain, order);
}

void PricedFunction::expect_alike(const Quantity& need) const {
  const Quantity& size = purchases_.front().size;
  if (size.dimension() == need.dimension()) return;
  fail_dimensions("cover.dimension", "a pack cannot meet the need:", need, size);
}

PricedCover PricedFunction::told(const Cover& cover, Unit unit) const {
  PricedCover told;
  for (std::size_t row = 0; row < cover.counts.size(); ++row) {
    if (!cover.counts[row].is_zero()) told.packs.emplace_back(cover.counts[row], row_texts_[row]);
  }
  told.price = Quantity::of_coherent(cover.price, purchases_.front().price.unit());
  told.leftover = Quantity::of_coherent(cover.leftover, unit);
  return told;
}

PricedCover PricedFunction::at(const Quantity& need) const {
  expect_alike(need);
  const auto most = function_->most();
  if (most && need.coherent() > *most) {
    fail_limit(Quantity::of_coherent(*most, need.unit()).text(), need.text());
  }
  return told(function_->at(need.coherent()), need.unit());
}

std::vector<PricedStep> PricedFunction::steps(const Quantity& low, const Quantity& high) const {
  expect_alike(low);
  expect_alike(high);
  std::vector<PricedStep> steps;
  for (const CoverStep& step : function_->steps(low.coherent(), high.coherent())) {
    steps.push_back({Quantity::of_coherent(step.after, high.unit()),
                     Quantity::of_coherent(step.upto, high.unit()), told(step.cover, high.unit())});
  }
  return steps;
}

std::optional<std::pair<Quantity, Quantity>> PricedFunction::period() const {
  const auto period = function_->period();
  if (!period) return std::nullopt;
  const Unit unit = purchases_[period->purchase].size.unit();
  return std::pair(Quantity::of_coherent(period->size, unit),
                   Quantity::of_coherent(period->from, unit));
}

std::optional<Quantity> PricedFunction::most() const {
  const auto most = function_->most();
  if (!most) return std::nullopt;
  return Quantity::of_coherent(*most, purchases_.front().size.unit());
}

PricedCover cover(const Quantity& need, std::span<const PricedPack> packs) {
  std::vector<PricedPurchase> purchases;
  purchases.reserve(packs.size());
  for (const PricedPack& pack : packs) {
    if (!(pack.size.dimension() == need.dimension())) {
      fail_dimensions("cover.dimension", "a pack cannot meet the need:", need, pack.size);
    }
    purchases.push_back({pack.text, pack.size, pack.price, purchases.size()});
  }
  return PricedFunction(std::move(purchases)).at(need);
}

}  // namespace scalepan
