// Curves against costings point by point, and breakpoints against covers found the slow way.
#include "costing/curve.hpp"

#include <tuple>

#include "costing/pot.hpp"
#include "packs/cover_reference.hpp"

namespace scalepan {
namespace {

std::vector<Rational> up_to(int last) {
  std::vector<Rational> sizes;
  for (int n = 1; n <= last; ++n) sizes.emplace_back(n);
  return sizes;
}

TEST_CASE("curve: each point is the costing of its size") {
  const Costing at_four(pot(), prices_of(pot_shelves()));
  const Curve curve = cost_curve(at_four, up_to(60));
  REQUIRE(curve.portions.size() == 60);
  for (std::size_t i = 0; i < curve.portions.size(); ++i) {
    INFO(i + 1 << " portions");
    const Costs costs = pot_costing(curve.portions[i]).costs();
    CHECK(curve.portions[i] == Rational(i + 1));
    CHECK(curve.till[i] == costs.till);
    CHECK(curve.used[i] == costs.used);
    CHECK(curve.thrown[i] == costs.thrown);
    CHECK(curve.borne[i] == costs.borne());
  }
  CHECK(curve.till[39] == Rational(4425, 100));
  CHECK(curve.currency == "XXX");
  CHECK(curve.unpriced.empty());
}

using Points = std::vector<std::tuple<Rational, PacksTaken, PacksTaken>>;

Points points_of(const Curve& curve, const char* item) {
  Points points;
  for (const Breakpoint& point : curve.breakpoints) {
    if (point.item == item) points.emplace_back(point.portions, point.packs_before, point.packs);
  }
  return points;
}

struct Pile {
  PlainPack pack;
  const char* text;
};

PacksTaken taken_by_hand(const std::vector<Pile>& piles, std::int64_t need) {
  std::vector<PlainPack> packs;
  for (const Pile& pile : piles) packs.push_back(pile.pack);
  const std::vector<std::int64_t> counts = AllCovers(need, packs).best();
  PacksTaken taken;
  for (std::size_t i = 0; i < piles.size(); ++i) {
    if (counts[i] > 0) taken.emplace_back(counts[i], piles[i].text);
  }
  return taken;
}

template <typename Need>
Points points_by_hand(const std::vector<Pile>& piles, Need need) {
  Points points;
  PacksTaken before = taken_by_hand(piles, need(1));
  for (std::int64_t n = 2; n <= 60; ++n) {
    PacksTaken now = taken_by_hand(piles, need(n));
    if (now != before) points.emplace_back(n, before, now);
    before = std::move(now);
  }
  return points;
}

// A portion takes 125 g of leeks EP, 3125/11 g AP, which is 25/44 of half a kilogram; 55 g of
// barley, 11/100 of a pack; one egg; a quarter of a tin.
TEST_CASE("curve: the packs change exactly where covers found the slow way change") {
  const Curve curve = cost_curve(pot_costing(4), up_to(60));
  CHECK(points_of(curve, "leeks") ==
        points_by_hand({{{2, 210}, "1 kg"}, {{1, 120}, "500 g"}},
                       [](std::int64_t n) { return (25 * n + 43) / 44; }));
  CHECK(points_of(curve, "pearl barley") ==
        points_by_hand({{{1, 95}, "500 g"}}, [](std::int64_t n) { return (11 * n + 99) / 100; }));
  CHECK(points_of(curve, "eggs") ==
        points_by_hand({{{6, 150}, "6"}, {{10, 230}, "10"}}, [](std::int64_t n) { return n; }));
  CHECK(points_of(curve, "chickpeas") ==
        points_by_hand({{{1, 60}, "400 g tin (240 g drained)"}},
                       [](std::int64_t n) { return (n + 3) / 4; }));
}

TEST_CASE("curve: a change of packs of one number is a breakpoint too") {
  // Six eggs at 1.50 for up to six, then the ten at 2.30.
  CHECK(points_of(cost_curve(pot_costing(4), up_to(7)), "eggs") ==
        Points{{7, PacksTaken{{1, "6"}}, PacksTaken{{1, "10"}}}});
}

TEST_CASE("curve: points come in the order asked for") {
  const Curve curve = cost_curve(pot_costing(4), {40, Rational(1, 2), 40});
  CHECK(curve.portions == std::vector<Rational>{40, Rational(1, 2), 40});
  CHECK(curve.till[0] == curve.till[2]);
  // Half a portion takes 500 g of leeks, a pack of barley, six eggs and a tin.
  CHECK(curve.till[1] == Rational(425, 100));
  CHECK(cost_curve(pot_costing(4), {}).till.empty());
}

TEST_CASE("curve: lines without a price are named, and sizes must be above zero") {
  const Costing costing = costing_of({"500 g leeks", "2 eggs"}, {{"eggs", "AP", "6", "1.50"}});
  CHECK(cost_curve(costing, {4}).unpriced == std::vector<std::string>{"leeks"});
  CHECK(thrown_by([&] { return cost_curve(costing, {4, 0}).till.size(); }) ==
        Thrown{"recipe.portions", "a recipe cannot be made for 0 portions",
               "the number of portions must be above zero"});
}

TEST_CASE("curve: the written size of a line held to whole pieces is on its own curve") {
  const Costing costing = costing_of({"1 1/2 onions | whole"}, {{"onions", "AP", "1", "0.20"}});
  CHECK(costing.cost("till").value() == Rational(40, 100));
  CHECK(cost_curve(costing, {4}).till[0] == Rational(40, 100));
}

}  // namespace
}  // namespace scalepan
