// Limits, least numbers, several packs at one price, and the order of the ties.
#include <random>

#include "packs/purchase_reference.hpp"

namespace scalepan {
namespace {

using Counts = std::vector<Rational>;

Counts taken(const Rational& need, const std::vector<PlainPurchase>& purchases,
             CoverOrder order = CoverOrder::price_first) {
  return CoverFunction(exact_purchases(purchases), order).at(need).counts;
}

// Prices of these tests are made up.
TEST_CASE("limits: beyond a limit the next best is bought") {
  const std::vector<PlainPurchase> packs{{500, 100, 0, 1, 1, 2}, {400, 100, 1}};
  CHECK(taken(400, packs) == Counts{0, 1});
  CHECK(taken(1000, packs) == Counts{2, 0});
  CHECK(taken(1400, packs) == Counts{2, 1});
  // Five of the second cost as much as two and three, and leave nothing.
  CHECK(taken(2000, packs) == Counts{0, 5});
  CHECK(taken(2200, packs) == Counts{2, 3});
}

TEST_CASE("limits: three for the price of two counts as three packs") {
  const std::vector<PlainPurchase> packs{{200, 100, 0}, {600, 200, 0, 3}};
  CHECK(taken(200, packs) == Counts{1});
  // Two alone cost as much as three and leave less.
  CHECK(taken(400, packs) == Counts{2});
  CHECK(taken(600, packs) == Counts{3});
  CHECK(taken(1400, packs) == Counts{7});
  const Cover cover = CoverFunction(exact_purchases(packs)).at(1400);
  CHECK(cover.price == 500);
  CHECK(cover.bought == Counts{1, 2});
}

TEST_CASE("limits: a lower price from six on is a choice between two ways to buy") {
  const std::vector<PlainPurchase> packs{{100, 100, 0}, {100, 80, 0, 1, 6}};
  CHECK(CoverFunction(exact_purchases(packs)).at(400).price == 400);
  // Five cost 500, six at the lower price 480.
  CHECK(taken(500, packs) == Counts{6});
  CHECK(CoverFunction(exact_purchases(packs)).at(500).price == 480);
  CHECK(CoverFunction(exact_purchases(packs)).at(power(10, 30)).price == 80 * power(10, 28));
}

TEST_CASE("limits: where everything is limited the function ends, and says where") {
  const CoverFunction function(exact_purchases({{500, 100, 0, 1, 1, 2}, {400, 100, 1, 1, 2, 3}}));
  CHECK(function.most() == Rational(2200));
  CHECK(function.at(2200).counts == Counts{2, 3});
  CHECK_FALSE(function.period().has_value());
  CHECK(thrown_by([&] { static_cast<void>(function.at(Rational(4401, 2))); }) ==
        Thrown{"cover.limit", "at most 2200 can be bought within the limits, but 2200.5 is needed",
               "raise a limit, add a pack, or buy for a smaller need"});
}

TEST_CASE("limits: least left over before the price, where that is asked for") {
  const std::vector<PlainPurchase> packs{{500, 100, 0}, {300, 100, 1}, {200, 90, 2}};
  CHECK(taken(600, packs) == Counts{1, 0, 1});
  CHECK(taken(600, packs, CoverOrder::leftover_first) == Counts{0, 2, 0});
  CHECK(taken(800, packs, CoverOrder::leftover_first) == Counts{1, 1, 0});
  CHECK(taken(400, packs) == Counts{1, 0, 0});
  CHECK(taken(400, packs, CoverOrder::leftover_first) == Counts{0, 0, 2});
  CHECK(taken(100, packs, CoverOrder::leftover_first) == Counts{0, 0, 1});
}

class Offers {
 public:
  explicit Offers(std::uint64_t seed) : random_(seed) {}

  std::int64_t between(std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random_);
  }

  /// One to four purchases; prices at times in proportion, so that ties are everywhere.
  std::vector<PlainPurchase> purchases(bool all_limited) {
    std::vector<PlainPurchase> made;
    const bool tied = between(0, 1) == 0;
    const std::int64_t rows = between(1, 3);
    for (std::int64_t count = between(1, 4); count > 0; --count) {
      PlainPurchase p;
      p.packs = between(0, 2) == 0 ? between(2, 3) : 1;
      p.size = between(2, 7) * p.packs;
      p.price = tied ? p.size : std::max<std::int64_t>(0, 2 * p.size + between(-4, 4));
      p.row = static_cast<std::size_t>(between(0, rows - 1));
      if (between(0, 2) == 0) p.least = between(2, 4);
      if (all_limited || between(0, 2) == 0) p.limit = p.least + between(0, 4);
      made.push_back(p);
    }
    return made;
  }

 private:
  std::mt19937_64 random_;
};

void check_against_every(const std::vector<PlainPurchase>& plain, CoverOrder order,
                         std::int64_t most_need) {
  const CoverFunction function(exact_purchases(plain), order);
  INFO(told(plain) << (order == CoverOrder::price_first ? " price" : " leftover"));
  for (std::int64_t need = 1; need <= most_need; ++need) {
    INFO("need " << need);
    const auto expected = EveryCover(need, plain, order).best();
    if (!expected) {
      CHECK(thrown_by([&] { static_cast<void>(function.at(need)); }).code == "cover.limit");
      continue;
    }
    const Cover cover = function.at(need);
    CHECK(cover.price == expected->price);
    CHECK(cover.total == expected->total);
    CHECK(cover.counts == Counts(expected->rows.begin(), expected->rows.end()));
  }
}

TEST_CASE("limits: every combination, the price first") {
  Offers offers(11);
  for (int i = 0; i < 400; ++i) {
    check_against_every(offers.purchases(i % 4 == 0), CoverOrder::price_first, 26);
  }
}

TEST_CASE("limits: every combination, the leftover first") {
  Offers offers(12);
  for (int i = 0; i < 400; ++i) {
    check_against_every(offers.purchases(i % 4 == 0), CoverOrder::leftover_first, 26);
  }
}

TEST_CASE("limits: needs beyond every step listed cost what trying every number finds") {
  Offers offers(13);
  constexpr std::int64_t most = 600;
  std::size_t beyond = 0;
  for (int i = 0; i < 300; ++i) {
    const std::vector<PlainPurchase> plain = offers.purchases(false);
    const CoverFunction function(exact_purchases(plain));
    const auto prices = least_prices(most, plain);
    const auto period = function.period();
    if (period && period->from < most) ++beyond;
    INFO(told(plain));
    for (std::int64_t need = 1; need <= most; ++need) {
      INFO("need " << need);
      const auto& price = prices[static_cast<std::size_t>(need)];
      if (price) {
        CHECK(function.at(need).price == *price);
      } else {
        CHECK(thrown_by([&] { static_cast<void>(function.at(need)); }).code == "cover.limit");
      }
    }
  }
  CHECK(beyond > 150);
}

TEST_CASE("limits: a thousand of the cheapest, and not one more") {
  const std::vector<PlainPurchase> packs{{7, 7, 0, 1, 1, 1000}, {1000, 1001, 1}};
  CHECK(taken(7000, packs) == Counts{1000, 0});
  // One to six of the second and as many of the first as are then needed all cost 7007; with six
  // of the second 143 of the first leave nothing.
  CHECK(taken(7001, packs) == Counts{143, 6});
}

TEST_CASE("limits: numbers of packs that cannot be") {
  const auto refusal = [](Purchase purchase) {
    return thrown_by([&] { CoverFunction(std::vector<Purchase>{purchase}); });
  };
  CHECK(refusal({1, 1, 0, Rational(3, 2), 1, {}}) ==
        Thrown{"cover.count",
               "the number of packs in a purchase must be a whole number above zero, not 1.5"});
  CHECK(refusal({1, 1, 0, 1, 0, {}}) ==
        Thrown{"cover.count",
               "the least number to be bought must be a whole number above zero, not 0"});
  CHECK(refusal({1, 1, 0, 1, 1, Rational(0)}) ==
        Thrown{"cover.count", "the limit of a pack must be a whole number above zero, not 0"});
  CHECK(refusal({1, 1, 0, 1, 6, Rational(5)}) ==
        Thrown{"cover.count", "at least 6 must be bought, but at most 5 may be"});
}

}  // namespace
}  // namespace scalepan
