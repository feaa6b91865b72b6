// Packs that cannot be, and work that is refused rather than begun.
#include <chrono>

#include "packs/cover_reference.hpp"

namespace scalepan {
namespace {

Thrown refusal(const Rational& need, const std::vector<Pack>& packs) {
  return thrown_by([&] { return cheapest_cover(need, packs); });
}

const Thrown too_many{"cover.too_many",
                      "the packs' sizes and prices make too many covers to look at",
                      "leave out packs that are hardly worth it, or buy for a smaller need"};

TEST_CASE("cover errors: no packs, no size, no price") {
  CHECK(refusal(1, {}) == Thrown{"cover.no_packs", "there is no pack to choose from"});
  CHECK(refusal(1, {{500, 1}, {0, 1}}) ==
        Thrown{"cover.pack_size", "the size of a pack must be above zero"});
  CHECK(refusal(1, {{-500, 1}}) ==
        Thrown{"cover.pack_size", "the size of a pack must be above zero"});
  CHECK(refusal(1, {{500, 1}, {200, Rational(-1, 100)}}) ==
        Thrown{"cover.price", "the price of a pack is below zero"});
}

TEST_CASE("cover errors: steps too fine for words end in an answer or in an error") {
  // Of 1/a, 1/b and 1/c without a common factor the step is 1/(abc), and 1/a is bc steps.
  const Rational a(1, 4294967291);
  const Rational b(1, 4294967279);
  const Rational c(1, 4294967231);
  CHECK(cheapest_cover(2, std::vector<Pack>{{1, a}, {1, b}, {1, c}}).counts ==
        std::vector<Rational>{2, 0, 0});
  // The need takes thousands of millions of packs, of two or three sizes nearly alike.
  CHECK(refusal(1, {{a, 1}, {b, 1}, {c, 1}}) == too_many);
  CHECK(refusal(1, {{a, 1}, {b, 1}}) == too_many);
}

// Thirteen-digit sizes of one unit price: nothing can be cut off, so every total is looked at.
TEST_CASE("cover errors: too many totals end in an error, in bounded time") {
  const Rational step(1, 1000000007);
  std::vector<Pack> packs;
  for (const std::int64_t size : {1000000007L, 999999937L, 999999929L, 999999893L, 999999883L}) {
    packs.push_back({size * step, size * step});
  }
  const auto start = std::chrono::steady_clock::now();
  CHECK(refusal(1000000, packs) == too_many);
  CHECK(std::chrono::steady_clock::now() - start < std::chrono::minutes(2));
}

// Small packs of one unit price beside a large one of the same: most totals can be reached in
// several ways of one price and one number of packs, which only the rows tell apart. At least 9709
// packs of 103 or less hold 1000002; that many 103s hold 25 too much, so the first row takes
// eight times 3 of them off and a 102 the rest.
TEST_CASE("cover errors: many equal ways to many totals are told apart in bounded time") {
  const std::vector<Pack> packs{{1000003, 1000003}, {100, 100}, {101, 101}, {102, 102}, {103, 103}};
  const auto start = std::chrono::steady_clock::now();
  CHECK(cheapest_cover(1000002, packs).counts == std::vector<Rational>{0, 8, 0, 1, 9700});
  CHECK(std::chrono::steady_clock::now() - start < std::chrono::minutes(2));
}

}  // namespace
}  // namespace scalepan
