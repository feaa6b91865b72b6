#include "packs/priced_cover.hpp"

#include "exact/error.hpp"
#include "exact/number_text.hpp"

namespace scalepan {

namespace {

void expect_alike(const Quantity& need, std::span<const PricedPack> packs) {
  for (const PricedPack& pack : packs) {
    if (!(pack.size.dimension() == need.dimension())) {
      fail_dimensions("cover.dimension", "a pack cannot meet the need:", need, pack.size);
    }
    if (!pack.price.dimension().currency()) {
      fail("cover.money", "the price " + pack.price.text() + " is not in money",
           "write an ISO 4217 code after it: 4.10 EUR");
    }
    if (!(pack.price.dimension() == packs.front().price.dimension())) {
      fail_dimensions("cover.money", "prices meet in two currencies:", packs.front().price,
                      pack.price);
    }
  }
}

}  // namespace

std::string text_of(const PacksTaken& packs) {
  std::string text;
  for (const auto& [count, pack] : packs) {
    text += (text.empty() ? "" : " + ") + exact_text(count) + " x " + pack;
  }
  return text;
}

PricedCover cover(const Quantity& need, std::span<const PricedPack> packs) {
  expect_alike(need, packs);
  std::vector<Pack> plain;
  for (const PricedPack& pack : packs) {
    plain.push_back({pack.size.coherent(), pack.price.coherent()});
  }
  const Cover found = cheapest_cover(need.coherent(), plain);
  PricedCover result;
  for (std::size_t i = 0; i < packs.size(); ++i) {
    if (!found.counts[i].is_zero()) result.packs.emplace_back(found.counts[i], packs[i].text);
  }
  result.price = Quantity::of_coherent(found.price, packs.front().price.unit());
  result.leftover = Quantity::of_coherent(found.leftover, need.unit());
  return result;
}

}  // namespace scalepan
