#include "costing/shopping.hpp"

#include <algorithm>

namespace scalepan {

namespace {

ShoppingRow row_of(const ItemCost& item, const Purchase& purchase) {
  ShoppingRow row;
  row.item = item.plan->item;
  for (const std::size_t line : item.plan->lines) {
    row.lines.push_back(purchase.lines()[line].id);
  }
  row.need = item.need;
  row.price = Quantity(item.costs.till, purchase.plan().money());
  row.leftover = item.leftover;
  row.keeping = item.keeping;
  row.packs = item.packs();
  for (std::size_t i = 0; i < item.group->offers.size(); ++i) {
    if (item.cover.counts[i].is_zero()) continue;
    const std::string& shop = item.group->offers[i]->shop;
    const bool fresh = std::ranges::find(row.shops, shop) == row.shops.end();
    if (!shop.empty() && fresh) row.shops.push_back(shop);
  }
  return row;
}

}  // namespace

std::vector<ShoppingRow> shopping_list(const Purchase& purchase) {
  std::vector<ShoppingRow> rows;
  for (const ItemCost& item : purchase.items()) {
    if (item.group != nullptr) rows.push_back(row_of(item, purchase));
  }
  return rows;
}

}  // namespace scalepan
