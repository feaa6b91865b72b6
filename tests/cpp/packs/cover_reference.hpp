// Covers found the slow way: every total one step at a time, and every combination.
#pragma once

#include <cstdint>
#include <tuple>
#include <vector>

#include "check.hpp"
#include "packs/cover_function.hpp"
#include "packs/plain_packs.hpp"

namespace scalepan {

/// One need, one list of packs.
inline Cover cheapest_cover(const Rational& need, const std::vector<Pack>& packs) {
  return CoverFunction(purchases_of(packs)).at(need);
}

struct PlainPack {
  std::int64_t size;
  std::int64_t price;
};

/// The least price of at least `need`: table[t] is the least price of packs holding t or more.
inline std::int64_t least_price(std::int64_t need, const std::vector<PlainPack>& packs) {
  std::vector<std::int64_t> table(static_cast<std::size_t>(need) + 1, 0);
  for (std::int64_t t = 1; t <= need; ++t) {
    std::int64_t least = -1;
    for (const PlainPack& pack : packs) {
      const std::int64_t rest = pack.size >= t ? 0 : t - pack.size;
      const std::int64_t price = table[static_cast<std::size_t>(rest)] + pack.price;
      if (least < 0 || price < least) least = price;
    }
    table[static_cast<std::size_t>(t)] = least;
  }
  return table.back();
}

/// Every combination of packs in which no pack could be left out, and the first of them by price,
/// leftover, number of packs, and more of earlier rows.
class AllCovers {
 public:
  AllCovers(std::int64_t need, std::vector<PlainPack> packs)
      : need_(need), packs_(std::move(packs)), counts_(packs_.size(), 0) {
    descend(0, 0, 0, 0);
  }

  [[nodiscard]] const std::vector<std::int64_t>& best() const { return std::get<3>(best_); }

 private:
  using Rank = std::tuple<std::int64_t, std::int64_t, std::int64_t, std::vector<std::int64_t>>;

  void descend(std::size_t row, std::int64_t total, std::int64_t price, std::int64_t number) {
    if (total >= need_) return consider(total, price, number);
    if (row == packs_.size()) return;
    const PlainPack& pack = packs_[row];
    for (std::int64_t count = 0;; ++count) {
      counts_[row] = count;
      const std::int64_t held = total + count * pack.size;
      if (held >= need_) {
        consider(held, price + count * pack.price, number + count);
        break;
      }
      descend(row + 1, held, price + count * pack.price, number + count);
    }
    counts_[row] = 0;
  }

  void consider(std::int64_t total, std::int64_t price, std::int64_t number) {
    const auto rank = std::tuple(price, total, number);
    const auto known = std::tuple(std::get<0>(best_), std::get<1>(best_), std::get<2>(best_));
    if (found_ && (rank > known || (rank == known && counts_ <= best()))) return;
    best_ = {price, total, number, counts_};
    found_ = true;
  }

  std::int64_t need_;
  std::vector<PlainPack> packs_;
  std::vector<std::int64_t> counts_;
  Rank best_;
  bool found_ = false;
};

inline std::vector<Pack> exact_packs(const std::vector<PlainPack>& packs) {
  std::vector<Pack> exact;
  for (const PlainPack& pack : packs) exact.push_back({pack.size, pack.price});
  return exact;
}

/// What every cover must be, whatever the packs.
inline void check_consistent(const Cover& cover, const Rational& need,
                             const std::vector<Pack>& packs) {
  Rational price;
  Rational total;
  REQUIRE(cover.counts.size() == packs.size());
  for (std::size_t row = 0; row < packs.size(); ++row) {
    CHECK(cover.counts[row].is_integer());
    CHECK(cover.counts[row].sign() >= 0);
    price += cover.counts[row] * packs[row].price;
    total += cover.counts[row] * packs[row].size;
  }
  CHECK(cover.price == price);
  CHECK(cover.total == total);
  CHECK(cover.leftover == total - need);
  CHECK(total >= need);
}

}  // namespace scalepan
