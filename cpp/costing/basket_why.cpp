#include "costing/basket_why.hpp"

#include <algorithm>

#include "exact/error.hpp"
#include "measure/figure.hpp"
#include "measure/nearest.hpp"

namespace scalepan {

namespace {

bool is_cost(std::string_view name) {
  return std::ranges::find(cost_names, name) != cost_names.end();
}

std::string money_figure(const Basket& basket, const Costs& costs, std::string_view which) {
  return figure_of(Quantity(cost_named(costs, which), basket.money()));
}

std::string cell_of(const std::string& id, std::string_view which) {
  return id + "." + std::string(which);
}

/// Before a total that so many lines are missing from.
std::string at_least(std::size_t unpriced) { return unpriced == 0 ? "" : "at least "; }

Why explain_total(const Basket& basket, std::string_view which) {
  Why why{
      std::string(which),
      at_least(basket.provisions().unpriced().size()) + money_figure(basket, basket.costs(), which),
      "sum over the dishes",
      "",
      {}};
  for (const BasketDish& dish : basket.dishes()) {
    why.parts.push_back(
        {cell_of(dish.id, which), money_figure(basket, dish.costs, which), "", "", {}});
  }
  return why;
}

Why explain_dish(const Basket& basket, std::size_t index, std::string_view which) {
  const BasketDish& dish = basket.dishes()[index];
  Why why{cell_of(dish.id, which),
          at_least(dish.apart->unpriced().size()) + money_figure(basket, dish.costs, which),
          "sum over its lines, each by its share of what is bought for all dishes",
          "",
          {}};
  for (const ItemCost& item : basket.provisions().items()) {
    for (const LineCost& line : item.lines) {
      if (basket.dish_of(line.line) != index) continue;
      why.parts.push_back({cell_of(basket.provisions().lines()[line.line].id, which),
                           money_figure(basket, line.costs, which),
                           "",
                           "",
                           {}});
    }
  }
  return why;
}

BoughtLine bought_line(const Basket& basket, std::size_t line) {
  return {basket.dishes()[basket.dish_of(line)].recipe(), basket.provisions(), line};
}

[[noreturn]] void fail_unknown(const Basket& basket, std::string_view cell) {
  const std::vector<std::string> names = cell_names(basket);
  const std::vector<std::string_view> known(names.begin(), names.end());
  const std::string near = nearest_hint(nearest_names(cell, known));
  std::string ids;
  for (const BasketDish& dish : basket.dishes()) {
    ids += (ids.empty() ? "" : ", ") + dish.id + ".till";
  }
  fail("why.unknown_cell", "no figure is called \"" + excerpt(cell) + "\"",
       near.empty()
           ? "figures: till, used, thrown, borne, those of each dish and of its lines: " + ids
           : near);
}

}  // namespace

std::vector<std::string> cell_names(const Basket& basket) {
  std::vector<std::string> names(cost_names.begin(), cost_names.end());
  for (const BasketDish& dish : basket.dishes()) {
    for (const std::string_view which : cost_names) names.push_back(cell_of(dish.id, which));
  }
  const std::vector<Line>& lines = basket.provisions().lines();
  for (std::size_t i = 0; i < lines.size(); ++i) {
    for (const std::string& name : figure_names(bought_line(basket, i))) {
      names.push_back(cell_of(lines[i].id, name));
    }
  }
  return names;
}

Why explain(const Basket& basket, std::string_view cell) {
  if (is_cost(cell)) return explain_total(basket, cell);
  const std::size_t dot = cell.rfind('.');
  if (dot == std::string_view::npos) fail_unknown(basket, cell);
  const std::string_view owner = cell.substr(0, dot);
  const std::string_view what = cell.substr(dot + 1);
  for (std::size_t i = 0; i < basket.dishes().size(); ++i) {
    if (basket.dishes()[i].id == owner && is_cost(what)) return explain_dish(basket, i, what);
  }
  const std::vector<Line>& lines = basket.provisions().lines();
  const auto line = std::ranges::find(lines, owner, &Line::id);
  if (line == lines.end()) fail_unknown(basket, cell);
  const BoughtLine bought = bought_line(basket, static_cast<std::size_t>(line - lines.begin()));
  if (!has_figure(bought, what)) fail_unknown(basket, cell);
  return explain_line(bought, what);
}

}  // namespace scalepan
