// Pack prices: the price at which another pack of an item would become the better buy.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "costing/provisions.hpp"

namespace scalepan {

/// One pack of an item, beside all others the item can be bought in.
struct PackPrice {
  std::string pack;
  std::string shop;
  Quantity price;      // now
  bool taken = false;  // among the packs to buy now

  /// Whether no other pack can meet the need without it.
  bool only = false;
  /// The highest price at which the cheapest packs for the need hold it; nothing where it is the
  /// only way, or is in none even if it costs nothing.
  std::optional<Quantity> worth;
  /// Whether it is taken at just that price, where others cost the same: by the rules for ties,
  /// least left over, then fewest packs, then the earlier row.
  bool taken_at_worth = false;
  /// The price at which it costs as much by weight or number as the best other pack of its kind;
  /// nothing where there is none.
  std::optional<Quantity> by_size;
};

/// All packs that meet the need of an item, in the order of the price book. The item goes by its
/// name or by one of its lines. Throws `cost.item` for another name, and for one that has no price
/// or no need.
[[nodiscard]] std::vector<PackPrice> pack_prices(const Provisions& provisions,
                                                 std::string_view item);

}  // namespace scalepan
