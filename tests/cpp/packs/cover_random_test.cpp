// Covers of random packs against the slow ways of cover_reference.hpp, from pinned seeds.
#include <algorithm>
#include <array>
#include <numeric>
#include <random>

#include "packs/cover_reference.hpp"

namespace scalepan {
namespace {

class Shop {
 public:
  explicit Shop(std::uint64_t seed) : random_(seed) {}

  std::int64_t between(std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random_);
  }

  /// Usual sizes, larger ones at a lower unit price, some odd price now and then.
  std::vector<PlainPack> shelf() {
    constexpr std::array<std::int64_t, 12> sizes{5, 8, 10, 12, 15, 20, 24, 25, 40, 50, 75, 100};
    std::vector<PlainPack> packs;
    for (std::int64_t count = between(1, 5); count > 0; --count) {
      const std::int64_t size = sizes.at(static_cast<std::size_t>(between(0, 11)));
      const std::int64_t unit_price = between(5, 9) - (size >= 40 ? between(0, 2) : 0);
      packs.push_back({size, size * unit_price - between(0, 1)});
    }
    return packs;
  }

  /// Sizes without a common factor, prices close to proportional, so that few can be cut off.
  std::vector<PlainPack> awkward() {
    std::vector<PlainPack> packs;
    for (std::int64_t count = between(2, 5); count > 0; --count) {
      const std::int64_t size = between(1, 60);
      packs.push_back({size, std::max<std::int64_t>(0, 10 * size + between(-6, 6))});
    }
    return packs;
  }

  /// Prices exactly proportional, equal or nothing, so that ties are everywhere.
  std::vector<PlainPack> tied() {
    std::vector<PlainPack> packs;
    const std::int64_t kind = between(0, 2);
    for (std::int64_t count = between(2, 4); count > 0; --count) {
      const std::int64_t size = between(1, 12);
      packs.push_back({size, kind == 0 ? size : kind == 1 ? 7 : between(0, 2)});
    }
    return packs;
  }

 private:
  std::mt19937_64 random_;
};

std::string told(std::int64_t need, const std::vector<PlainPack>& packs) {
  std::string text = "need " + std::to_string(need) + " from";
  for (const PlainPack& pack : packs) {
    text += " " + std::to_string(pack.size) + "@" + std::to_string(pack.price);
  }
  return text;
}

void check_price(std::int64_t need, const std::vector<PlainPack>& packs) {
  const std::vector<Pack> exact = exact_packs(packs);
  const Cover cover = cheapest_cover(need, exact);
  INFO(told(need, packs));
  CHECK(cover.price == Rational(least_price(need, packs)));
  check_consistent(cover, need, exact);
}

void check_ties(std::int64_t need, const std::vector<PlainPack>& packs) {
  const Cover cover = cheapest_cover(need, exact_packs(packs));
  const std::vector<std::int64_t> best = AllCovers(need, packs).best();
  INFO(told(need, packs));
  CHECK(cover.counts == std::vector<Rational>(best.begin(), best.end()));
}

TEST_CASE("random covers: packs of a shop cost as little as every step says") {
  Shop shop(1);
  for (int i = 0; i < 1500; ++i) check_price(shop.between(1, 3000), shop.shelf());
}

TEST_CASE("random covers: awkward sizes cost as little as every step says") {
  Shop shop(2);
  for (int i = 0; i < 1500; ++i) check_price(shop.between(1, 2000), shop.awkward());
}

TEST_CASE("random covers: many packs of one price cost as little as every step says") {
  Shop shop(3);
  for (int i = 0; i < 1000; ++i) check_price(shop.between(1, 500), shop.tied());
}

TEST_CASE("random covers: ties fall as when all covers are compared") {
  Shop shop(4);
  for (int i = 0; i < 1500; ++i) check_ties(shop.between(1, 40), shop.tied());
  for (int i = 0; i < 500; ++i) check_ties(shop.between(1, 120), shop.shelf());
  for (int i = 0; i < 500; ++i) check_ties(shop.between(1, 90), shop.awkward());
}

TEST_CASE("random covers: every need in a row is met by one function") {
  Shop shop(5);
  for (int i = 0; i < 20; ++i) {
    const std::vector<PlainPack> packs = shop.awkward();
    const std::vector<Pack> exact = exact_packs(packs);
    const CoverFunction function(purchases_of(exact));
    for (std::int64_t need = 1; need <= 150; ++need) {
      INFO(told(need, packs));
      CHECK(function.at(need).price == Rational(least_price(need, packs)));
    }
  }
}

TEST_CASE("random covers: sizes and prices in fractions are the same question") {
  Shop shop(6);
  for (int i = 0; i < 300; ++i) {
    const std::vector<PlainPack> packs = shop.tied();
    const std::int64_t need = shop.between(1, 60);
    const Rational size_unit(shop.between(1, 40), shop.between(1, 40));
    const Rational price_unit(shop.between(1, 40), shop.between(1, 40));
    std::vector<Pack> scaled = exact_packs(packs);
    for (Pack& pack : scaled) {
      pack.size *= size_unit;
      pack.price *= price_unit;
    }
    INFO(told(need, packs));
    CHECK(cheapest_cover(need * size_unit, scaled).counts ==
          cheapest_cover(need, exact_packs(packs)).counts);
    // A need that is no whole number of steps takes the packs of the next one.
    CHECK(cheapest_cover((need - Rational(1, 7)) * size_unit, scaled).price ==
          cheapest_cover(need, exact_packs(packs)).price * price_unit);
  }
}

}  // namespace
}  // namespace scalepan
