// The live sheet of a costing: its figures as cells, and what was changed in them.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "costing/layout.hpp"
#include "sheet/sheet.hpp"

namespace scalepan {

class CostingSheet {
 public:
  CostingSheet(const Recipe& recipe, std::shared_ptr<const Provisions> provisions);

  [[nodiscard]] Sheet& sheet() { return *sheet_; }
  [[nodiscard]] const std::shared_ptr<Sheet>& shared() const { return sheet_; }
  /// `creme_fraiche.buy` of `crème_fraîche.buy`; a name that is no line's as it is.
  [[nodiscard]] std::string cell(std::string_view name) const;
  /// The line or base that a cell's name begins with, as the recipe has it; empty where it is none.
  [[nodiscard]] std::string owner(std::string_view cell) const;

  /// Throw what `Sheet::apply` throws.
  void override_figure(std::string_view name, Override with);
  void release(std::string_view name);
  /// Whether any figure may be another than the plan's.
  [[nodiscard]] bool is_changed() const;
  /// `leeks.edible is overridden with 0.5 EP/AP: own trim, 3 cases`.
  [[nodiscard]] std::vector<std::string> overrides() const;

  /// `portions is set to 60; it was 40`, `till is defined anew: 1 EUR`.
  [[nodiscard]] std::vector<std::string> redeclared() const;

  /// A figure; of one that is "at least", the lower bound. Throws what `Sheet::value` throws.
  [[nodiscard]] Quantity figure(std::string_view name) const;
  /// What is bought as the sheet stands.
  [[nodiscard]] Provisions now() const;

  /// At so many portions, which leaves no trace: figures of cells, and what is bought of items.
  [[nodiscard]] std::vector<CellValue> at(const Rational& portions,
                                          const std::vector<std::string>& names) const;
  /// Of an item of the plan: the cell with its packs.
  [[nodiscard]] const std::string& packs_cell(std::size_t item) const {
    return layout_.items[item].packs;
  }

 private:
  /// Where lines share packs, an override of one line's fact leaves those of the others.
  [[nodiscard]] std::string same_fact_of_others(std::string_view cell,
                                                const std::set<std::string>& overridden) const;
  [[nodiscard]] ItemCost item_now(std::size_t item) const;
  [[nodiscard]] LineCost line_now(const ItemCost& item, const LineWay& way,
                                  const std::string& suffix) const;

  std::shared_ptr<const Recipe> recipe_;
  std::shared_ptr<const Provisions> provisions_;
  Layout layout_;
  std::shared_ptr<Sheet> sheet_;
  mutable std::mutex mutex_;  // guards what follows
  std::set<std::string, std::less<>> overridden_;
  std::size_t own_changes_ = 0;
};

}  // namespace scalepan
