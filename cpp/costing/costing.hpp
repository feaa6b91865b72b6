// Costings: a sized recipe with prices.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "costing/provisions.hpp"

namespace scalepan {

class Costing {
 public:
  /// At the recipe's size. Throws what `Plan` throws.
  Costing(const Recipe& recipe, std::shared_ptr<const PriceBook> prices, CostOptions options = {});
  /// The same by prices that others share; the recipe's catalogue is one of theirs.
  Costing(const Recipe& recipe, std::shared_ptr<const NamedPrices> prices, CostOptions options);

  [[nodiscard]] const Recipe& recipe() const { return recipe_; }
  [[nodiscard]] const Provisions& provisions() const { return provisions_; }
  [[nodiscard]] const Plan& plan() const { return provisions_.plan(); }
  [[nodiscard]] const std::vector<ItemCost>& items() const { return provisions_.items(); }
  [[nodiscard]] const Costs& costs() const { return provisions_.costs(); }
  [[nodiscard]] const std::vector<std::string>& unpriced() const { return provisions_.unpriced(); }

  /// One of the four, in money. Throws `cost.which`.
  [[nodiscard]] Quantity cost(std::string_view which) const;
  /// The same in money a portion.
  [[nodiscard]] Quantity per_portion(std::string_view which) const;
  /// What the reader must look at: `lines_to_check`, and what the provisions have to check.
  [[nodiscard]] std::vector<std::string> to_check() const;

 private:
  Recipe recipe_;
  Provisions provisions_;
};

/// The items of a costing at another number of portions.
[[nodiscard]] std::vector<ItemCost> items_at(const Costing& costing, const Rational& portions);

/// Other lines bought as those of the costing are: by its catalogue, from its prices.
[[nodiscard]] Provisions bought_for(const Costing& costing, std::vector<Line> lines);

}  // namespace scalepan
