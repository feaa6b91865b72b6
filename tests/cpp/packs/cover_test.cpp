#include "packs/cover_function.hpp"
#include "packs/cover_reference.hpp"

namespace scalepan {
namespace {

using Counts = std::vector<Rational>;

// Prices of these tests are made up.
TEST_CASE("cover: three small packs can be cheaper than a large and a small one") {
  const std::vector<Pack> packs{{500, Rational(100, 100)}, {200, Rational(45, 100)}};
  const Cover cover = cheapest_cover(600, packs);
  CHECK(cover.counts == Counts{0, 3});
  CHECK(cover.price == Rational(135, 100));
  CHECK(cover.total == Rational(600));
  CHECK(cover.leftover == Rational(0));
}

TEST_CASE("cover: eleven large and one small pack meet 125000/11 g") {
  const std::vector<Pack> packs{{1000, Rational(210, 100)}, {500, Rational(120, 100)}};
  const Cover cover = cheapest_cover(Rational(125000, 11), packs);
  CHECK(cover.counts == Counts{11, 1});
  CHECK(cover.price == 11 * Rational(210, 100) + Rational(120, 100));
  CHECK(cover.leftover == Rational(11500) - Rational(125000, 11));
}

TEST_CASE("cover: a need of nothing or less takes no packs") {
  const std::vector<Pack> packs{{500, 100}, {200, 45}};
  for (const Rational& need : {Rational(0), Rational(-7, 3)}) {
    const Cover cover = cheapest_cover(need, packs);
    CHECK(cover.counts == Counts{0, 0});
    CHECK(cover.price == Rational(0));
    CHECK(cover.total == Rational(0));
    CHECK(cover.leftover == Rational(0));
  }
}

TEST_CASE("cover: packs that cost nothing") {
  CHECK(cheapest_cover(700, std::vector<Pack>{{500, 100}, {200, 0}}).counts == Counts{0, 4});
  CHECK(cheapest_cover(700, std::vector<Pack>{{500, 0}, {200, 0}}).counts == Counts{1, 1});
  CHECK(cheapest_cover(900, std::vector<Pack>{{500, 0}, {300, 0}}).counts == Counts{0, 3});
  CHECK(cheapest_cover(1, std::vector<Pack>{{500, 0}}).price == Rational(0));
}

TEST_CASE("cover: the least excess over a full pack takes one more") {
  const CoverFunction function(purchases_of(std::vector<Pack>{{500, 100}}));
  CHECK(function.at(500).counts == Counts{1});
  CHECK(function.at(Rational(500) + power(10, -30)).counts == Counts{2});
  CHECK(function.at(Rational(500) - power(10, -30)).counts == Counts{1});
}

TEST_CASE("cover: a need of any size") {
  const std::vector<Pack> packs{{1000, 210}, {500, 120}};
  const Rational need = power(10, 30) + 1;
  const Cover cover = cheapest_cover(need, packs);
  // 10^27 large packs hold 10^30; the 1 more is met by one small pack at 120.
  CHECK(cover.counts == Counts{power(10, 27), 1});
  CHECK(cover.price == 210 * power(10, 27) + 120);
  CHECK(cover.leftover == Rational(499));
  check_consistent(cover, need, packs);
}

TEST_CASE("cover: pounds against grams, exactly") {
  const Rational pound(45359237, 100000);
  const std::vector<Pack> packs{{pound, 199}, {500, 219}};
  // Four pounds are 1814.36948 g at 796; four half kilograms 2000 g at 876.
  CHECK(cheapest_cover(4 * pound, packs).counts == Counts{4, 0});
  CHECK(cheapest_cover(4 * pound, packs).leftover == Rational(0));
  // One microgram more: three pounds and one half kilogram hold 1860.77711 g at 816.
  const Cover more = cheapest_cover(4 * pound + power(10, -6), packs);
  CHECK(more.counts == Counts{3, 1});
  CHECK(more.leftover == 500 - pound - power(10, -6));
}

TEST_CASE("cover: one pack alone, and a pack no one should buy") {
  CHECK(cheapest_cover(7, std::vector<Pack>{{2, 3}}).counts == Counts{4});
  CHECK(cheapest_cover(7, std::vector<Pack>{{2, 3}, {1, 50}}).counts == Counts{4, 0});
  CHECK(cheapest_cover(7, std::vector<Pack>{{1, 50}, {2, 3}, {2, 4}}).counts == Counts{0, 4, 0});
}

TEST_CASE("cover: a function asked again gives the same answer") {
  const CoverFunction function(purchases_of(std::vector<Pack>{{1000, 210}, {500, 120}, {300, 80}}));
  const Cover first = function.at(2750);
  static_cast<void>(function.at(123));
  CHECK(function.at(2750).counts == first.counts);
}

}  // namespace
}  // namespace scalepan
