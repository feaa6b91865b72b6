// Covers of limited, composite and least purchases, found by trying every combination.
#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "check.hpp"
#include "packs/cover_function.hpp"

namespace scalepan {

struct PlainPurchase {
  std::int64_t size = 1;
  std::int64_t price = 0;
  std::size_t row = 0;
  std::int64_t packs = 1;
  std::int64_t least = 1;
  std::optional<std::int64_t> limit{};
};

inline std::vector<Purchase> exact_purchases(const std::vector<PlainPurchase>& plain) {
  std::vector<Purchase> purchases;
  for (const PlainPurchase& p : plain) {
    purchases.push_back({p.size, p.price, p.row, p.packs, p.least, std::nullopt});
    if (p.limit) purchases.back().limit = *p.limit;
  }
  return purchases;
}

struct FoundCover {
  std::int64_t price = 0;
  std::int64_t total = 0;
  std::int64_t packs = 0;
  std::vector<std::int64_t> rows;
};

/// Of each purchase none, or from `least` up to as many as would meet the need alone.
class EveryCover {
 public:
  EveryCover(std::int64_t need, std::vector<PlainPurchase> purchases, CoverOrder order)
      : need_(need), purchases_(std::move(purchases)), order_(order) {
    std::size_t rows = 0;
    for (const PlainPurchase& p : purchases_) rows = std::max(rows, p.row + 1);
    now_.rows.assign(rows, 0);
    descend(0);
  }

  /// None where the limits do not allow as much.
  [[nodiscard]] const std::optional<FoundCover>& best() const { return best_; }

 private:
  void descend(std::size_t index) {
    if (index == purchases_.size()) return consider();
    const PlainPurchase& p = purchases_[index];
    const FoundCover before = now_;
    descend(index + 1);
    const std::int64_t alone = std::max(p.least, (need_ + p.size - 1) / p.size);
    const std::int64_t most = p.limit ? std::min(alone, *p.limit) : alone;
    for (std::int64_t count = p.least; count <= most; ++count) {
      now_ = before;
      now_.price += count * p.price;
      now_.total += count * p.size;
      now_.packs += count * p.packs;
      now_.rows[p.row] += count * p.packs;
      descend(index + 1);
    }
    now_ = before;
  }

  void consider() {
    if (now_.total < need_) return;
    if (!best_ || rank(now_) < rank(*best_) ||
        (rank(now_) == rank(*best_) && now_.rows > best_->rows)) {
      best_ = now_;
    }
  }

  [[nodiscard]] std::tuple<std::int64_t, std::int64_t, std::int64_t> rank(
      const FoundCover& cover) const {
    return order_ == CoverOrder::price_first ? std::tuple(cover.price, cover.total, cover.packs)
                                             : std::tuple(cover.total, cover.price, cover.packs);
  }

  std::int64_t need_;
  std::vector<PlainPurchase> purchases_;
  CoverOrder order_;
  FoundCover now_;
  std::optional<FoundCover> best_;
};

/// The least price of each need up to `most`, one purchase after the other in every number allowed;
/// none where the limits do not allow as much.
inline std::vector<std::optional<std::int64_t>> least_prices(
    std::int64_t most, const std::vector<PlainPurchase>& purchases) {
  std::vector<std::optional<std::int64_t>> prices(static_cast<std::size_t>(most) + 1);
  prices[0] = 0;
  for (const PlainPurchase& p : purchases) {
    const auto without = prices;
    for (std::int64_t need = 1; need <= most; ++need) {
      auto& price = prices[static_cast<std::size_t>(need)];
      const std::int64_t alone = std::max(p.least, (need + p.size - 1) / p.size);
      for (std::int64_t count = p.least; count <= std::min(alone, p.limit.value_or(alone));
           ++count) {
        const std::int64_t rest = std::max<std::int64_t>(0, need - count * p.size);
        const auto& before = without[static_cast<std::size_t>(rest)];
        if (before && (!price || *before + count * p.price < *price)) {
          price = *before + count * p.price;
        }
      }
    }
  }
  return prices;
}

inline std::string told(const std::vector<PlainPurchase>& purchases) {
  std::string text;
  for (const PlainPurchase& p : purchases) {
    text += " " + std::to_string(p.size) + "@" + std::to_string(p.price) + " row " +
            std::to_string(p.row) + "x" + std::to_string(p.packs) + " from " +
            std::to_string(p.least) + (p.limit ? " limit " + std::to_string(*p.limit) : "") + ";";
  }
  return text;
}

}  // namespace scalepan
