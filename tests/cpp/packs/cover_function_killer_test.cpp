// Inputs made to hurt: each ends in the right answer or in one clear error, in bounded time.
#include <random>

#include "packs/purchase_reference.hpp"

namespace scalepan {
namespace {

using Counts = std::vector<Rational>;

const Thrown too_many{"cover.too_many",
                      "the packs' sizes and prices make too many covers to look at",
                      "leave out packs that are hardly worth it, or buy for a smaller need"};

TEST_CASE("killer covers: nothing costs nothing, in any number") {
  const CoverFunction function(exact_purchases({{500, 0, 0}, {300, 0, 1}, {200, 5, 2}}));
  CHECK(function.at(0).counts == Counts{0, 0, 0});
  CHECK(function.at(power(10, 30)).price == 0);
  CHECK(function.at(power(10, 30)).leftover == 0);
  CHECK(function.at(900).counts == Counts{0, 3, 0});
}

TEST_CASE("killer covers: ten thousand offers of one item") {
  std::mt19937_64 random(31);
  std::vector<PlainPurchase> offers;
  for (std::size_t row = 0; row < 10'000; ++row) {
    const auto size = static_cast<std::int64_t>(random() % 20'000 + 1);
    offers.push_back({size, 100 + 3 * size + static_cast<std::int64_t>(random() % 50), row});
  }
  const CoverFunction function(exact_purchases(offers));
  const auto prices = [&] {
    std::vector<PlainPurchase> cheapest(20'001);
    for (const PlainPurchase& offer : offers) {
      PlainPurchase& known = cheapest[static_cast<std::size_t>(offer.size)];
      if (known.price == 0 || offer.price < known.price) known = offer;
    }
    std::erase_if(cheapest, [](const PlainPurchase& offer) { return offer.price == 0; });
    return least_prices(3000, cheapest);
  }();
  for (std::int64_t need = 100; need <= 3000; need += 100) {
    CHECK(function.at(need).price == *prices[static_cast<std::size_t>(need)]);
  }
  // Most of the ten thousand are best for their own size, and pairs of them are too many.
  CHECK(thrown_by([&] { static_cast<void>(function.at(power(10, 30))); }) == too_many);
}

TEST_CASE("killer covers: ten thousand offers of one unit price") {
  std::vector<PlainPurchase> offers;
  for (std::size_t row = 0; row < 10'000; ++row) {
    const auto size = static_cast<std::int64_t>(row + 1);
    offers.push_back({size, size, row});
  }
  // Every whole number of grams costs itself in one pack, or in the largest and one more.
  const CoverFunction function(exact_purchases(offers));
  CHECK(function.at(9'999).counts[9'998] == 1);
  CHECK(function.at(power(10, 30)).price == power(10, 30));
}

TEST_CASE("killer covers: ten thousand offers, all limited, below the need") {
  std::vector<PlainPurchase> offers;
  for (std::size_t row = 0; row < 10'000; ++row) {
    offers.push_back({static_cast<std::int64_t>(row + 1), 7, row, 1, 1, 2});
  }
  CHECK(thrown_by([&] { CoverFunction{exact_purchases(offers)}; }) == too_many);
  offers.resize(30);
  // 2 (1 + 2 + ... + 30) = 930.
  CHECK(thrown_by([&] { static_cast<void>(CoverFunction(exact_purchases(offers)).at(931)); }) ==
        Thrown{"cover.limit", "at most 930 can be bought within the limits, but 931 is needed",
               "raise a limit, add a pack, or buy for a smaller need"});
  CHECK(CoverFunction(exact_purchases(offers)).at(930).price == 420);
}

TEST_CASE("killer covers: limits and least numbers of any size") {
  const Rational huge = power(10, 30);
  std::vector<Purchase> packs{{7, 5, 0, 1, 1, huge}, {9, 8, 1, 1, huge, {}}};
  CHECK(CoverFunction(packs).at(70).counts == Counts{10, 0});
  packs[0].limit = 3;
  CHECK(CoverFunction(packs).at(21).counts == Counts{3, 0});
  CHECK(CoverFunction(packs).at(22).counts == Counts{0, huge});
}

TEST_CASE("killer covers: too many ways to begin") {
  std::vector<PlainPurchase> packs;
  for (std::size_t row = 0; row < 9; ++row) packs.push_back({10, 9, row, 1, 6});
  CHECK(thrown_by([&] { CoverFunction{exact_purchases(packs)}; }) == too_many);
}

}  // namespace
}  // namespace scalepan
