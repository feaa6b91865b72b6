#include "costing/targets.hpp"

#include <algorithm>

#include "costing/curve.hpp"
#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "measure/told.hpp"

namespace scalepan {

namespace {

class SpendSearch {
 public:
  SpendSearch(const Costing& costing, const Quantity& spend) : costing_(costing), spend_(spend) {
    expect_by_portions(costing.recipe());
    const Unit money = costing.plan().money();
    if (!(spend.dimension() == money.dimension())) {
      fail("cost.spend",
           "the spend is " + spend.text() + ", but the prices are in " + money.symbol(),
           "give the spend in " + money.symbol());
    }
    if (costing.unpriced().empty()) return;
    std::string ids;
    for (const std::string& id : costing.unpriced()) ids += (ids.empty() ? "" : ", ") + id;
    fail("cost.spend", "the till is not known: not priced: " + ids,
         "add price rows for them, or leave them out of the dish");
  }

  WithinSpend find() const {
    if (!allows(1)) {
      fail("cost.spend", "one portion takes " + tell_money(till(1)).text +
                             " at the till, more than the " + tell_money(spend_).text +
                             " to spend");
    }
    Rational within = 1;
    Rational beyond = first_beyond();
    while (beyond - within > Rational(1)) {
      const Rational middle = floor((within + beyond) * Rational(1, 2));
      (allows(middle) ? within : beyond) = middle;
    }
    return {within, till(within), till_beyond(within, beyond)};
  }

 private:
  [[nodiscard]] Quantity till(const Rational& portions) const {
    Rational sum;
    for (const ItemCost& item : items_at(costing_, portions)) sum += item.costs.till;
    return {sum, costing_.plan().money()};
  }
  /// Not where limits or what is on hand leave too little for so many.
  [[nodiscard]] bool allows(const Rational& portions) const {
    try {
      return till(portions).coherent() <= spend_.coherent();
    } catch (const Error& error) {
      if (!tells_too_little(error)) throw;
      return false;
    }
  }

  [[nodiscard]] Quantity till_beyond(const Rational& within, const Rational& beyond) const {
    try {
      return till(beyond);
    } catch (const Error& error) {
      if (!tells_too_little(error)) throw;
      fail("cost.spend",
           exact_text(within) + " portions take " + tell_money(till(within)).text +
               " at the till, within the " + tell_money(spend_).text +
               " to spend, but one more cannot be bought: " + error.message(),
           error.hint(), error.place());
    }
  }

  [[nodiscard]] Rational first_beyond() const {
    Rational portions = 2;
    while (allows(portions)) {
      portions *= Rational(2);
      if (portions <= Rational(most_portions_asked)) continue;
      fail("cost.spend",
           "the till of " + exact_text(Rational(most_portions_asked)) +
               " portions is still within " + tell_money(spend_).text,
           "lines that are fixed take no more packs in a larger batch");
    }
    return portions;
  }

  const Costing& costing_;
  const Quantity& spend_;
};

/// The item at amounts so much larger.
Costs costs_of_more(const Costing& costing, const ItemCost& item, const Rational& more) {
  std::vector<Line> lines = costing.recipe().food_lines();
  for (const std::size_t index : item.plan->lines) {
    lines[index].amount = lines[index].amount * (Rational(1) + more);
  }
  const ItemCost larger = cost_item(*item.plan, lines, costing.plan().money());
  expect_priced(larger);
  return larger.costs;
}

}  // namespace

WithinSpend most_portions(const Costing& costing, const Quantity& spend) {
  return SpendSearch(costing, spend).find();
}

std::vector<Driver> cost_drivers(const Costing& costing, const Rational& more) {
  if (more.sign() <= 0) {
    fail("cost.more", exact_text(more * Rational(100)) + " % more is no more",
         "give a share above zero, such as 10 %");
  }
  const Unit money = costing.plan().money();
  const Rational all = costing.costs().borne();
  std::vector<Driver> drivers;
  for (const ItemCost& item : costing.items()) {
    if (item.group == nullptr) continue;
    const Costs larger = costs_of_more(costing, item, more);
    Driver driver{item.plan->item,
                  {},
                  {item.costs.borne(), money},
                  all.is_zero() ? Rational(0) : item.costs.borne() / all,
                  {larger.till - item.costs.till, money},
                  {larger.borne() - item.costs.borne(), money}};
    for (const std::size_t line : item.plan->lines) {
      driver.lines.push_back(costing.recipe().food_lines()[line].id);
    }
    drivers.push_back(std::move(driver));
  }
  std::ranges::stable_sort(drivers, [](const Driver& a, const Driver& b) {
    return a.borne.coherent() > b.borne.coherent();
  });
  return drivers;
}

}  // namespace scalepan
