// Yield tests: shares of several trials, parts, costs. Expected figures are worked out beside each.
#include "food/trials.hpp"

namespace scalepan {
namespace {

/// 3 of 4 kg and 4 of 8 kg remain; 2 of the 3 kg went into the pan.
YieldTest two_trials() {
  return trials_of({{"1", "bought", "4 kg", "leeks", "2 EUR/kg"},
                    {"1", "by-product", "500 g", "tops", "1 EUR/kg"},
                    {"1", "loss", "rest"},
                    {"1", "edible", "3 kg"},
                    {"1", "into the pan", "2 kg"},
                    {"1", "cooked", "1.5 kg"},
                    {"2", "bought", "8 kg", "", "20 EUR"},
                    {"2", "by-product", "4 kg", "roots"},
                    {"2", "edible", "4 kg"}});
}

const YieldShare& share_of(const std::vector<YieldShare>& shares, Stage from, Stage to) {
  for (const YieldShare& share : shares) {
    if (share.from == from && share.to == to) return share;
  }
  throw std::out_of_range("no such share");
}

TEST_CASE("yield tests: both ratios and the spread") {
  const auto shares = two_trials().shares();
  REQUIRE(shares.size() == 3);
  const TrialRatio& edible = share_of(shares, Stage::as_purchased, Stage::edible).ratio;
  CHECK(edible.of_sums == q("7/12 EP/AP"));
  CHECK(edible.mean == q("5/8 EP/AP"));
  CHECK(edible.low == q("1/2 EP/AP"));
  CHECK(edible.high == q("3/4 EP/AP"));
  CHECK(edible.trials == 2);
  CHECK(edible.rest().of_sums == q("5/12"));
  CHECK(edible.rest().low == q("1/4"));
}

TEST_CASE("yield tests: cooked shares are of what went into the pan") {
  const auto shares = two_trials().shares();
  CHECK(share_of(shares, Stage::edible, Stage::cooked).ratio.of_sums == q("3/4 cooked/EP"));
  // Behind 2 of the 3 kg stand 8/3 of the 4 kg bought.
  const TrialRatio& whole = share_of(shares, Stage::as_purchased, Stage::cooked).ratio;
  CHECK(whole.of_sums == q("9/16 cooked/AP"));
  CHECK(whole.trials == 1);
}

TEST_CASE("yield tests: a trial without a part counts with none of it") {
  const auto parts = two_trials().parts();
  REQUIRE(parts.size() == 3);
  CHECK(parts[0].name == "tops");
  CHECK(parts[0].ratio.of_sums == q("1/24"));
  CHECK(parts[0].ratio.mean == q("1/16"));
  CHECK(parts[0].ratio.low == q("0"));
  CHECK(parts[1].name == "loss");
  CHECK(parts[1].weight == q("500 g"));
  CHECK(parts[2].ratio.high == q("1/2"));
}

TEST_CASE("yield tests: money goes on with the weight, less what came off") {
  const auto costs = two_trials().costs();
  REQUIRE(costs.size() == 2);
  CHECK(costs[0].value == q("27.50 EUR"));
  CHECK(costs[0].per_unit() == q("55/14 EUR/(kg EP)"));
  CHECK(costs[0].per_unit().unit() == u("EUR/(kg EP)"));
  CHECK(costs[0].price() == q("7/3 EUR/(kg AP)"));
  CHECK(costs[0].factor() == q("165/98 AP/EP"));
  CHECK(costs[0].yield_factor() == q("12/7 AP/EP"));
  CHECK(costs[1].value == q("5 EUR"));
  CHECK(costs[1].per_unit() == q("10/3 EUR/(kg cooked)"));
  CHECK(costs[1].trials == 1);
}

TEST_CASE("yield tests: a portion and a new price") {
  const StageCost cost = two_trials().costs().front();
  CHECK(cost.portion_cost(q("140 g")) == q("0.55 EUR"));
  CHECK(cost.portion_factor(q("140 g EP")) == q("33/140 kg AP"));
  CHECK(cost.portion_cost(q("140 g"), q("7 EUR/kg")) == q("1.65 EUR"));
  CHECK(cost.at_price(q("7/3 EUR/kg")) == cost.per_unit());
  CHECK(thrown_by([&] { return cost.portion_cost(q("140 g cooked")); }).code == "quantity.convert");
  CHECK(thrown_by([&] { return cost.at_price(q("7 EUR")); }) ==
        Thrown{"yield.price", "7 EUR is no price of what was bought, which is in EUR/(kg AP)",
               "a price is money per unit bought, such as 7.00 EUR/(kg AP)"});
}

TEST_CASE("yield tests: weights close exactly, whatever units they are in") {
  // 1 lb = 453.59237 g.
  const YieldTest test = trials_of({{"1", "bought", "1 lb"},
                                    {"1", "by-product", "53.59237 g", "skin"},
                                    {"1", "edible", "0.4 kg"}});
  CHECK(test.trials().front().cut.front().weight == q("53.59237 g"));
  CHECK(thrown_by([] {
          return trials_of({{"1", "bought", "1 lb"},
                            {"1", "by-product", "54 g", "skin"},
                            {"1", "edible", "400 g"}});
        }).code == "yield.closing");
}

TEST_CASE("yield tests: what was taken off after cooking is credited at the table") {
  const auto costs = trials_of({{"1", "bought", "2 kg", "", "10 EUR"},
                                {"1", "edible", "2 kg"},
                                {"1", "cooked", "1.5 kg"},
                                {"1", "taken off", "0.5 kg", "fat", "2 EUR/kg"},
                                {"1", "served", "1 kg"}})
                         .costs();
  REQUIRE(costs.size() == 3);
  CHECK(costs[1].value == q("10 EUR"));
  CHECK(costs[2].value == q("9 EUR"));
  CHECK(thrown_by([] {
          return trials_of({{"1", "bought", "2 kg", "", "10 EUR"},
                            {"1", "edible", "2 kg"},
                            {"1", "into the pan", "1 kg"},
                            {"1", "cooked", "1 kg"},
                            {"1", "taken off", "0.5 kg", "fat", "6 EUR"},
                            {"1", "served", "0.5 kg"}});
        }) == Thrown{"yield.credit",
                     "trial 1: the parts are worth 6 EUR, more than the 5 EUR they came from"});
}

}  // namespace
}  // namespace scalepan
