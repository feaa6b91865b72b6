#include "packs/price_book.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "measure/nearest.hpp"
#include "packs/fields.hpp"

namespace scalepan {

namespace {

using Key = std::tuple<std::string, Stage, std::string, std::string>;

Key key_of(const Offer& offer) { return {offer.item, offer.sold_as, offer.pack.text, offer.shop}; }

std::string place_text(const Offer& offer) {
  const std::string text = offer.place.text();
  return text.empty() ? "an earlier row" : text;
}

void expect_known_shops(const std::vector<Offer>& offers, std::span<const std::string> shops) {
  std::set<std::string_view> names;
  for (const Offer& offer : offers) names.insert(offer.shop);
  for (const std::string& shop : shops) {
    if (names.contains(shop)) continue;
    const std::vector<std::string_view> known(names.begin(), names.end());
    fail("price.shop", "no row is of the shop \"" + excerpt(shop) + "\"",
         nearest_hint(nearest_names(shop, known)));
  }
}

}  // namespace

PriceBook::PriceBook(std::vector<Offer> offers) : offers_(std::move(offers)) {
  std::map<std::pair<Key, std::string>, const Offer*> seen;
  for (const Offer& offer : offers_) {
    const auto [known, fresh] = seen.emplace(std::pair(key_of(offer), offer.date), &offer);
    if (fresh) continue;
    fail("price.duplicate",
         "the pack " + offer.pack.text + " of " + offer.item + " is priced twice, here and at " +
             place_text(*known->second),
         "give the rows different shops or dates, or take one out", offer.place);
  }
}

PriceBook PriceBook::on(std::string_view day, std::span<const std::string> shops) const {
  expect_known_shops(offers_, shops);
  const std::string date = date_text(day);
  std::map<Key, std::string> newest;
  const auto counts = [&](const Offer& offer) {
    const bool in_time = date.empty() || offer.date <= date;
    return in_time && (shops.empty() || std::ranges::find(shops, offer.shop) != shops.end());
  };
  for (const Offer& offer : offers_) {
    if (!counts(offer)) continue;
    std::string& known = newest[key_of(offer)];
    known = std::max(known, offer.date);
  }
  PriceBook view;
  for (const Offer& offer : offers_) {
    if (counts(offer) && newest.at(key_of(offer)) == offer.date) view.offers_.push_back(offer);
  }
  return view;
}

PriceBook operator+(const PriceBook& first, const PriceBook& second) {
  std::vector<Offer> offers = first.offers();
  offers.insert(offers.end(), second.offers().begin(), second.offers().end());
  return PriceBook(std::move(offers));
}

}  // namespace scalepan
