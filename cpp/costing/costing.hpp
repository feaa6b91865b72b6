// Costings: a sized recipe with prices.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "costing/purchase.hpp"

namespace scalepan {

class Costing {
 public:
  /// At the recipe's size. Throws what `Plan` throws.
  Costing(const Recipe& recipe, std::shared_ptr<const PriceBook> prices, CostOptions options = {});

  [[nodiscard]] const Recipe& recipe() const { return recipe_; }
  [[nodiscard]] const Purchase& purchase() const { return purchase_; }
  [[nodiscard]] const Plan& plan() const { return purchase_.plan(); }
  [[nodiscard]] const std::vector<ItemCost>& items() const { return purchase_.items(); }
  [[nodiscard]] const Costs& costs() const { return purchase_.costs(); }
  [[nodiscard]] const std::vector<std::string>& unpriced() const { return purchase_.unpriced(); }

  /// One of the four, in money. Throws `cost.which`.
  [[nodiscard]] Quantity cost(std::string_view which) const;
  /// The same in money a portion.
  [[nodiscard]] Quantity per_portion(std::string_view which) const;
  /// What the reader must look at: `lines_to_check`, and what the purchase has to check.
  [[nodiscard]] std::vector<std::string> to_check() const;

 private:
  Recipe recipe_;
  Purchase purchase_;
};

/// The items of a costing at another number of portions.
[[nodiscard]] std::vector<ItemCost> items_at(const Costing& costing, const Rational& portions);

}  // namespace scalepan
