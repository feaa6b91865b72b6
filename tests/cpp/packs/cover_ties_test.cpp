// Covers of one price: least left over, then fewest packs, then more of earlier rows.
#include "packs/cover_reference.hpp"

namespace scalepan {
namespace {

using Counts = std::vector<Rational>;

Counts taken(const Rational& need, const std::vector<Pack>& packs) {
  return cheapest_cover(need, packs).counts;
}

TEST_CASE("ties: of one price the cover that leaves least is taken") {
  CHECK(taken(7, {{10, 5}, {8, 5}}) == Counts{0, 1});
  CHECK(taken(9, {{10, 6}, {5, 3}, {4, 3}}) == Counts{0, 1, 1});
}

TEST_CASE("ties: of one price and one leftover the cover of fewest packs is taken") {
  CHECK(taken(10, {{5, 3}, {10, 6}}) == Counts{0, 1});
  CHECK(taken(12, {{4, 4}, {3, 3}, {6, 6}}) == Counts{0, 0, 2});
}

TEST_CASE("ties: of equals the one that takes more of an earlier row is taken") {
  CHECK(taken(10, {{5, 3}, {5, 3}}) == Counts{2, 0});
  // 1 + 4 and 2 + 3 hold 5 for 5 in two packs each.
  CHECK(taken(5, {{1, 1}, {2, 2}, {3, 3}, {4, 4}}) == Counts{1, 0, 0, 1});
  CHECK(taken(5, {{2, 2}, {1, 1}, {4, 4}, {3, 3}}) == Counts{1, 0, 0, 1});
  CHECK(taken(5, {{4, 4}, {3, 3}, {2, 2}, {1, 1}}) == Counts{1, 0, 0, 1});
}

TEST_CASE("ties: the price goes before all of them") {
  CHECK(taken(10, {{10, 100}, {1, Rational(999, 100)}}) == Counts{0, 10});
  CHECK(taken(10, {{10, 100}, {50, Rational(9999, 100)}}) == Counts{0, 1});
}

}  // namespace
}  // namespace scalepan
