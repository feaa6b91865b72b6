#include "packs/break_even.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "exact/error.hpp"

namespace scalepan {

namespace {

struct SplitRows {
  Purchase own;
  std::vector<Purchase> others;
};

SplitRows split_at(std::span<const Purchase> purchases, std::size_t row) {
  SplitRows split;
  const Purchase* own = nullptr;
  for (const Purchase& purchase : purchases) {
    if (purchase.row != row) {
      split.others.push_back(purchase);
    } else if (own == nullptr || purchase.packs < own->packs) {
      own = &purchase;
    }
  }
  if (own == nullptr) fail("cover.row", "no pack is of row " + std::to_string(row));
  split.own = *own;
  return split;
}

/// Nothing where these purchases cannot meet the need.
std::optional<Cover> cover_by(const std::vector<Purchase>& purchases, const Rational& need) {
  if (need.sign() <= 0) return Cover{};
  if (purchases.empty()) return std::nullopt;
  const CoverFunction function(purchases);
  const auto most = function.most();
  if (most && need > *most) return std::nullopt;
  return function.at(need);
}

/// Covers that hold the pack at some price.
class WithPack {
 public:
  WithPack(SplitRows rows, Rational need) : rows_(std::move(rows)), need_(std::move(need)) {}

  struct Taken {
    Rational count;
    Rational rest;  // what the other packs take
  };

  /// The cheapest of them; nothing where limits leave none.
  [[nodiscard]] std::optional<Taken> cheapest(const Rational& price) const {
    const Purchase& own = rows_.own;
    std::vector<Purchase> free = rows_.others;
    const bool more = !own.limit || *own.limit > own.least;
    if (more) {
      free.push_back({own.size, price, own.row, own.packs, 1,
                      own.limit ? std::optional(*own.limit - own.least) : std::nullopt});
    }
    const auto cover = cover_by(free, need_ - own.size * own.least);
    if (!cover) return std::nullopt;
    Taken taken{own.least, cover->price};
    if (more && !cover->bought.empty()) {
      taken.count += cover->bought.back();
      taken.rest -= cover->bought.back() * price;
    }
    return taken;
  }

  [[nodiscard]] std::vector<Purchase> all_at(const Rational& price) const {
    std::vector<Purchase> all = rows_.others;
    all.push_back(rows_.own);
    all.back().price = price;
    return all;
  }

 private:
  SplitRows rows_;
  Rational need_;
};

}  // namespace

std::optional<BreakEvenPrice> break_even_price(std::span<const Purchase> purchases, std::size_t row,
                                               const Rational& need,
                                               const std::optional<Rational>& beat) {
  if (need.sign() <= 0) fail("cover.need", "nothing is needed, so no pack is bought at any price");
  SplitRows rows = split_at(purchases, row);
  const auto others = cover_by(rows.others, need);
  std::optional<Rational> target = beat;
  if (others && (!target || others->price < *target)) target = others->price;
  if (!target) return std::nullopt;
  const WithPack with(std::move(rows), need);
  Rational price;
  for (;;) {
    const auto taken = with.cheapest(price);
    if (!taken || *target < taken->rest) return BreakEvenPrice{};
    const Rational next = (*target - taken->rest) / taken->count;
    if (next == price) break;
    price = next;
  }
  const std::vector<Purchase> all = with.all_at(price);
  Cover cover = CoverFunction(all).at(need);
  const bool taken = !cover.bought.back().is_zero();
  return BreakEvenPrice{price, std::move(cover), taken};
}

std::optional<Rational> break_even_by_size(std::span<const Purchase> purchases, std::size_t row) {
  const SplitRows rows = split_at(purchases, row);
  std::optional<Rational> best;
  for (const Purchase& other : rows.others) {
    const Rational rate = other.price / other.size;
    if (!best || rate < *best) best = rate;
  }
  if (!best) return std::nullopt;
  return *best * rows.own.size;
}

PricedBreakEven break_even(const Quantity& need, const std::vector<PricedPurchase>& purchases,
                           std::size_t row) {
  const PricedFunction all(purchases);
  all.expect_alike(need);
  const std::vector<Purchase>& plain = all.function().purchases();
  const Unit money = purchases.front().price.unit();
  PricedBreakEven found;
  const auto by_size = break_even_by_size(plain, row);
  if (by_size) found.by_size = Quantity::of_coherent(*by_size, money);
  const auto price = break_even_price(plain, row, need.coherent());
  found.only = !price.has_value();
  if (!price || !price->price) return found;
  found.price = Quantity::of_coherent(*price->price, money);
  found.packs = all.told(price->cover, need.unit()).packs;
  found.taken = price->taken;
  return found;
}

}  // namespace scalepan
