// What the cells of a costing hold beside figures: foods, recipes, offers and packs.
//
// Things made of the same facts, offers or packs cannot be told apart, so that a change that leaves
// them as they were runs nothing further.
#pragma once

#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "costing/provisions.hpp"
#include "sheet/value.hpp"

namespace scalepan {

/// A food, and the facts that lead from what a line needs to what is sold.
class FoodThing final : public Thing {
 public:
  FoodThing(std::string name, std::shared_ptr<const Catalog> catalog,
            std::vector<const Fact*> facts);

  [[nodiscard]] std::string text() const override { return name_; }
  [[nodiscard]] bool same_as(const Thing& other) const override;
  [[nodiscard]] const Catalog& catalog() const { return *catalog_; }
  [[nodiscard]] const std::shared_ptr<const Catalog>& shared_catalog() const { return catalog_; }
  [[nodiscard]] const std::vector<const Fact*>& facts() const { return facts_; }
  /// The first of that kind, and of that state or size where the detail is not empty. Throws
  /// `convert.no_fact`.
  [[nodiscard]] const Fact& fact(FactKind kind, Stage to, std::string_view detail) const;

 private:
  std::string name_;
  std::shared_ptr<const Catalog> catalog_;
  std::vector<const Fact*> facts_;
};

/// A recipe that can be asked for its amounts at other numbers of portions.
class RecipeThing final : public Thing {
 public:
  explicit RecipeThing(std::shared_ptr<const Recipe> recipe) : recipe_(std::move(recipe)) {}

  [[nodiscard]] std::string text() const override { return recipe_->name(); }
  [[nodiscard]] bool same_as(const Thing& other) const override;
  [[nodiscard]] const Recipe& written() const { return *recipe_; }
  [[nodiscard]] const std::shared_ptr<const Recipe>& recipe() const { return recipe_; }
  /// At its own size for its own number of portions. Throws what `Recipe::scaled` throws.
  [[nodiscard]] std::shared_ptr<const Recipe> at(const Rational& portions) const;

 private:
  std::shared_ptr<const Recipe> recipe_;
  mutable std::mutex mutex_;  // guards what was asked for last
  mutable std::shared_ptr<const Recipe> last_;
};

/// The offers of an item that state their content in one kind and stage, and what is on hand; none
/// where it cannot be priced.
class OffersThing final : public Thing {
 public:
  static constexpr std::size_t no_group = static_cast<std::size_t>(-1);

  OffersThing(std::shared_ptr<const Plan> plan, std::size_t item, std::size_t group);

  [[nodiscard]] std::string text() const override;
  [[nodiscard]] bool same_as(const Thing& other) const override;
  [[nodiscard]] std::vector<Why> parts() const override;

  [[nodiscard]] const std::shared_ptr<const Plan>& plan() const { return plan_; }
  [[nodiscard]] const ItemPlan& item() const { return plan_->items()[item_]; }
  /// Null where it cannot be priced.
  [[nodiscard]] const OfferGroup* group() const;
  /// Its place among the groups of the item.
  [[nodiscard]] std::size_t place() const { return group_; }

 private:
  std::shared_ptr<const Plan> plan_;
  std::size_t item_;
  std::size_t group_;
};

/// What is bought and taken from the store for a need.
class PacksThing final : public Thing {
 public:
  /// `kind` is the place among the needs that were asked for.
  PacksThing(std::shared_ptr<const Plan> plan, ItemCost bought, std::size_t kind);

  [[nodiscard]] std::string text() const override;
  [[nodiscard]] bool same_as(const Thing& other) const override;
  [[nodiscard]] std::vector<Why> parts() const override;

  [[nodiscard]] const ItemCost& bought() const { return bought_; }
  [[nodiscard]] std::size_t kind() const { return kind_; }
  /// Among so many arguments of a function, of which the packs are the first and an amount of each
  /// kind follows. Throws `cost.kind`.
  [[nodiscard]] std::size_t place_of_amount(std::size_t arguments) const;
  [[nodiscard]] Unit money() const { return plan_->money(); }

 private:
  std::shared_ptr<const Plan> plan_;  // holds what the item points to
  ItemCost bought_;
  std::size_t kind_;
};

}  // namespace scalepan
