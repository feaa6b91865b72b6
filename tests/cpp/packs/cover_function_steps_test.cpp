// Steps: what they hold, where they change, and that each is met by one cover.
#include <thread>

#include "packs/cover_reference.hpp"

namespace scalepan {
namespace {

using Counts = std::vector<Rational>;

CoverFunction function_of(const std::vector<Pack>& packs,
                          CoverOrder order = CoverOrder::price_first) {
  return CoverFunction(purchases_of(packs), order);
}

// Prices of these tests are made up. 500 g cost 1.00, 200 g 0.45: 3 x 200 g beat 500 g and 200 g.
TEST_CASE("steps: those of two packs, by hand") {
  const CoverFunction function = function_of({{500, Rational(100, 100)}, {200, Rational(45, 100)}});
  const std::vector<CoverStep> steps = function.steps(0, 1000);
  const std::vector<Counts> counts{{0, 1}, {0, 2}, {1, 0}, {0, 3}, {1, 1}, {0, 4}, {1, 2}, {2, 0}};
  const std::vector<int> totals{200, 400, 500, 600, 700, 800, 900, 1000};
  REQUIRE(steps.size() == counts.size());
  for (std::size_t i = 0; i < steps.size(); ++i) {
    CHECK(steps[i].after == (i == 0 ? 0 : totals[i - 1]));
    CHECK(steps[i].upto == totals[i]);
    CHECK(steps[i].cover.counts == counts[i]);
    CHECK(steps[i].cover.leftover == 0);
  }
  // From here on two packs of 500 g are never beaten by five of 200 g: 2.00 against 2.25.
  const auto period = function.period();
  REQUIRE(period.has_value());
  CHECK(period->from == 800);
  CHECK(period->size == 500);
  CHECK(period->purchase == 0);
  CHECK(function.kernel() == "steps in words");
}

TEST_CASE("steps: a need stands in the step that ends at its cover") {
  const CoverFunction function = function_of({{500, 100}, {200, 45}});
  const CoverStep step = function.step(Rational(1201, 2));
  CHECK(step.after == 600);
  CHECK(step.upto == 700);
  CHECK(step.cover.counts == Counts{1, 1});
  CHECK(function.step(600).upto == 600);
  const Rational huge = 500 * power(10, 27);
  CHECK(function.step(huge).upto == huge);
  CHECK(function.step(huge).after == huge - 100);
  CHECK(function.steps(huge - 50, huge + 50).size() == 2);
}

TEST_CASE("steps: needs that no step has") {
  const CoverFunction function = function_of({{500, 100}});
  const auto refusal = [](auto ask) { return thrown_by([&] { static_cast<void>(ask()); }); };
  CHECK(refusal([&] { return function.step(0); }) ==
        Thrown{"cover.need", "a step meets needs above zero only"});
  const Thrown range{"cover.need",
                     "steps are listed from a need not below zero up to a larger one"};
  CHECK(refusal([&] { return function.steps(-1, 5); }) == range);
  CHECK(refusal([&] { return function.steps(5, 5); }) == range);
}

void check_steps(const CoverFunction& function, const Rational& low, const Rational& high) {
  const std::vector<CoverStep> steps = function.steps(low, high);
  REQUIRE_FALSE(steps.empty());
  CHECK(steps.front().after <= low);
  CHECK(steps.back().after < high);
  CHECK(steps.back().upto >= high);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const CoverStep& step = steps[i];
    CHECK(step.cover.total == step.upto);
    if (i > 0) {
      CHECK(step.after == steps[i - 1].upto);
      CHECK_FALSE(step.cover.counts == steps[i - 1].cover.counts);
    }
    const Rational middle = (step.after + step.upto) / 2;
    for (const Rational& need : {middle, step.upto}) {
      CHECK(function.at(need).counts == step.cover.counts);
      CHECK(function.step(need).after == step.after);
    }
  }
}

// Odd sizes at nearly one unit price: some 90,000 steps, which are not listed for one question.
const std::vector<Pack> fine{{997, 2990}, {1409, 4229}, {2003, 6007}, {877, 2632}, {1201, 3604}};

TEST_CASE("steps: from the stems the same as from the list") {
  for (const CoverOrder order : {CoverOrder::price_first, CoverOrder::leftover_first}) {
    const CoverFunction stems = function_of(fine, order);
    static_cast<void>(stems.at(50'000'000));
    CHECK(stems.kernel() == "stems in words");
    check_steps(stems, 20'000, 20'200);
    check_steps(stems, 50'000'000, 50'000'100);
    const CoverFunction listed = function_of(fine, order);
    for (int need = 100; need < 20'000; need += 100) {
      CHECK(listed.at(need).counts == stems.at(need).counts);
    }
  }
}

TEST_CASE("steps: in either order they follow on each other") {
  const std::vector<Pack> packs{{50, 30}, {70, 40}, {120, 66}};
  for (const CoverOrder order : {CoverOrder::price_first, CoverOrder::leftover_first}) {
    check_steps(function_of(packs, order), 0, 1000);
    check_steps(function_of(packs, order), 12345, 13000);
  }
}

TEST_CASE("steps: pounds and ounces against grams are exact") {
  const Rational pound(45359237, 100000);
  const CoverFunction function = function_of({{pound, 199}, {500, 219}, {pound / 16, 19}});
  check_steps(function, 0, 3000);
  CHECK(function.kernel() == "steps in words");
  CHECK(function.at(3 * pound).leftover == 0);
}

// A size so fine that no word counts it in steps of the others, at a price no one pays.
TEST_CASE("steps: in fractions the same as in words") {
  const std::vector<Pack> plain{{50, 30}, {70, 40}, {120, 66}};
  std::vector<Pack> with_fine = plain;
  with_fine.push_back({Rational(1, 4294967291) / 4294967279, 1000});
  const CoverFunction words = function_of(plain);
  const CoverFunction fractions = function_of(with_fine);
  CHECK(words.kernel() == "steps in words");
  CHECK(fractions.kernel() == "steps in fractions");
  for (int need = 1; need < 2000; need += 7) {
    Counts counts = words.at(need).counts;
    counts.emplace_back(0);
    CHECK(fractions.at(need).counts == counts);
  }
  check_steps(fractions, 0, 500);
  check_steps(fractions, 100'000, 100'500);
}

TEST_CASE("steps: a function is asked from several threads") {
  const CoverFunction shared = function_of(fine);
  std::vector<std::vector<Rational>> prices(4);
  std::vector<std::thread> threads;
  for (std::size_t part = 0; part < prices.size(); ++part) {
    threads.emplace_back([&, part] {
      for (int i = 0; i < 200; ++i) {
        prices[part].push_back(shared.at(static_cast<int>(part + 1) * 37 * i).price);
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  const CoverFunction alone = function_of(fine);
  for (std::size_t part = 0; part < prices.size(); ++part) {
    for (int i = 0; i < 200; ++i) {
      CHECK(prices[part][static_cast<std::size_t>(i)] ==
            alone.at(static_cast<int>(part + 1) * 37 * i).price);
    }
  }
}

TEST_CASE("steps: the table gives what the function gives") {
  const CoverFunction function = function_of({{500, 100}, {200, 45}, {340, 71}});
  const CoverTable* table = function.table();
  REQUIRE(table != nullptr);
  CHECK(function.size_step() == 20);
  CHECK(function.price_step() == 1);
  for (std::int64_t need = -3; need < 2000; ++need) {
    const Cover cover = function.at(function.size_step() * need);
    CHECK(function.price_step() * table->price(need) == cover.price);
    CHECK(function.size_step() * table->total(need) == cover.total);
  }
  CHECK(table->price(table->most()) == function.at(function.size_step() * table->most()).price);
}

}  // namespace
}  // namespace scalepan
