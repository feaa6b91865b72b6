// Spread of conversions: worst case and root-sum-square, worked out beside each check.
#include "food/spread.hpp"

#include "food/pantry.hpp"

namespace scalepan {
namespace {

Fact spread_fact(std::string id, FactKind kind, std::string_view value, const char* low,
                 const char* high) {
  Fact made = fact(std::move(id), "leek", kind, value);
  made.low = q(low);
  made.high = q(high);
  return made;
}

TEST_CASE("spread: a root that is rational is exact") {
  CHECK(root_up(0) == 0);
  CHECK(root_up(Rational(1, 4)) == Rational(1, 2));
  CHECK(root_up(Rational(49, 9)) == Rational(7, 3));
  CHECK(root_up(power(Rational(10), 60)) == power(Rational(10), 30));
}

TEST_CASE("spread: another root is rounded up at twelve places") {
  // sqrt 2 = 1.41421356237309504..., sqrt 3 = 1.73205080756887729...
  CHECK(root_up(2) == Rational(1414213562374, 1000000000000));
  CHECK(root_up(3) == Rational(1732050807569, 1000000000000));
  for (const Rational& x : {Rational(2), Rational(5, 7), Rational(1, 1000003), Rational(99999)}) {
    const Rational root = root_up(x);
    const Rational step = power(Rational(10), -root_places);
    CHECK(root * root > x);
    CHECK((root - step) * (root - step) < x);
  }
}

TEST_CASE("spread: one fact leaves the same spread by both names") {
  const Fact edible = spread_fact("e", FactKind::edible, "0.8 EP/AP", "0.7 EP/AP", "0.9 EP/AP");
  for (const bool divides : {false, true}) {
    const std::vector<Step> steps{{&edible, divides}};
    CHECK(worst_case(steps) == root_sum_square(steps));
  }
  CHECK(worst_case(std::vector<Step>{{&edible, true}}) == Spread{Rational(10, 9), Rational(10, 7)});
}

TEST_CASE("spread: independent facts add up as the root of their squares") {
  // Relative spreads of 0.3 and 0.4 on each side: sqrt(0.09 + 0.16) = 0.5.
  const Fact piece = spread_fact("p", FactKind::piece, "100 g EP/(piece AP)", "70 g EP/(piece AP)",
                                 "130 g EP/(piece AP)");
  const Fact cooked =
      spread_fact("c", FactKind::cooked, "2 cooked/EP", "1.2 cooked/EP", "2.8 cooked/EP");
  const std::vector<Step> steps{{&piece, false}, {&cooked, false}};
  CHECK(root_sum_square(steps) == Spread{Rational(100), Rational(300)});
  CHECK(worst_case(steps) == Spread{Rational(84), Rational(364)});  // 70 * 1.2, 130 * 2.8
}

TEST_CASE("spread: a fact divided by changes its sides") {
  // 200 / 0.8: above by 0.25 of the piece and by 0.8 / 0.75 - 1 = 1/15 of the share;
  // sqrt(1/16 + 1/225) = sqrt(241) / 60 = 0.25873624493766...
  const Fact piece = spread_fact("p", FactKind::piece, "200 g EP/(piece AP)", "150 g EP/(piece AP)",
                                 "250 g EP/(piece AP)");
  const Fact edible = spread_fact("e", FactKind::edible, "0.8 EP/AP", "0.75 EP/AP", "0.8 EP/AP");
  const std::vector<Step> steps{{&piece, false}, {&edible, true}};
  const Spread spread = root_sum_square(steps);
  CHECK(spread.low == Rational(375, 2));
  CHECK(spread.high == 250 * (1 + Rational(258736244938, 1000000000000)));
}

TEST_CASE("spread: root-sum-square never leaves the worst case") {
  // Relative spreads of 0.6 and 0.8 below: 1 - 1 = 0, but the worst case is 0.4 * 0.2.
  const Fact piece = spread_fact("p", FactKind::piece, "10 g EP/(piece AP)", "4 g EP/(piece AP)",
                                 "10 g EP/(piece AP)");
  const Fact cooked =
      spread_fact("c", FactKind::cooked, "1 cooked/EP", "0.2 cooked/EP", "1 cooked/EP");
  const std::vector<Step> steps{{&piece, false}, {&cooked, false}};
  CHECK(root_sum_square(steps).low == worst_case(steps).low);
  CHECK(worst_case(steps) == Spread{Rational(4, 5), Rational(10)});
}

TEST_CASE("spread: no facts leave none") {
  CHECK(worst_case({}) == Spread{});
  CHECK(root_sum_square({}) == Spread{});
}

}  // namespace
}  // namespace scalepan
