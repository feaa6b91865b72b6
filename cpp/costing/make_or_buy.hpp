// Make it or buy it ready: a base of a dish beside an item that would do for it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "costing/costing.hpp"

namespace scalepan {

/// The dish with the base made, and with as much of the item bought in place of it.
struct MakeOrBuy {
  std::string base;
  std::string item;
  Quantity amount;  // that the dish takes of it
  /// Shares by use of the lines that only the base needs. What the dish would save without them is
  /// another figure where packs are shared or not used up; the difference of the dishes is exact.
  Costs made;
  Costs bought;
  PacksTaken packs;   // of the item
  Quantity leftover;  // of them
  Costs dish_made;
  Costs dish_bought;
  std::vector<std::string> lines;            // ids of the base's own
  std::vector<std::string> unpriced_made;    // of them
  std::vector<std::string> unpriced_bought;  // the item, where it has no price
};

/// Bases that only this one takes from go with it. Throws `base.unknown`, `base.ready` where the
/// amount of the base is not known, where it shares a base of its own with other lines, and where
/// the item cannot be read, and what `Recipe::line_at_size` throws.
[[nodiscard]] MakeOrBuy make_or_buy(const Costing& costing, std::string_view base,
                                    std::string_view item);

}  // namespace scalepan
