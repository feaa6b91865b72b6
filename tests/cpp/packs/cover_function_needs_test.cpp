// 300,000 random needs of random packs, against a programme over every gram that knows no period.
#include <array>
#include <random>
#include <tuple>

#include "packs/cover_reference.hpp"

namespace scalepan {
namespace {

/// Price, leftover and number of packs of every need up to `most`.
class EveryGram {
 public:
  EveryGram(std::int64_t most, const std::vector<PlainPack>& packs) : best_{{0, 0, 0}} {
    for (std::int64_t need = 1; need <= most; ++need) {
      Key least{-1, 0, 0};
      for (const PlainPack& pack : packs) {
        const std::int64_t rest = std::max<std::int64_t>(0, need - pack.size);
        auto [price, leftover, number] = best_[static_cast<std::size_t>(rest)];
        const std::int64_t over = std::max<std::int64_t>(0, pack.size - need);
        const Key key{price + pack.price, leftover + over, number + 1};
        if (std::get<0>(least) < 0 || key < least) least = key;
      }
      best_.push_back(least);
    }
  }

  using Key = std::tuple<std::int64_t, std::int64_t, std::int64_t>;
  [[nodiscard]] const Key& at(std::int64_t need) const {
    return best_[static_cast<std::size_t>(need)];
  }

 private:
  std::vector<Key> best_;
};

class Market {
 public:
  explicit Market(std::uint64_t seed) : random_(seed) {}

  std::int64_t between(std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random_);
  }

  std::vector<PlainPack> shop() {
    constexpr std::array<std::int64_t, 16> sizes{50,  75,  100, 125, 200, 240,  250,  300,
                                                 400, 454, 500, 750, 900, 1000, 1500, 2500};
    std::vector<PlainPack> packs;
    for (std::int64_t count = between(3, 7); count > 0; --count) {
      const std::int64_t size = sizes.at(static_cast<std::size_t>(between(0, 15)));
      packs.push_back({size, size * between(70, 110) / 100});
    }
    return packs;
  }

  /// Sizes nearly without a common factor at nearly, or just, one unit price.
  std::vector<PlainPack> adversarial() {
    std::vector<PlainPack> packs;
    const std::int64_t off = between(0, 3);
    for (std::int64_t count = between(5, 9); count > 0; --count) {
      const std::int64_t size = 2 * between(50, 700) + 1;
      packs.push_back({size, 3 * size + between(-off, off)});
    }
    return packs;
  }

 private:
  std::mt19937_64 random_;
};

void check_needs(Market& market, const std::vector<PlainPack>& packs, std::int64_t most,
                 int needs) {
  const EveryGram every(most, packs);
  const CoverFunction function(purchases_of(exact_packs(packs)));
  for (int i = 0; i < needs; ++i) {
    const std::int64_t need = market.between(1, most);
    const Cover cover = function.at(need);
    const auto& [price, leftover, number] = every.at(need);
    Rational packs_bought;
    for (const Rational& count : cover.counts) packs_bought += count;
    if (cover.price == price && cover.leftover == leftover && packs_bought == number) continue;
    INFO("need " << need << " of pack 0: " << packs[0].size << "@" << packs[0].price);
    CHECK(cover.price == price);
    CHECK(cover.leftover == leftover);
    CHECK(packs_bought == number);
  }
}

TEST_CASE("random needs: 300,000 of shop-like packs") {
  Market market(21);
  for (int i = 0; i < 150; ++i) check_needs(market, market.shop(), 20'000, 2000);
}

TEST_CASE("random needs: 300,000 of adversarial packs") {
  Market market(22);
  for (int i = 0; i < 60; ++i) check_needs(market, market.adversarial(), 60'000, 5000);
}

}  // namespace
}  // namespace scalepan
