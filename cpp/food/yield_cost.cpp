#include <algorithm>

#include "food/yield_test.hpp"

namespace scalepan {

namespace {

/// Prices are told for what a kitchen buys by: kg and L, not g and mL.
Unit handy_unit(Unit unit) {
  const Unit plain = unit.without_stages();
  if (plain == Unit::named("g")) return Unit::named("kg");
  if (plain == Unit::named("mL")) return Unit::named("L");
  return plain;
}

Quantity less_credit(const Quantity& money, const std::vector<TrialPart>& parts) {
  const auto credit = credit_of(parts);
  return credit ? money - *credit : money;
}

/// What a trial with a price adds to the cost at a stage; nothing where it did not get there.
std::optional<StageCost> cost_of(const YieldTrial& trial, Stage stage) {
  const auto& weight = trial.at(stage);
  if (!trial.cost || !weight) return std::nullopt;
  StageCost cost;
  cost.stage = stage;
  cost.trials = 1;
  cost.weight = *weight;
  cost.bought = *trial.bought;
  cost.paid = *trial.cost;
  cost.value = less_credit(*trial.cost, trial.cut);
  if (stage == Stage::cooked || stage == Stage::served) {
    const Rational part = trial.pan->coherent() / trial.edible->coherent();
    cost.bought = cost.bought * part;
    cost.paid = cost.paid * part;
    cost.value = cost.value * part;
  }
  if (stage == Stage::served) cost.value = less_credit(cost.value, trial.off);
  return cost;
}

void add(StageCost& sum, const StageCost& cost) {
  sum.trials += cost.trials;
  sum.weight = sum.weight + cost.weight;
  sum.bought = sum.bought + cost.bought;
  sum.paid = sum.paid + cost.paid;
  sum.value = sum.value + cost.value;
}

/// `USD/(lb EP)`.
Unit money_per(Unit money, Unit weight, Stage stage) {
  std::vector<Unit::Part> parts = money.parts();
  for (const auto& [unit, power] : weight.at(stage).parts()) parts.emplace_back(unit, -power);
  return Unit(std::move(parts));
}

}  // namespace

Quantity StageCost::per_unit_of(const Quantity& cost) const {
  const Quantity money = cost * Quantity(1, weight.unit());  // leaves the currency alone
  return cost.to(money_per(money.unit(), per, stage));
}

Quantity StageCost::price() const {
  return (paid / bought).to(money_per(paid.unit(), per, Stage::as_purchased));
}

Quantity StageCost::at_price(const Quantity& price) const {
  const Quantity staged =
      price.dimension().has_stages() ? price : price / Quantity(1, Unit().at(Stage::as_purchased));
  if (!(staged.dimension() == (paid / bought).dimension())) {
    const std::string own = this->price().unit().symbol();
    fail("yield.price", price.text() + " is no price of what was bought, which is in " + own,
         "a price is money per unit bought, such as 7.00 " + own);
  }
  if (price.coherent().sign() < 0)
    fail("yield.price", "the price " + price.text() + " is below zero");
  return per_unit_of(factor() * staged);
}

Quantity StageCost::portion_cost(const Quantity& size) const {
  return per_unit() * size_at_stage(size);
}

Quantity StageCost::portion_cost(const Quantity& size, const Quantity& price) const {
  return at_price(price) * size_at_stage(size);
}

Quantity StageCost::portion_factor(const Quantity& size) const {
  return (factor() * size_at_stage(size)).to(per.at(Stage::as_purchased));
}

Quantity StageCost::size_at_stage(const Quantity& size) const {
  const Quantity staged = size.stage() == Stage::none ? size.at(stage) : size.to(weight.unit());
  if (!(staged.dimension() == weight.dimension())) {
    fail_dimensions("quantity.convert", "cannot turn", size, weight);
  }
  if (staged.coherent().sign() <= 0) {
    fail("yield.portion", "a portion of " + size.text() + " is no portion",
         "write a size above zero, such as 5 oz");
  }
  return staged;
}

std::vector<StageCost> YieldTest::costs() const {
  std::vector<StageCost> costs;
  const auto priced =
      std::ranges::find_if(trials_, [](const auto& t) { return t.cost.has_value(); });
  if (priced == trials_.end()) return costs;
  const Unit per = priced->priced_per.value_or(handy_unit(priced->bought->unit()));
  for (const Stage stage : {Stage::edible, Stage::drained, Stage::cooked, Stage::served}) {
    std::optional<StageCost> sum;
    for (const YieldTrial& trial : trials_) {
      const auto cost = cost_of(trial, stage);
      if (!cost) continue;
      if (sum) {
        add(*sum, *cost);
      } else {
        sum = cost;
      }
    }
    if (!sum) continue;
    sum->per = per;
    costs.push_back(*sum);
  }
  return costs;
}

}  // namespace scalepan
