#include "costing/shopping.hpp"

#include <algorithm>

namespace scalepan {

namespace {

ShoppingRow row_of(const ItemCost& item, const Provisions& provisions) {
  ShoppingRow row;
  row.item = item.plan->item;
  for (const std::size_t line : item.plan->lines) {
    row.lines.push_back(provisions.lines()[line].id);
  }
  row.need = item.need;
  row.price = Quantity(item.costs.till, provisions.plan().money());
  row.leftover = item.leftover;
  row.keeping = item.keeping;
  row.from_stock = item.from_stock;
  row.packs = item.packs();
  row.terms = item.terms();
  row.deposit = Quantity(item.deposit, provisions.plan().money());
  for (std::size_t i = 0; i < item.group->offers.size(); ++i) {
    if (item.cover.counts.empty() || item.cover.counts[i].is_zero()) continue;
    const std::string& shop = item.group->offers[i]->shop;
    const bool fresh = std::ranges::find(row.shops, shop) == row.shops.end();
    if (!shop.empty() && fresh) row.shops.push_back(shop);
  }
  return row;
}

}  // namespace

std::vector<ShoppingRow> shopping_list(const Provisions& provisions) {
  std::vector<ShoppingRow> rows;
  for (const ItemCost& item : provisions.items()) {
    if (item.group != nullptr) rows.push_back(row_of(item, provisions));
  }
  return rows;
}

}  // namespace scalepan
