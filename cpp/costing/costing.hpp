// Costings: a sized recipe with prices.
#pragma once

#include <memory>
#include <mutex>
#include <string>
#include <string_view>
#include <vector>

#include "costing/costing_sheet.hpp"
#include "costing/provisions.hpp"

namespace scalepan {

/// Its figures are the plan's, until its sheet is handed out or a figure is overridden: from then
/// on they are the sheet's. Both agree where nothing is changed. Copies share the sheet.
class Costing {
 public:
  /// At the recipe's size. Throws what `Plan` throws.
  Costing(const Recipe& recipe, std::shared_ptr<const PriceBook> prices, CostOptions options = {});
  /// The same by prices that others share; the recipe's catalogue is one of theirs.
  Costing(const Recipe& recipe, std::shared_ptr<const NamedPrices> prices, CostOptions options);

  [[nodiscard]] const Recipe& recipe() const { return *recipe_; }
  /// At the portions that its sheet has now.
  [[nodiscard]] Recipe recipe_now() const;
  /// By the plan, whatever is overridden.
  [[nodiscard]] const Provisions& provisions() const { return *provisions_; }
  [[nodiscard]] const Plan& plan() const { return provisions_->plan(); }
  [[nodiscard]] const std::vector<ItemCost>& items() const { return provisions_->items(); }
  [[nodiscard]] const Costs& costs() const { return provisions_->costs(); }
  [[nodiscard]] const std::vector<std::string>& unpriced() const { return provisions_->unpriced(); }

  /// One of the four, in money. Throws `cost.which`, and what its cell holds.
  [[nodiscard]] Quantity cost(std::string_view which) const;
  /// The same in money a portion.
  [[nodiscard]] Quantity per_portion(std::string_view which) const;
  /// What is bought, overrides heeded.
  [[nodiscard]] std::shared_ptr<const Provisions> now() const;
  /// What the reader must look at: overrides, `lines_to_check`, what the provisions have to check.
  [[nodiscard]] std::vector<std::string> to_check() const;

  /// Made when first asked for, which changes no figure.
  [[nodiscard]] CostingSheet& cells() const;
  /// The live sheet, to be read and changed.
  [[nodiscard]] std::shared_ptr<Sheet> sheet() const;
  /// Puts a measured value in the place of a figure. Throws what `Sheet::apply` throws.
  void override_figure(std::string_view name, Override with) const;
  /// Throws what `Sheet::apply` throws.
  void release(std::string_view name) const;
  /// Whether any figure may be another than the plan's.
  [[nodiscard]] bool is_changed() const;
  /// For what goes by the plan alone. Throws `cost.overridden` where that is not what is shown.
  void expect_unchanged(std::string_view what) const;

 private:
  /// Shared by copies.
  struct Live {
    std::mutex mutex;
    std::unique_ptr<CostingSheet> cells;
    bool is_shown = false;
  };

  [[nodiscard]] bool shows_sheet() const;

  std::shared_ptr<const Recipe> recipe_;
  std::shared_ptr<const Provisions> provisions_;
  std::shared_ptr<Live> live_ = std::make_shared<Live>();
};

/// The items of a costing at another number of portions, by the plan.
[[nodiscard]] std::vector<ItemCost> items_at(const Costing& costing, const Rational& portions);

/// Other lines bought as those of the costing are: by its catalogue, from its prices.
[[nodiscard]] Provisions bought_for(const Costing& costing, std::vector<Line> lines);

}  // namespace scalepan
