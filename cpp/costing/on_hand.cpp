#include "costing/on_hand.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "exact/error.hpp"
#include "measure/count_nouns.hpp"
#include "measure/nearest.hpp"
#include "recipe/food_phrase.hpp"

namespace scalepan {

namespace {

std::string told(const StockItem& stock) { return "the " + stock.amount.text + " on hand"; }

std::string told(const Form& form) {
  return std::string(name_of(form.kind)) + " " + std::string(symbol_of(form.stage)) +
         (form.detail.empty() ? "" : " (" + form.detail + ")");
}

[[noreturn]] void fail_stages(const StockItem& stock, const Form& from, const Form& to) {
  const auto told_stage = [](Stage stage) {
    return std::string(symbol_of(stage)) + " (" + std::string(name_of(stage)) + ")";
  };
  fail("cost.stage",
       stock.item + " is on hand at " + told_stage(from.stage) + " but counted at " +
           told_stage(to.stage) + ", and no edible share links the two",
       "add the share as a fact of your own", stock.place);
}

/// Of a food without facts `WayFinder` speaks of what a line needs and a shop sells.
std::string reason_of(const Error& error, const Form& from, const Form& to) {
  if (error.code() != "cost.no_way") return error.message();
  return "no fact leads from " + told(from) + " to " + told(to);
}

/// By the statement of the amount that leans on least on its way to the group's packs.
std::optional<OnHand> in_unit_of(const Form& to, const StockItem& stock, const WayFinder& ways,
                                 std::string& reason) {
  std::optional<OnHand> best;
  std::size_t fewest = 0;
  for (const PackContent& content : stock.amount.contents) {
    const Form from = form_of(content.amount, content.noun);
    try {
      const LineWay way = ways.find(from, to);
      const std::size_t facts = way.conversion.steps.size();
      if (best && std::pair(best->share_assumed, fewest) <= std::pair(way.share_assumed, facts)) {
        continue;
      }
      best = OnHand{&stock, content.amount.coherent() * way.conversion.factor,
                    stock.value.coherent(), way.share_assumed};
      fewest = facts;
    } catch (const Error& error) {
      if (error.code() == "cost.stage") fail_stages(stock, from, to);
      if (reason.empty()) reason = reason_of(error, from, to);
    }
  }
  return best;
}

void note_counted(ItemPlan& item, const StockItem& stock, bool share_assumed) {
  if (!stock.valued) {
    item.notes.push_back(told(stock) + " states no value and is counted at nothing");
  }
  if (share_assumed) {
    item.notes.push_back("no edible share (EP/AP) is known, so all of " + told(stock) +
                         " is taken as edible");
  }
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
  if (held == items_.end()) {
    note_near_names(item);
    return usable;
  }
  for (const StockItem* stock : held->second) {
    if (!day_.empty() && !stock->use_by.empty() && stock->use_by < day_) {
      item.notes.push_back(told(*stock) + " had to be used by " + stock->use_by +
                           " and is not counted");
      continue;
    }
    usable.push_back(stock);
    if (!day_.empty() || stock->use_by.empty()) continue;
    item.notes.push_back(told(*stock) + " must be used by " + stock->use_by +
                         ", and no day is given to hold that against");
  }
  return usable;
}

/// Names that the catalogue knows are other foods, not misspelt ones.
void StockByItem::note_near_names(ItemPlan& item) const {
  std::vector<std::string_view> names;
  for (const auto& [key, stock] : items_) {
    if (key.starts_with("name ")) names.push_back(stock.front()->item);
  }
  const std::vector<std::string> near = nearest_names(item.item, names);
  if (near.empty()) return;
  item.notes.push_back("nothing on hand has this name (" + nearest_hint(near) + ")");
}

void StockByItem::note_relative(const std::string& key, ItemPlan& item) const {
  const auto held = items_.find(key);
  if (held == items_.end()) return;
  for (const StockItem* stock : held->second) {
    item.notes.push_back(told(*stock) + " is of " + stock->item + ", and is not counted");
  }
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
    std::optional<OnHand> counted;
    for (OfferGroup& group : item.groups) {
      const auto on_hand = in_unit_of(group.form, *held, ways, reason);
      if (!on_hand) continue;
      group.on_hand.push_back(*on_hand);
      if (!counted || counted->share_assumed) counted = on_hand;
    }
    if (counted) {
      note_counted(item, *held, counted->share_assumed);
      continue;
    }
    if (item.groups.empty()) in_unit_of(ways.needed(), *held, ways, reason);
    if (!reason.empty()) item.notes.push_back(told(*held) + " is not counted: " + reason);
  }
}

}  // namespace scalepan
