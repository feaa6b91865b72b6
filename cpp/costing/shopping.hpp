// The shopping list of a costing: one row an item that is bought.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "costing/provisions.hpp"

namespace scalepan {

struct ShoppingRow {
  std::string item;
  std::vector<std::string> lines;  // ids
  Quantity need;                   // in the packs' unit and stage
  Quantity from_stock;             // the part of the need that is on hand
  PacksTaken packs;
  std::vector<std::string> terms;  // `400 g tin: 3 for 2.40`
  Quantity price;                  // what the till takes
  Quantity deposit;                // paid besides, and given back
  Quantity leftover;
  Keeping keeping;                 // of the leftover
  std::vector<std::string> shops;  // where rows name them
};

/// In the order of the lines; items without a price are not on it.
[[nodiscard]] std::vector<ShoppingRow> shopping_list(const Provisions& provisions);

}  // namespace scalepan
