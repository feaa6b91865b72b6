#include "costing/costing.hpp"

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
    : recipe_(recipe),
      provisions_(recipe_.food_lines(), terms_for(recipe_.food_lines(), recipe_), std::move(prices),
                  options) {}

Quantity Costing::cost(std::string_view which) const {
  return {cost_named(costs(), which), plan().money()};
}

Quantity Costing::per_portion(std::string_view which) const {
  const Unit portion = Unit::named("portion");
  return cost(which) / Quantity(recipe_.portions(), portion);
}

std::vector<std::string> Costing::to_check() const {
  std::vector<std::string> notes = lines_to_check(recipe_);
  std::ranges::move(provisions_.to_check(), std::back_inserter(notes));
  return notes;
}

std::vector<ItemCost> items_at(const Costing& costing, const Rational& portions) {
  return costing.provisions().items_for(costing.recipe().scaled(portions).food_lines());
}

Provisions bought_for(const Costing& costing, std::vector<Line> lines) {
  std::vector<LineTerms> terms = terms_for(lines, costing.recipe());
  return {std::move(lines), std::move(terms), costing.plan().prices(), costing.plan().options()};
}

}  // namespace scalepan
