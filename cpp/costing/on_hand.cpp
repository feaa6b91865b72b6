#include "costing/on_hand.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "exact/error.hpp"
#include "measure/count_nouns.hpp"
#include "measure/told.hpp"
#include "recipe/food_phrase.hpp"

namespace scalepan {

namespace {

std::string told(const StockItem& stock) { return "the " + stock.amount.text + " on hand"; }

/// By whichever statement of the amount has a way to the group's packs.
std::optional<OnHand> in_unit_of(const OfferGroup& group, const StockItem& stock,
                                 const WayFinder& ways, std::string& reason) {
  for (const PackContent& content : stock.amount.contents) {
    try {
      const LineWay way = ways.find(form_of(content.amount, content.noun), group.form);
      return OnHand{&stock, content.amount.coherent() * way.conversion.factor,
                    stock.value.coherent()};
    } catch (const Error& error) {
      if (error.code() == "cost.stage") throw;
      if (reason.empty()) reason = error.message();
    }
  }
  return std::nullopt;
}

}  // namespace

std::string item_key(const Catalog& catalog, const std::string& item, const PackText& pack) {
  const bool tinned = std::ranges::any_of(
      pack.contents, [](const PackContent& content) { return is_tin(content.noun); });
  try {
    return read_food_phrase(catalog, item, tinned).key();
  } catch (const Error&) {
    return "name " + plain_name(item);
  }
}

StockByItem::StockByItem(const Catalog& catalog, const Stock& stock, std::string day)
    : day_(std::move(day)) {
  for (const StockItem& item : stock.items()) {
    items_[item_key(catalog, item.item, item.amount)].push_back(&item);
  }
}

StockItems StockByItem::usable(const std::string& key, ItemPlan& item) const {
  StockItems usable;
  const auto held = items_.find(key);
  if (held == items_.end()) return usable;
  for (const StockItem* stock : held->second) {
    if (day_.empty() || stock->use_by.empty() || stock->use_by >= day_) {
      usable.push_back(stock);
    } else {
      item.notes.push_back(told(*stock) + " had to be used by " + stock->use_by +
                           " and is not counted");
    }
  }
  return usable;
}

std::vector<OfferGroup> groups_on_hand(const StockItems& stock) {
  std::vector<OfferGroup> groups;
  for (const StockItem* item : stock) {
    for (const PackContent& content : item->amount.contents) {
      static_cast<void>(group_of(groups, content));
    }
  }
  return groups;
}

void add_on_hand(ItemPlan& item, const StockItems& stock, const WayFinder& ways) {
  for (const StockItem* held : stock) {
    std::string reason;
    bool counted = false;
    for (OfferGroup& group : item.groups) {
      auto on_hand = in_unit_of(group, *held, ways, reason);
      if (!on_hand) continue;
      group.on_hand.push_back(*on_hand);
      counted = true;
    }
    if (counted && held->value.coherent().is_zero()) {
      item.notes.push_back(told(*held) + " states no value and is counted at nothing");
    }
    if (!counted && !item.groups.empty()) {
      item.notes.push_back(told(*held) + " is not counted: " + reason);
    }
  }
}

}  // namespace scalepan
