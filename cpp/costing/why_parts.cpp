#include "costing/why_parts.hpp"

#include "exact/number_text.hpp"
#include "measure/figure.hpp"

namespace scalepan {

namespace {

std::string offer_source(const Offer& offer) {
  std::string text = offer.place.text();
  if (!offer.shop.empty()) text += (text.empty() ? "" : ", ") + offer.shop;
  if (!offer.date.empty()) text += (text.empty() ? "" : ", ") + offer.date;
  return text;
}

}  // namespace

std::string figure_of_fact(const Fact& fact) {
  const std::string exact = fact.value.text();
  const Rational value = fact.value.value();
  if (exact_text(value).find('/') == std::string::npos) return exact;
  return "≈ " + fixed_text(value, 4) + " " + fact.value.unit().symbol() + "  (exactly " + exact +
         ")";
}

std::string source_of(const Fact& fact) {
  std::string source = fact.source;
  if (!fact.state.empty()) source += " [" + fact.state + "]";
  if (!fact.size.empty()) source += " [" + fact.size + "]";
  if (fact.layer == FactLayer::bundled) return source;
  return std::string(name_of(fact.layer)) + ": " + source;
}

std::vector<Why> why_beside(const Catalog& catalog, const Fact& fact) {
  std::vector<Why> parts;
  for (const Fact* other : catalog.beside(fact)) {
    parts.push_back({"beside it", figure_of_fact(*other), "", source_of(*other), {}});
  }
  return parts;
}

Why why_pack_price(const Offer& offer, Taxes taxes) {
  const Rational counted = with_taxes(offer.price.coherent(), offer, taxes);
  const Quantity price = Quantity::of_coherent(counted, offer.price.unit());
  Why why{"pack " + offer.pack.text, figure_of(price), "", offer_source(offer), {}};
  if (!offer.tax || counted == offer.price.coherent()) return why;
  why.how = figure_of(offer.price) + (offer.tax->included ? " less" : " and") + " its " +
            exact_text(offer.tax->rate * Rational(100)) + " % tax";
  return why;
}

std::vector<Why> why_terms(const ItemCost& item, Unit money) {
  std::vector<Why> parts;
  for (std::size_t i = 0; i < item.cover.bought.size(); ++i) {
    const WayToBuy& way = item.group->ways_to_buy[i];
    const Rational& times = item.cover.bought[i];
    if (times.is_zero() || way.text.empty()) continue;
    const std::string& pack = item.group->offers[way.purchase.row]->pack.text;
    const Quantity price = Quantity::of_coherent(times * way.purchase.price, money);
    const std::string packs = text_of(PacksTaken{{times * way.purchase.packs, pack}});
    parts.push_back({"terms", pack + ": " + way.text, packs + " for " + figure_of(price), "", {}});
  }
  return parts;
}

Why why_on_hand(const ItemCost& item, Unit money) {
  Why why{
      "on hand, used", figure_of(item.from_stock), "what must be used first goes first", "", {}};
  for (const StockUse& use : item.stock) {
    const Quantity value = Quantity::of_coherent(use.value_used, money);
    why.parts.push_back({"of " + use.stock->amount.text,
                         figure_of(use.used) + ", worth " + figure_of(value),
                         "",
                         use.stock->place.text(),
                         {}});
  }
  return why;
}

}  // namespace scalepan
