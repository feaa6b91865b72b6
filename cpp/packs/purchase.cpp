#include "packs/purchase.hpp"

#include <string>

#include "exact/error.hpp"
#include "exact/number_text.hpp"

namespace scalepan {

namespace {

void expect_count(const Rational& count, std::string_view what) {
  if (count.is_integer() && count.sign() > 0) return;
  fail("cover.count",
       std::string(what) + " must be a whole number above zero, not " + exact_text(count));
}

}  // namespace

void expect_valid(std::span<const Purchase> purchases) {
  if (purchases.empty()) fail("cover.no_packs", "there is no pack to choose from");
  for (const Purchase& purchase : purchases) {
    expect_count(purchase.packs, "the number of packs in a purchase");
    if (purchase.size.sign() <= 0) fail("cover.pack_size", "the size of a pack must be above zero");
    if (purchase.price.sign() < 0) fail("cover.price", "the price of a pack is below zero");
    expect_count(purchase.least, "the least number to be bought");
    if (!purchase.limit) continue;
    expect_count(*purchase.limit, "the limit of a pack");
    if (*purchase.limit >= purchase.least) continue;
    fail("cover.count", "at least " + exact_text(purchase.least) + " must be bought, but at most " +
                            exact_text(*purchase.limit) + " may be");
  }
}

}  // namespace scalepan
