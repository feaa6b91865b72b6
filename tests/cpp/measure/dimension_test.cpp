#include "measure/dimension.hpp"

#include <barrier>
#include <thread>
#include <vector>

#include "measure/currency.hpp"
#include "measure/measuring.hpp"

namespace scalepan {
namespace {

const Dimension ap(Base::of(Stage::as_purchased));
const Dimension ep(Base::of(Stage::edible));

Dimension pounds_sterling() { return Dimension(Base::of_currency(*currency_coded("GBP"))); }

TEST_CASE("dimensions: products add powers and quotients take them off") {
  CHECK(dimension::length() * dimension::length() * dimension::length() == dimension::volume());
  CHECK(dimension::volume() / dimension::length() == dimension::length().power(2));
  CHECK((dimension::mass() / dimension::mass()).is_number());
  CHECK(dimension::mass().power(0).is_number());
  CHECK(dimension::mass().power(-1) * dimension::mass() == Dimension());
  CHECK((dimension::mass() * ep).power_of(base::mass) == 1);
  CHECK((dimension::mass() / dimension::volume()).power_of(base::length) == -3);
  CHECK(dimension::mass().power_of(base::time) == 0);
}

TEST_CASE("dimensions: the order of the factors does not matter") {
  CHECK(Dimension({{base::mass, 1}, {base::length, -3}}) ==
        Dimension({{base::length, -3}, {base::mass, 1}}));
  CHECK(Dimension({{base::mass, 2}, {base::mass, -1}}) == dimension::mass());
  CHECK(Dimension({{base::mass, 2}, {base::mass, -2}}).is_number());
}

TEST_CASE("dimensions: a share of one stage in another turns the one into the other") {
  const Dimension need = dimension::mass() * ep;
  const Dimension share = ep / ap;
  CHECK(need / share == dimension::mass() * ap);
  CHECK_FALSE(need * share == dimension::mass() * ap);
  CHECK(share.stage() == Stage::none);
  CHECK(share.has_stages());
  CHECK(need.stage() == Stage::edible);
  CHECK(need.without_stages() == dimension::mass());
  CHECK((need * need).stage() == Stage::none);
  CHECK((Dimension() / ap).stage() == Stage::none);
}

TEST_CASE("dimensions: named for people") {
  CHECK(Dimension().name() == "plain number");
  CHECK(dimension::mass().name() == "weight");
  CHECK(dimension::volume().name() == "volume");
  CHECK(dimension::length().name() == "length");
  CHECK(dimension::time().name() == "time");
  CHECK(dimension::piece().name() == "count");
  CHECK(dimension::portion().name() == "number of portions");
  CHECK(pounds_sterling().name() == "money in GBP");
  CHECK((dimension::mass() * ep).name() == "weight EP");
  CHECK((dimension::piece() * ap).name() == "count AP");
  CHECK((ep / ap).name() == "EP/AP");
  CHECK((pounds_sterling() / (dimension::mass() * ap)).name() == "GBP/(g AP)");
  CHECK(dimension::length().power(2).name() == "cm^2");
}

TEST_CASE("dimensions: the coherent symbol") {
  CHECK(Dimension().coherent_symbol().empty());
  CHECK((dimension::mass() * ep).coherent_symbol() == "g EP");
  CHECK(dimension::volume().coherent_symbol() == "mL");
  CHECK(dimension::volume().power(2).coherent_symbol() == "mL^2");
  CHECK((dimension::mass() / dimension::volume()).coherent_symbol() == "g/mL");
  CHECK(dimension::time().power(-1).coherent_symbol() == "1/s");
  CHECK(dimension::length().power(4).coherent_symbol() == "cm^4");
}

TEST_CASE("dimensions: powers beyond the limit are refused") {
  const auto too_high = [](const char* power, const char* base) {
    return Thrown{"unit.power", std::string("a power of ") + power + " of " + base + " is too high",
                  "at most 9"};
  };
  CHECK(dimension::mass().power(9).power_of(base::mass) == 9);
  CHECK(thrown_by([] { return dimension::mass().power(10); }) == too_high("10", "g"));
  CHECK(thrown_by([] { return dimension::mass().power(-10); }) == too_high("-10", "g"));
  CHECK(thrown_by([] { return dimension::volume().power(3) * dimension::length(); }) ==
        too_high("10", "cm"));
}

TEST_CASE("dimensions: stages by symbol and name") {
  for (const auto& [stage, symbol, name] : {std::tuple{Stage::as_purchased, "AP", "as purchased"},
                                            {Stage::edible, "EP", "edible portion"},
                                            {Stage::cooked, "cooked", "cooked"},
                                            {Stage::drained, "drained", "drained"},
                                            {Stage::served, "served", "served"}}) {
    CHECK(symbol_of(stage) == symbol);
    CHECK(name_of(stage) == name);
    CHECK(stage_named(symbol) == stage);
    CHECK(Base::of(stage).stage() == stage);
    CHECK(Base::of(stage).symbol() == symbol);
  }
  CHECK(symbol_of(Stage::none).empty());
  CHECK_FALSE(stage_named("ap"));
  CHECK_FALSE(stage_named(""));
}

TEST_CASE("dimensions: money") {
  CHECK(pounds_sterling().currency() == currency_coded("GBP"));
  CHECK_FALSE(pounds_sterling().power(2).currency());
  CHECK_FALSE((pounds_sterling() / dimension::portion()).currency());
  CHECK_FALSE(dimension::mass().currency());
  CHECK(Base::of_currency(*currency_coded("KWD")).symbol() == "KWD");
}

// Each thread makes the same few hundred new dimensions and units, none of which existed before.
TEST_CASE("dimensions: threads that meet the same new one get the same one") {
  constexpr int threads = 8;
  constexpr int powers = 7;
  struct Seen {
    std::vector<Dimension> dimensions;
    std::vector<Unit> units;
  };
  std::vector<Seen> seen(threads);
  std::barrier start(threads);
  const auto work = [&](Seen& mine) {
    start.arrive_and_wait();
    for (int i = -powers; i <= powers; ++i) {
      for (int j = -powers; j <= powers; ++j) {
        mine.dimensions.push_back(dimension::time().power(i) * Dimension(base::load).power(j));
        mine.units.push_back(Unit::coherent(mine.dimensions.back()));
      }
    }
  };
  std::vector<std::thread> running;
  for (Seen& mine : seen) running.emplace_back(work, std::ref(mine));
  for (std::thread& thread : running) thread.join();
  for (const Seen& mine : seen) {
    CHECK(mine.dimensions == seen.front().dimensions);
    CHECK(mine.units == seen.front().units);
  }
  for (std::size_t k = 0; k < seen.front().dimensions.size(); ++k) {
    const int i = static_cast<int>(k) / (2 * powers + 1) - powers;
    const int j = static_cast<int>(k) % (2 * powers + 1) - powers;
    CHECK(seen.front().dimensions[k].power_of(base::time) == i);
    CHECK(seen.front().dimensions[k].power_of(base::load) == j);
  }
}

}  // namespace
}  // namespace scalepan
