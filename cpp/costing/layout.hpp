// A costing laid out on a sheet: every figure is a cell, and follows by a formula that can be read.
//
// - `portions`, `serves`: the size; `till`, `used`, `thrown`, `borne`: sums over the rows `lines`
// - `leeks.written`, `leeks.need`: the line, and its amount at the size
// - `leeks.food`, `leeks.edible` and the like: the facts that lead to what is sold
// - `leeks.buy`: the need in the unit and stage of the packs
// - `leeks.offers`, `leeks.packs`: what there is to buy, and what is bought of it
// - `leeks.till`, `.used`, `.thrown`, `.borne`, `.leftover`: what it costs, and what is left
//
// Lines of one food need packs together: the first has the offers and the packs (`leeks.in_all`),
// and each its share. An item sold in several kinds has a `buy` and `offers` for each of them
// (`carrots.buy_by_count`).
#pragma once

#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "costing/provisions.hpp"
#include "sheet/change.hpp"

namespace scalepan {

/// Where the sheet has what the plan has.
struct ItemCells {
  std::string packs;                  // the cell; of the first line where the item cannot be priced
  std::vector<std::string> suffixes;  // of `buy`, one a group of the item
};

struct Layout {
  std::vector<Change> changes;
  std::vector<ItemCells> items;                           // one an item of the plan
  std::map<std::string, std::string, std::less<>> names;  // by id of a line or base: in cell names
};

[[nodiscard]] Layout lay_out(const std::shared_ptr<const Recipe>& recipe,
                             const Provisions& provisions, std::shared_ptr<const Plan> plan);

}  // namespace scalepan
