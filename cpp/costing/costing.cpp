#include "costing/costing.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "costing/recipe_checks.hpp"

namespace scalepan {

namespace {

/// All by the recipe's catalogue, in one pool.
std::vector<LineTerms> terms_for(const std::vector<Line>& lines, const Recipe& recipe) {
  return std::vector<LineTerms>(lines.size(), LineTerms{recipe.shared_catalog()});
}

}  // namespace

Costing::Costing(const Recipe& recipe, std::shared_ptr<const PriceBook> prices, CostOptions options)
    : Costing(recipe,
              std::make_shared<const NamedPrices>(std::move(prices),
                                                  std::vector{recipe.shared_catalog()}),
              options) {}

Costing::Costing(const Recipe& recipe, std::shared_ptr<const NamedPrices> prices,
                 CostOptions options)
    : recipe_(std::make_shared<const Recipe>(recipe)),
      provisions_(std::make_shared<const Provisions>(recipe_->food_lines(),
                                                     terms_for(recipe_->food_lines(), *recipe_),
                                                     std::move(prices), std::move(options))) {}

Quantity Costing::cost(std::string_view which) const {
  const Rational by_plan = cost_named(costs(), which);
  return shows_sheet() ? cells().figure(which) : Quantity(by_plan, plan().money());
}

Quantity Costing::per_portion(std::string_view which) const {
  if (shows_sheet()) {
    static_cast<void>(cost_named(costs(), which));
    return cells().figure("per_portion." + std::string(which));
  }
  const Unit portion = Unit::named("portion");
  return cost(which) / Quantity(recipe_->portions(), portion);
}

std::shared_ptr<const Provisions> Costing::now() const {
  if (!shows_sheet()) return provisions_;
  return std::make_shared<const Provisions>(cells().now());
}

std::vector<std::string> Costing::to_check() const {
  std::vector<std::string> notes;
  if (shows_sheet()) {
    notes = cells().overrides();
    std::ranges::move(cells().redeclared(), std::back_inserter(notes));
  }
  std::ranges::move(lines_to_check(*recipe_), std::back_inserter(notes));
  std::ranges::move(now()->to_check(), std::back_inserter(notes));
  return notes;
}

Recipe Costing::recipe_now() const {
  if (!is_changed()) return *recipe_;
  const Rational portions = cells().figure("portions").value();
  return portions == recipe_->portions() ? *recipe_ : recipe_->scaled(portions);
}

CostingSheet& Costing::cells() const {
  const std::lock_guard lock(live_->mutex);
  if (live_->cells == nullptr) {
    live_->cells = std::make_unique<CostingSheet>(*recipe_, provisions_);
  }
  return *live_->cells;
}

bool Costing::shows_sheet() const {
  const std::lock_guard lock(live_->mutex);
  return live_->is_shown;
}

std::shared_ptr<Sheet> Costing::sheet() const {
  CostingSheet& made = cells();
  const std::lock_guard lock(live_->mutex);
  live_->is_shown = true;
  return made.shared();
}

void Costing::override_figure(std::string_view name, Override with) const {
  cells().override_figure(name, std::move(with));
  static_cast<void>(sheet());
}

void Costing::release(std::string_view name) const { cells().release(name); }

bool Costing::is_changed() const { return shows_sheet() && cells().is_changed(); }

void Costing::expect_unchanged(std::string_view what) const {
  if (!is_changed()) return;
  const std::vector<std::string> overrides = cells().overrides();
  fail("cost.overridden",
       std::string(what) +
           " go by the recipe and the prices, but figures of this costing are changed" +
           (overrides.empty() ? "" : ": " + overrides.front()),
       "release them, or ask another costing");
}

std::vector<ItemCost> items_at(const Costing& costing, const Rational& portions) {
  return costing.provisions().items_for(costing.recipe().scaled(portions).food_lines());
}

Provisions bought_for(const Costing& costing, std::vector<Line> lines) {
  std::vector<LineTerms> terms = terms_for(lines, costing.recipe());
  return {std::move(lines), std::move(terms), costing.plan().prices(), costing.plan().options()};
}

}  // namespace scalepan
