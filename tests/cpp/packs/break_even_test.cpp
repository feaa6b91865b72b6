// Prices of these tests are made up.
#include "packs/break_even.hpp"

#include "check.hpp"
#include "packs/cover_reference.hpp"

namespace scalepan {
namespace {

std::vector<Purchase> plain(const std::vector<Pack>& packs) { return purchases_of(packs); }

TEST_CASE("break-even: a large pack is worth the small ones that it replaces") {
  const auto purchases = plain({{2000, 9999}, {500, 100}});
  const auto even = break_even_price(purchases, 0, 1200);
  REQUIRE(even.has_value());
  CHECK(even->price == Rational(300));
  CHECK_FALSE(even->taken);  // three of 500 leave less over
  CHECK(break_even_by_size(purchases, 0) == Rational(400));
}

// 7 of 300: alone 7 * 50 = 350. Two of 900 and one of 300 are 2 p + 50, so p = 150; one of 900 and
// four of 300 give the same; three of 900 give 350 / 3.
TEST_CASE("break-even: the best count of the pack is found among all") {
  const auto even = break_even_price(plain({{900, 1}, {300, 50}}), 0, 2100);
  REQUIRE(even.has_value());
  CHECK(even->price == Rational(150));
  CHECK(even->taken);  // the same sum in fewer packs
}

TEST_CASE("break-even: the only pack is bought at any price") {
  CHECK_FALSE(break_even_price(plain({{500, 1}}), 0, 1200).has_value());
  CHECK_FALSE(break_even_by_size(plain({{500, 1}}), 0).has_value());
}

TEST_CASE("break-even: what else meets the need is beaten, if only that does") {
  const auto even = break_even_price(plain({{500, 1}}), 0, 1200, Rational(240));
  REQUIRE(even.has_value());
  CHECK(even->price == Rational(80));
}

TEST_CASE("break-even: limits of the others leave the pack no choice") {
  std::vector<Purchase> purchases = plain({{500, 1}, {500, 10}});
  purchases[1].limit = 2;
  CHECK_FALSE(break_even_price(purchases, 0, 1200).has_value());
  CHECK(break_even_price(purchases, 0, 1000)->price == Rational(10));
}

// One of it at most: 1000 = 500 + 500, so that it is worth one of the others and no more.
TEST_CASE("break-even: its own limit counts") {
  std::vector<Purchase> purchases = plain({{500, 1}, {1000, 30}});
  purchases[0].limit = 1;
  const auto even = break_even_price(purchases, 0, 1000);
  REQUIRE(even.has_value());
  CHECK(even->price == Rational(0));
  CHECK_FALSE(even->taken);
  CHECK(break_even_price(purchases, 0, 1400)->price == Rational(30));
}

TEST_CASE("break-even: where its limit leaves a rest that is dearer than what else there is") {
  std::vector<Purchase> purchases = plain({{500, 1}, {1000, 30}});
  purchases[0].limit = 1;
  const auto even = break_even_price(purchases, 0, 1000, Rational(20));
  REQUIRE(even.has_value());
  CHECK_FALSE(even->price.has_value());
}

TEST_CASE("break-even: offers of several at once in its own row are left out") {
  std::vector<Purchase> purchases = plain({{500, 100}, {1000, 150}});
  purchases.push_back({1500, 200, 0, 3, 1, std::nullopt});
  CHECK(break_even_price(purchases, 0, 1500)->price == Rational(150));
}

TEST_CASE("break-even: questions without an answer") {
  const auto purchases = plain({{500, 1}, {300, 1}});
  const Thrown nothing = thrown_by([&] { return break_even_price(purchases, 0, 0); });
  CHECK(nothing.code == "cover.need");
  CHECK(nothing.message == "nothing is needed, so no pack is bought at any price");
  const Thrown row = thrown_by([&] { return break_even_price(purchases, 2, 9); });
  CHECK(row.code == "cover.row");
  CHECK(row.message == "no pack is of row 2");
}

}  // namespace
}  // namespace scalepan
