#include "costing/pack_prices.hpp"

#include <algorithm>
#include <utility>

#include "exact/error.hpp"
#include "measure/nearest.hpp"
#include "packs/break_even.hpp"

namespace scalepan {

namespace {

const ItemCost& item_named(const Provisions& provisions, std::string_view name) {
  std::vector<std::string_view> names;
  for (const ItemCost& item : provisions.items()) {
    if (item.plan->item == name) return item;
    names.push_back(item.plan->item);
    for (const std::size_t line : item.plan->lines) {
      names.push_back(provisions.lines()[line].id);
      if (names.back() == name) return item;
    }
  }
  const std::string near = nearest_hint(nearest_names(name, names));
  fail("cost.item", "no item or line is called \"" + excerpt(name) + "\"", near);
}

const Purchase& single_of(const std::vector<Purchase>& purchases, std::size_t row) {
  const Purchase* single = nullptr;
  for (const Purchase& purchase : purchases) {
    if (purchase.row != row) continue;
    if (single == nullptr || purchase.packs < single->packs) single = &purchase;
  }
  return *single;
}

/// The packs of one kind for their need, beside the best that other kinds can do.
class PackKind {
 public:
  PackKind(const Provisions& provisions, const ItemCost& item, const OfferGroup& group)
      : provisions_(provisions), item_(item), group_(group), need_(to_buy(group)) {
    bool before = true;
    for (const OfferGroup& other : item.plan->groups) {
      if (&other == &group) {
        before = false;
        continue;
      }
      const Rational price = other.covers->at(to_buy(other)).price;
      if (beat_ && price >= *beat_) continue;
      beat_ = price;
      wins_ties_ = !before;
    }
  }

  [[nodiscard]] PackPrice price_of(std::size_t row) const {
    const std::vector<Purchase>& purchases = group_.covers->purchases();
    const Offer& offer = *group_.offers[row];
    PackPrice found;
    found.pack = offer.pack.text;
    found.shop = offer.shop;
    found.price = money(single_of(purchases, row).price);
    found.taken = item_.group == &group_ && !item_.cover.counts[row].is_zero();
    if (const auto by_size = break_even_by_size(purchases, row)) found.by_size = money(*by_size);
    const auto worth = break_even_price(purchases, row, need_, beat_);
    found.only = !worth.has_value();
    if (!worth || !worth->price) return found;
    found.worth = money(*worth->price);
    // At this price the pack's kind costs no more than any other, so that it may tie with one.
    const bool kind_taken = !beat_ || worth->cover.price < *beat_ || wins_ties_;
    found.taken_at_worth = worth->taken && kind_taken;
    return found;
  }

 private:
  [[nodiscard]] Rational to_buy(const OfferGroup& group) const {
    return to_buy_of(group, need_of(group, provisions_.lines()));
  }
  [[nodiscard]] Quantity money(const Rational& coherent) const {
    return Quantity::of_coherent(coherent, provisions_.plan().money());
  }

  const Provisions& provisions_;
  const ItemCost& item_;
  const OfferGroup& group_;
  Rational need_;
  std::optional<Rational> beat_;
  bool wins_ties_ = true;  // this kind goes before the best of the others where both cost the same
};

}  // namespace

std::vector<PackPrice> pack_prices(const Provisions& provisions, std::string_view item) {
  const ItemCost& found = item_named(provisions, item);
  if (found.group == nullptr) {
    fail("cost.item", found.plan->item + " is not priced: " + found.problem);
  }
  if (to_buy_of(*found.group, found.need.coherent()).is_zero()) {
    fail("cost.item", "nothing is to buy of " + found.plan->item + ", so no pack is bought");
  }
  std::vector<PackPrice> prices;
  for (const OfferGroup& group : found.plan->groups) {
    const PackKind kind(provisions, found, group);
    for (std::size_t row = 0; row < group.offers.size(); ++row) {
      prices.push_back(kind.price_of(row));
    }
  }
  return prices;
}

}  // namespace scalepan
