// Curves against costings point by point, and breakpoints against covers found the slow way.
#include "costing/curve.hpp"

#include <tuple>

#include "costing/pot.hpp"
#include "exact/number_text.hpp"
#include "packs/cover_reference.hpp"

namespace scalepan {
namespace {

CurvePoints up_to(std::size_t last) { return {{1, 1}, last}; }

CurvePoints listed(std::vector<Rational> points) { return CurvePoints(std::move(points)); }

TEST_CASE("curve: each point is the costing of its size") {
  const Costing at_four(pot(), prices_of(pot_shelves()));
  const Curve curve(at_four, up_to(60));
  REQUIRE(curve.points().size() == 60);
  for (std::size_t i = 0; i < curve.points().size(); ++i) {
    INFO(i + 1 << " portions");
    const Costs costs = pot_costing(curve.points()[i]).costs();
    CHECK(curve.points()[i] == Rational(i + 1));
    CHECK(curve.cost("till")[i] == costs.till);
    CHECK(curve.cost("used")[i] == costs.used);
    CHECK(curve.cost("thrown")[i] == costs.thrown);
    CHECK(curve.cost("borne")[i] == costs.borne());
  }
  CHECK(curve.cost("till")[39] == Rational(4425, 100));
  CHECK(curve.currency() == "XXX");
  CHECK(curve.unpriced().empty());
}

using Points = std::vector<std::tuple<Rational, PacksTaken, PacksTaken>>;

Points points_of(const Curve& curve, const char* item) {
  Points points;
  for (const Breakpoint& point : curve.breakpoints()) {
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
  const Curve curve(pot_costing(4), up_to(60));
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
  CHECK(points_of(Curve(pot_costing(4), up_to(7)), "eggs") ==
        Points{{7, PacksTaken{{1, "6"}}, PacksTaken{{1, "10"}}}});
}

TEST_CASE("curve: points come in the order asked for") {
  const Curve curve(pot_costing(4), listed({40, Rational(1, 2), 40}));
  CHECK(curve.points()[1] == Rational(1, 2));
  CHECK(curve.cost("till")[0] == curve.cost("till")[2]);
  // Half a portion takes 500 g of leeks, a pack of barley, six eggs and a tin.
  CHECK(curve.cost("till")[1] == Rational(425, 100));
  CHECK(Curve(pot_costing(4), listed({})).cost("till").empty());
}

TEST_CASE("curve: lines without a price are named, and sizes must be above zero") {
  const Costing costing = costing_of({"500 g leeks", "2 eggs"}, {{"eggs", "AP", "6", "1.50"}});
  CHECK(Curve(costing, listed({4})).unpriced() == std::vector<std::string>{"leeks"});
  CHECK(thrown_by([&] { return Curve(costing, listed({4, 0})).points().size(); }) ==
        Thrown{"recipe.portions", "a recipe cannot be made for 0 portions",
               "the number of portions must be above zero"});
}

TEST_CASE("curve: the written size of a line held to whole pieces is on its own curve") {
  const Costing costing = costing_of({"1 1/2 onions | whole"}, {{"onions", "AP", "1", "0.20"}});
  CHECK(costing.cost("till").value() == Rational(40, 100));
  CHECK(Curve(costing, listed({4})).cost("till")[0] == Rational(40, 100));
}

/// Each point of the column is what the costing of its size pays.
void check_column(const Costing& costing, const Curve& curve, std::size_t stride) {
  const auto column = curve.column("till");
  REQUIRE(column->size == curve.points().size());
  for (std::size_t i = 0; i < column->size; i += stride) {
    INFO(exact_text(curve.points()[i]) << " portions, " << curve.kernel());
    Rational till;
    for (const ItemCost& item : items_at(costing, curve.points()[i])) till += item.costs.till;
    CHECK(column->counts[i] * column->step == till);
  }
}

TEST_CASE("curve: the till in words is the till of each costing") {
  const Costing costing = pot_costing(4);
  const Curve curve(costing, CurvePoints({3, 7}, 3000));
  // Leeks go up by 1 kg and 500 g in turn, eggs by 6 and 10: several stairs a period and before it.
  CHECK(curve.kernel().starts_with("till in words: "));
  check_column(costing, curve, 13);
}

TEST_CASE("curve: what is not straight is followed from cover to cover beside the stairs") {
  const Costing costing = costing_of({"500 g leeks", "2 eggs | one per 3 portions",
                                      "20 g salt | tapered (2, 1.5), "
                                      "then 1/3",
                                      "1 1/2 onions | whole"},
                                     {{"leeks", "AP", "1 kg", "2.10"},
                                      {"eggs", "AP", "6", "1.50"},
                                      {"salt", "AP", "750 g", "0.80"},
                                      {"onions", "AP", "1", "0.20"}});
  const Curve curve(costing, CurvePoints({1, 1}, 500));
  CHECK(curve.kernel() ==
        "till in words: 0 stairs by lanes of 32 bits, 1 stair by rises; from cover to cover: "
        "eggs, salt, onions");
  check_column(costing, curve, 1);
}

TEST_CASE("curve: one per portion is straight at whole portions") {
  const Costing costing = costing_of({"4 eggs | one per portion", "8 onions | whole"},
                                     {{"eggs", "AP", "6", "1.50"}, {"onions", "AP", "1", "0.20"}});
  const Curve curve(costing, up_to(2100));
  CHECK(curve.kernel() == "till in words: 2 stairs by lanes of 32 bits, 0 stairs by rises");
  check_column(costing, curve, 1);
  const Curve listed_points(costing, listed({Rational(7, 2), 4}));
  CHECK(listed_points.kernel() ==
        "till in fractions: the points are not whole portions in equal steps upward");
  check_column(costing, listed_points, 1);
}

TEST_CASE("curve: prices beyond words go in fractions, with the same answers") {
  const Costing costing =
      costing_of({"500 g leeks", "1 egg"},
                 {{"leeks", "AP", "1 kg", "1000000000000000"}, {"eggs", "AP", "6", "1.01"}});
  const Curve curve(costing, CurvePoints({1, 1}, 20'000));
  CHECK(curve.kernel() == "till in fractions: its sums do not fit 64-bit words");
  CHECK(curve.cost("till")[7] == Rational(1'000'000'000'000'000) + Rational(101, 100));
  CHECK(curve.cost("till")[19'999] ==
        Rational(2500) * Rational(1'000'000'000'000'000) + Rational(834 * 101, 100));
}

TEST_CASE("curve: only the till goes in whole steps") {
  const Curve curve(pot_costing(4), up_to(5));
  CHECK(thrown_by([&] { return curve.column("used")->size; }) ==
        Thrown{"cost.column", "used does not go in whole steps of money",
               "only the till does; used is a list of fractions"});
  CHECK(thrown_by([&] { return curve.column("profit")->size; }).code == "cost.which");
  CHECK(thrown_by([&] {
          return Curve(pot_costing(4), up_to(most_curve_points + 1)).points().size();
        }) == Thrown{"cost.curve", "a curve of more than 1000000 points is asked for", ""});
}

TEST_CASE("curve: the first point that cannot be costed fails as its costing does") {
  const Costing costing =
      costing_of({"20 g salt | tapered (2, 1.5), (5, 3)"}, {{"salt", "AP", "750 g", "0.80"}});
  const auto at = [&](const Rational& portions) {
    return thrown_by([&] { return items_at(costing, portions).size(); });
  };
  CHECK(items_at(costing, 20).front().costs.till == Rational(80, 100));
  CHECK(at(21).code == "rule.taper_end");
  CHECK(thrown_by([&] { return Curve(costing, up_to(300)).points().size(); }) == at(21));
  CHECK(thrown_by([&] { return Curve(costing, listed({2, 90, 30})).points().size(); }) == at(90));
  CHECK(Curve(costing, up_to(20)).cost("till")[19] == Rational(80, 100));
}

std::vector<std::string> texts_of(const std::vector<CountRun>& runs) {
  std::vector<std::string> texts;
  for (const CountRun& run : runs) texts.push_back(text_of(run));
  return texts;
}

TEST_CASE("curve: counts at which packs come out even") {
  const Curve curve(pot_costing(4), up_to(60));
  const auto even = curve.even_counts();
  REQUIRE(even.size() == 4);
  // 25/44 of 500 g of leeks a portion come out even at 44; 11/100 of a pack of barley nowhere.
  CHECK(texts_of(even[0].counts) == std::vector<std::string>{"44"});
  CHECK(even[1].counts.empty());
  CHECK(texts_of(even[3].counts) == std::vector<std::string>{"4 to 60, every 4"});
}

TEST_CASE("curve: runs of numbers") {
  const auto runs = [](std::vector<Rational> numbers) {
    CountRuns found;
    for (const Rational& number : numbers) found.add(number);
    return texts_of(found.runs());
  };
  CHECK(runs({}).empty());
  CHECK(runs({7}) == std::vector<std::string>{"7"});
  CHECK(runs({1, 2, 3}) == std::vector<std::string>{"1 to 3"});
  CHECK(runs({5, 12, 24, 36}) == std::vector<std::string>{"5", "12 to 36, every 12"});
  CHECK(runs({1, 2, 3, 10, 20}) == std::vector<std::string>{"1 to 3", "10 to 20, every 10"});
  CHECK(runs({Rational(1, 2), 1}) == std::vector<std::string>{"0.5 to 1, every 0.5"});
}

TEST_CASE("curve: a batch up to the next whole pack costs no more") {
  // A quarter of a tin a portion: 1 to 3 pay what 4 pay.
  const Costing costing =
      costing_of({"240 g chickpeas, drained"},
                 {{"chickpeas", "drained", "400 g tin (240 g drained)", "0.60"}});
  const Curve curve(costing, up_to(6));
  const auto dominated = curve.dominated("till");
  REQUIRE(dominated.size() == 2);
  CHECK(dominated[0].first == Rational(1));
  CHECK(dominated[0].last == Rational(3));
  CHECK(dominated[0].by == Rational(4));
  CHECK(dominated[0].costs == Rational(60, 100));
  CHECK(dominated[1].first == Rational(5));
  CHECK(dominated[1].last == Rational(5));
  CHECK(dominated[1].by == Rational(6));
  const auto cheapest = curve.cheapest("till");
  REQUIRE(cheapest);
  CHECK(cheapest->portions == Rational(4));
  CHECK(cheapest->per_portion == Rational(15, 100));
  CHECK_FALSE(Curve(costing, listed({})).cheapest("till"));
}

}  // namespace
}  // namespace scalepan
