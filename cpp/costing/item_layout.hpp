// The cells of what is bought, from the facts of a line to its costs.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "costing/cell_ids.hpp"
#include "costing/layout.hpp"

namespace scalepan {

class ItemLayout {
 public:
  ItemLayout(const Provisions& provisions, std::shared_ptr<const Plan> plan, CellIds& ids,
             Layout& layout)
      : provisions_(provisions), plan_(std::move(plan)), ids_(ids), layout_(layout) {}

  void lay_out();

 private:
  /// The groups of an item, the one that is bought first, and what their cells end in.
  struct Kinds {
    std::size_t item;
    std::vector<std::size_t> groups;
    std::vector<std::string> suffixes;  // one a group of the item
  };

  void lay_out_item(std::size_t index);
  void lay_out_unpriced(std::size_t index);
  [[nodiscard]] Kinds kinds_of(std::size_t index) const;
  /// Cells of the facts of a line, by fact; null is the share that was assumed.
  void lay_out_facts(const Line& line, const Kinds& kinds);
  void lay_out_buy(std::size_t line, const Kinds& kinds);
  void put_offers(const std::string& name, std::size_t item, std::size_t group, Unit unit);
  void lay_out_packs(const std::string& first, const Kinds& kinds, bool pooled);
  void lay_out_share(std::size_t line, const std::string& first, const Kinds& kinds);
  void put_row(const std::string& row, const std::string& first, bool pooled, bool from_stock);
  void define(std::string name, std::string formula);
  [[nodiscard]] const ItemPlan& plan(std::size_t item) const { return plan_->items()[item]; }
  [[nodiscard]] const std::string& name_of_line(std::size_t line) const {
    return ids_.name(provisions_.lines()[line].id);
  }

  const Provisions& provisions_;
  std::shared_ptr<const Plan> plan_;
  CellIds& ids_;
  Layout& layout_;
  std::vector<std::pair<const Fact*, std::string>> facts_;  // of the line at hand: their cells
};

}  // namespace scalepan
