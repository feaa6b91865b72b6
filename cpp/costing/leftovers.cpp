#include "costing/leftovers.hpp"

namespace scalepan {

std::vector<Leftover> leftovers(const Provisions& provisions) {
  const Unit money = provisions.plan().money();
  std::vector<Leftover> left;
  for (const ItemCost& item : provisions.items()) {
    for (const StockUse& use : item.stock) {
      if (use.left.coherent().is_zero()) continue;
      left.push_back({use.stock->item,
                      use.left,
                      Quantity::of_coherent(use.value_left, money),
                      false,
                      {},
                      use.stock->use_by});
    }
    if (item.group == nullptr || item.leftover.coherent().is_zero()) continue;
    const Rational value = item.cover.price * item.cover.leftover / item.cover.total;
    left.push_back({item.plan->item,
                    item.leftover,
                    Quantity::of_coherent(value, money),
                    true,
                    item.keeping,
                    {}});
  }
  return left;
}

}  // namespace scalepan
