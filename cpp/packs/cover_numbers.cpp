#include "packs/cover_numbers.hpp"

#include <algorithm>

namespace scalepan {

namespace {

Rational common_step_of(std::span<const Purchase> purchases, Rational Purchase::* part) {
  Rational step;
  for (const Purchase& purchase : purchases) {
    const Rational& amount = purchase.*part;
    if (amount.is_zero()) continue;
    step = step.is_zero() ? amount : common_step(step, amount);
  }
  return step.is_zero() ? Rational(1) : step;
}

/// The most of it that is ever bought at once.
Rational largest_bundle(const Purchase& purchase) {
  return purchase.limit ? *purchase.limit : purchase.least;
}

bool fit_words(std::span<const Purchase> purchases, const CoverNumbers& numbers) {
  const Rational most(CoverNumbers::most_steps);
  return std::ranges::all_of(purchases, [&](const Purchase& purchase) {
    const Rational times = largest_bundle(purchase);
    return times * purchase.size / numbers.size_step <= most &&
           times * purchase.price / numbers.price_step <= most && times * purchase.packs <= most;
  });
}

std::int64_t word_of(const Rational& whole) { return whole.word_numerator(); }

}  // namespace

CoverNumbers numbers_for(std::span<const Purchase> purchases) {
  CoverNumbers numbers;
  numbers.size_step = common_step_of(purchases, &Purchase::size);
  numbers.price_step = common_step_of(purchases, &Purchase::price);
  numbers.words = fit_words(purchases, numbers);
  return numbers.words ? numbers : CoverNumbers{};
}

std::vector<LimitedThing<std::int64_t>> word_things(std::span<const Purchase> purchases,
                                                    const CoverNumbers& numbers, CoverOrder order) {
  std::vector<LimitedThing<std::int64_t>> things;
  things.reserve(purchases.size());
  for (const Purchase& purchase : purchases) {
    const CoverKey<std::int64_t> key(order, word_of(purchase.price / numbers.price_step),
                                     word_of(purchase.size / numbers.size_step),
                                     word_of(purchase.packs));
    LimitedThing<std::int64_t> thing{
        {key, purchase.row, things.size()}, word_of(purchase.least), std::nullopt, purchase.one_of};
    if (purchase.limit) thing.limit = word_of(*purchase.limit);
    things.push_back(thing);
  }
  return things;
}

std::vector<LimitedThing<Rational>> fraction_things(std::span<const Purchase> purchases,
                                                    CoverOrder order) {
  std::vector<LimitedThing<Rational>> things;
  things.reserve(purchases.size());
  for (const Purchase& purchase : purchases) {
    const CoverKey<Rational> key(order, purchase.price, purchase.size, purchase.packs);
    things.push_back(
        {{key, purchase.row, things.size()}, purchase.least, purchase.limit, purchase.one_of});
  }
  return things;
}

}  // namespace scalepan
