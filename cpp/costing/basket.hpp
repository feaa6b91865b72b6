// Baskets: several dishes, each at its own size, bought together.
//
// Needs of one item are pooled over the dishes before packs are chosen. Each dish is charged its
// share of every item by use, of what is thrown too, so that the dishes come to the basket exactly.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "costing/caution.hpp"
#include "costing/costing.hpp"
#include "costing/shopping.hpp"

namespace scalepan {

/// A recipe at its size, under a name that tells it from the other dishes.
struct Dish {
  PlacedText name;
  Recipe recipe;
};

/// A dish of a basket.
struct BasketDish {
  std::string name;
  std::string id;  // of its name; the ids of its lines begin with it: `pea_soup.onions`
  Costs costs;     // its lines' shares
  Costs unaided;   // the same without what is on hand, to compare with `apart`
  std::shared_ptr<const Costing> apart;  // the same dish bought alone, without what is on hand

  [[nodiscard]] const Recipe& recipe() const { return apart->recipe(); }
};

class Basket {
 public:
  /// Bases are made by each dish for itself. Throws `basket.no_dishes`; `basket.name` for a name
  /// without a letter or digit, and for two that make one id; and what `Plan` throws.
  Basket(const std::vector<Dish>& dishes, std::shared_ptr<const PriceBook> prices,
         CostOptions options = {});

  [[nodiscard]] const std::vector<BasketDish>& dishes() const { return dishes_; }
  /// The food lines of all dishes, bought together.
  [[nodiscard]] const Provisions& provisions() const { return provisions_; }
  [[nodiscard]] const Costs& costs() const { return provisions_.costs(); }
  [[nodiscard]] Unit money() const { return provisions_.plan().money(); }
  /// Which of the dishes a line of the provisions belongs to.
  [[nodiscard]] std::size_t dish_of(std::size_t line) const { return dish_of_[line]; }
  /// Bought together without what is on hand.
  [[nodiscard]] const Costs& unaided() const { return unaided_; }
  /// Of all dishes, each bought alone, without what is on hand.
  [[nodiscard]] const Costs& apart() const { return apart_; }

  /// What each dish and its lines have to check, what the provisions have, and which items are not
  /// bought in one lot.
  [[nodiscard]] std::vector<std::string> to_check() const;
  /// Those of the dishes; what several have in common is said once, with the lines of all.
  [[nodiscard]] std::vector<Caution> cautions() const;

 private:
  Basket(const std::vector<Dish>& dishes, const std::shared_ptr<const NamedPrices>& prices,
         const CostOptions& options);

  std::vector<BasketDish> dishes_;
  std::vector<std::size_t> dish_of_;  // one a line
  Provisions provisions_;
  Costs unaided_;
  Costs apart_;
};

/// How much of an item is for one dish.
struct DishNeed {
  std::string dish;  // its name
  Quantity need;     // in the packs' unit and stage
};

struct BasketRow : ShoppingRow {
  std::vector<DishNeed> dishes;
};

/// As the shopping list of a costing, with the dishes each item is for.
[[nodiscard]] std::vector<BasketRow> shopping_list(const Basket& basket);

}  // namespace scalepan
