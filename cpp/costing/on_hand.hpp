// What is on hand of the items of a plan.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "costing/way_finder.hpp"

namespace scalepan {

/// The item that a row of a price book or a stock list belongs to. A name of several foods is
/// nobody's but its own.
[[nodiscard]] std::string item_key(const Catalog& catalog, const std::string& item,
                                   const PackText& pack);

using StockItems = std::vector<const StockItem*>;

class StockByItem {
 public:
  /// `stock` must outlive this. What had to be used before `day` is not usable; where the day is
  /// empty all is.
  StockByItem(const Catalog& catalog, const Stock& stock, std::string day);

  /// In the order of use. The item's notes tell what is past its day, what has a day where none is
  /// given to hold it against, and names on hand that are near the item's.
  [[nodiscard]] StockItems usable(const std::string& key, ItemPlan& item) const;

  /// What is on hand of the food that a close relative stands near: a line of that food's own may
  /// use it, so it is told in the item's notes and not counted.
  void note_relative(const std::string& key, ItemPlan& item) const;

 private:
  void note_near_names(ItemPlan& item) const;

  std::map<std::string, StockItems> items_;
  std::string day_;
};

/// One group a kind and stage of what is on hand, without offers.
[[nodiscard]] std::vector<OfferGroup> groups_on_hand(const StockItems& stock);

/// Gives every group of the item what is on hand; what has no way to a group is told in the notes.
void add_on_hand(ItemPlan& item, const StockItems& stock, const WayFinder& ways);

}  // namespace scalepan
