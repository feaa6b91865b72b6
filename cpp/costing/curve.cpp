#include "costing/curve.hpp"

#include <utility>

#include "exact/error.hpp"
#include "exact/number_text.hpp"

namespace scalepan {

namespace {

bool same_packs(const ItemCost& a, const ItemCost& b) {
  return a.group == b.group && a.cover.counts == b.cover.counts;
}

std::vector<ItemCost> items_on_curve(const Costing& costing, const Rational& portions) {
  try {
    return items_at(costing, portions);
  } catch (const Error& error) {
    if (!tells_too_little(error)) throw;
    fail(error.code(), "at " + exact_text(portions) + " portions: " + error.message(), error.hint(),
         error.place());
  }
}

}  // namespace

void expect_by_portions(const Recipe& recipe) {
  const Size& size = recipe.size();
  if (size.served == size.portions && size.portions == recipe.serves() * size.factor) return;
  fail("cost.curve",
       recipe.name() +
           " is at a size that portions alone do not give: portions of another size, "
           "spare ones, or a serving loss",
       "ask for the curve of the recipe at portions as they are written");
}

Curve cost_curve(const Costing& costing, const std::vector<Rational>& portions) {
  expect_by_portions(costing.recipe());
  Curve curve;
  curve.currency = costing.plan().money().symbol();
  curve.unpriced = costing.unpriced();
  std::vector<ItemCost> before;
  for (const Rational& size : portions) {
    std::vector<ItemCost> now = items_on_curve(costing, size);
    Costs costs;
    for (const ItemCost& item : now) costs += item.costs;
    for (std::size_t i = 0; i < before.size(); ++i) {
      if (same_packs(before[i], now[i])) continue;
      curve.breakpoints.push_back({size, now[i].plan->item, before[i].packs(), now[i].packs()});
    }
    curve.portions.push_back(size);
    curve.till.push_back(costs.till);
    curve.used.push_back(costs.used);
    curve.thrown.push_back(costs.thrown);
    curve.borne.push_back(costs.borne());
    before = std::move(now);
  }
  return curve;
}

}  // namespace scalepan
