#include "costing/targets.hpp"

#include <algorithm>
#include <utility>

#include "costing/curve.hpp"
#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "measure/told.hpp"

namespace scalepan {

namespace {

void expect_every_price(const Costing& costing) {
  if (costing.unpriced().empty()) return;
  std::string ids;
  for (const std::string& id : costing.unpriced()) ids += (ids.empty() ? "" : ", ") + id;
  fail("cost.spend", "the till is not known: not priced: " + ids,
       "add price rows for them, or leave them out of the dish");
}

void expect_money(const Costing& costing, const Quantity& spend) {
  const Unit money = costing.plan().money();
  if (spend.dimension() == money.dimension()) return;
  fail("cost.spend", "the spend is " + spend.text() + ", but the prices are in " + money.symbol(),
       "give the spend in " + money.symbol());
}

class SpendSearch {
 public:
  explicit SpendSearch(const Costing& costing) : costing_(costing) {
    expect_by_portions(costing.recipe());
  }

  [[nodiscard]] Quantity till(const Rational& portions) const {
    Rational sum;
    for (const ItemCost& item : items_at(costing_, portions)) sum += item.costs.till;
    return {sum, costing_.plan().money()};
  }
  /// Not where limits or what is on hand leave too little for so many.
  [[nodiscard]] bool allows(const Quantity& spend, const Rational& portions) const {
    try {
      return till(portions).coherent() <= spend.coherent();
    } catch (const Error& error) {
      if (!tells_too_little(error)) throw;
      return false;
    }
  }

  [[nodiscard]] Quantity till_beyond(const Quantity& spend, const Rational& within,
                                     const Rational& beyond) const {
    try {
      return till(beyond);
    } catch (const Error& error) {
      if (!tells_too_little(error)) throw;
      fail("cost.spend",
           exact_text(within) + " portions take " + tell_money(till(within)).text +
               " at the till, within the " + tell_money(spend).text +
               " to spend, but one more cannot be bought: " + error.message(),
           error.hint(), error.place());
    }
  }

  /// None where so many cannot be bought.
  [[nodiscard]] std::optional<Quantity> till_if_any(const Rational& portions) const {
    try {
      return till(portions);
    } catch (const Error& error) {
      if (!tells_too_little(error)) throw;
      return std::nullopt;
    }
  }

  /// The most portions within a spend that allows so many, and one more where that takes more.
  [[nodiscard]] std::pair<Rational, std::optional<Rational>> from(Rational within,
                                                                  const Quantity& spend) const {
    const Rational most(most_portions_asked);
    Rational beyond = within;
    do {
      if (beyond == most) return {most, std::nullopt};
      within = beyond;
      beyond = std::min(beyond * Rational(2), most);
    } while (allows(spend, beyond));
    while (beyond - within > Rational(1)) {
      const Rational middle = floor((within + beyond) * Rational(1, 2));
      (allows(spend, middle) ? within : beyond) = middle;
    }
    return {within, beyond};
  }

 private:
  const Costing& costing_;
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
  const SpendSearch search(costing);
  expect_money(costing, spend);
  expect_every_price(costing);
  if (!search.allows(spend, 1)) {
    fail("cost.spend", "one portion takes " + tell_money(search.till(1)).text +
                           " at the till, more than the " + tell_money(spend).text + " to spend");
  }
  const auto [within, beyond] = search.from(1, spend);
  if (!beyond) {
    fail(
        "cost.spend",
        "the till of " + exact_text(within) + " portions is still within " + tell_money(spend).text,
        "lines that are fixed take no more packs in a larger batch");
  }
  return {within, search.till(within), search.till_beyond(spend, within, *beyond)};
}

LeastSpend least_spend(const Costing& costing, const Rational& portions) {
  const SpendSearch search(costing);
  expect_every_price(costing);
  if (!portions.is_integer() || portions < Rational(1) ||
      portions > Rational(most_portions_asked)) {
    fail("cost.portions", "the least spend is asked for " + exact_text(portions) + " portions",
         "give a whole number from 1 to " + std::to_string(most_portions_asked));
  }
  const Quantity spend = search.till(portions);
  const auto [within, beyond] = search.from(portions, spend);
  LeastSpend least{portions, spend, within, std::nullopt};
  if (beyond) least.till_next = search.till_if_any(*beyond);
  return least;
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
