// Costings: a sized recipe with prices. Four costs, never mixed:
//
//   till    whole packs paid for today
//   used    the part of them the dish consumes, pro rata over the packs bought
//   thrown  leftover that will not keep
//   borne   used + thrown, what the dish really costs
//
// Exactly, always: opening stock + till = used + thrown + closing stock.
#pragma once

#include <array>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "costing/plan.hpp"
#include "exact/error.hpp"
#include "packs/priced_cover.hpp"

namespace scalepan {

/// The four costs and what stood and stays in the store, all in one money unit.
struct Costs {
  Rational till;
  Rational used;
  Rational thrown;
  Rational closing;
  Rational opening;  // what was on hand

  [[nodiscard]] Rational borne() const { return used + thrown; }
  Costs& operator+=(const Costs& other);
  friend Costs operator*(const Costs& costs, const Rational& share);
};

inline constexpr std::array<std::string_view, 4> cost_names{"till", "used", "thrown", "borne"};

/// The four by name: `till`, `used`, `thrown`, `borne`. Throws `cost.which`.
[[nodiscard]] Rational cost_named(const Costs& costs, std::string_view which);

/// One line's share of its item, by use.
struct LineCost {
  std::size_t line = 0;
  Quantity bought_as;  // its need in the packs' unit and stage
  Costs costs;
};

/// What is taken of one amount on hand, and what stays of it.
struct StockUse {
  const StockItem* stock = nullptr;
  Quantity used;
  Quantity left;
  Rational value_used;
  Rational value_left;
};

/// What is bought of one item.
struct ItemCost {
  const ItemPlan* plan = nullptr;
  const OfferGroup* group = nullptr;  // null where it cannot be priced
  std::string problem;                // why it cannot
  Quantity need;
  Quantity from_stock;  // the part of the need that is on hand
  std::vector<StockUse> stock;
  Cover cover;  // of the rest of the need; one count an offer of the group
  Quantity leftover;
  Keeping keeping;  // of the leftover
  Costs costs;
  Rational deposit;  // paid besides, and given back
  std::vector<LineCost> lines;

  /// In the order of the price book; none where the item is not priced.
  [[nodiscard]] PacksTaken packs() const;
  /// `3 for 4.50`, of each offer bought on terms.
  [[nodiscard]] std::vector<std::string> terms() const;
};

/// Lines of foods bought together: their needs are pooled by item before packs are chosen.
class Provisions {
 public:
  /// One entry of `terms` a line. Throws what `Plan` throws.
  Provisions(std::vector<Line> lines, std::vector<LineTerms> terms,
             std::shared_ptr<const NamedPrices> prices, CostOptions options);

  [[nodiscard]] const std::vector<Line>& lines() const { return lines_; }
  [[nodiscard]] const Plan& plan() const { return *plan_; }
  [[nodiscard]] std::shared_ptr<const Plan> shared_plan() const { return plan_; }
  [[nodiscard]] const std::vector<ItemCost>& items() const { return items_; }
  [[nodiscard]] const Costs& costs() const { return costs_; }
  /// Paid at the till besides, for what is given back.
  [[nodiscard]] Quantity deposit() const;
  /// Ids of the lines without a price; where there are any, each total is "at least".
  [[nodiscard]] const std::vector<std::string>& unpriced() const { return unpriced_; }
  /// The same items bought for the lines at other amounts. Throws `cost.stock` for an item that was
  /// all on hand and is so no more, and `cost.limit`.
  [[nodiscard]] std::vector<ItemCost> items_for(const std::vector<Line>& lines) const;
  /// The same lines and plan with other items, one an item of the plan.
  [[nodiscard]] Provisions with_items(std::vector<ItemCost> items) const;
  /// Assumed shares, conventions, rows left out, missing prices, what is counted as kept.
  [[nodiscard]] std::vector<std::string> to_check() const;

 private:
  void add_up();

  std::vector<Line> lines_;
  std::shared_ptr<const Plan> plan_;
  std::vector<ItemCost> items_;
  Costs costs_;
  std::vector<std::string> unpriced_;
};

/// What the lines at their amounts need of a group, in the packs' coherent unit.
[[nodiscard]] Rational need_of(const OfferGroup& group, const std::vector<Line>& lines);
/// What is left of a need after all that is on hand.
[[nodiscard]] Rational to_buy_of(const OfferGroup& group, const Rational& need);
/// In the order of the price book.
[[nodiscard]] PacksTaken packs_of(const OfferGroup& group, const Cover& cover);
/// Of what a cover leaves: it keeps only where every pack bought keeps, and no longer than the
/// shortest.
[[nodiscard]] Keeping keeping_of(const OfferGroup& group, const Cover& cover);
/// Of a cover that meets what is to buy, in coherent money.
[[nodiscard]] Costs costs_of(const Cover& cover, const Rational& to_buy, const Keeping& keeping);
/// Of what is on hand and goes into the need, in coherent money.
[[nodiscard]] Costs stock_costs_of(const OfferGroup& group, const Rational& need);

/// A need, in the coherent unit of a group's packs.
struct GroupNeed {
  const OfferGroup* group = nullptr;
  Rational need;
};

/// The cheapest of the groups, the first of those that cost alike; no lines share it as yet.
/// Without a group where the item cannot be priced. Throws `cost.limit`.
[[nodiscard]] ItemCost cheapest_item(const ItemPlan& plan, std::span<const GroupNeed> needs,
                                     Unit money);
/// The cheapest way to buy one item for the lines at their amounts. Throws `cost.limit`.
[[nodiscard]] ItemCost cost_item(const ItemPlan& plan, const std::vector<Line>& lines, Unit money);

/// For an item that is priced at another size. Throws `cost.stock` where it is so no more.
void expect_priced(const ItemCost& item);

/// Whether the error says that limits or what is on hand leave too little for a size.
[[nodiscard]] bool tells_too_little(const Error& error);

}  // namespace scalepan
