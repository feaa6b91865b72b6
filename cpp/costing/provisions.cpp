#include "costing/provisions.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "measure/told.hpp"

namespace scalepan {

namespace {

/// What is on hand goes first; at its value, pro rata.
class StockTaker {
 public:
  StockTaker(const OfferGroup& group, const Rational& need) : rest_(need) {
    for (const OnHand& held : group.on_hand) take(held, group.unit);
  }

  [[nodiscard]] const Rational& rest() const { return rest_; }  // of the need
  [[nodiscard]] const std::vector<StockUse>& uses() const { return uses_; }

 private:
  void take(const OnHand& held, Unit unit) {
    const Rational used = std::min(rest_, held.amount);
    const Rational value = held.value * used / held.amount;
    rest_ -= used;
    uses_.push_back({held.stock, Quantity::of_coherent(used, unit),
                     Quantity::of_coherent(held.amount - used, unit), value, held.value - value});
  }

  Rational rest_;
  std::vector<StockUse> uses_;
};

Costs costs_of(const std::vector<StockUse>& uses) {
  Costs costs;
  for (const StockUse& use : uses) {
    costs.used += use.value_used;
    costs.closing += use.value_left;
    costs.opening += use.value_used + use.value_left;
  }
  return costs;
}

Rational deposit_of(const OfferGroup& group, const Cover& cover) {
  Rational deposit;
  for (std::size_t i = 0; i < cover.counts.size(); ++i) {
    deposit += cover.counts[i] * group.offers[i]->deposit.coherent();
  }
  return deposit;
}

std::string too_little(const ItemPlan& plan, const OfferGroup& group, const Rational& rest) {
  return plan.problem + ", and " + tell(Quantity::of_coherent(rest, group.unit)).text +
         " more is needed than is on hand";
}

void share_among_lines(ItemCost& item, const std::vector<Line>& lines) {
  const Rational& need = item.need.coherent();
  for (const LineWay& way : item.group->ways) {
    const Rational part = lines[way.line].amount.coherent() * way.conversion.factor;
    // What is on hand of a need of nothing is the first line's to show.
    const Rational share = need.is_zero() ? Rational(item.lines.empty() ? 1 : 0) : part / need;
    item.lines.push_back(
        {way.line, Quantity::of_coherent(part, item.need.unit()), item.costs * share});
  }
}

std::string line_list(const std::vector<std::size_t>& indices, const std::vector<Line>& lines) {
  std::string list;
  for (const std::size_t index : indices) {
    list += (list.empty() ? "" : ", ") + lines[index].id;
  }
  return list;
}

void check_conventions(const ItemCost& item, const std::vector<Line>& lines,
                       std::vector<std::string>& notes) {
  for (const LineWay& way : item.group->ways) {
    for (const Step& step : way.conversion.steps) {
      if (step.fact->kind != FactKind::word) continue;
      const Quantity one(Rational(1), Unit::named("piece").at(Stage::as_purchased));
      notes.push_back(lines[way.line].id + ": a " + step.fact->size + " is taken as " +
                      tell(step.fact->value * one).text + ", which is a convention only [" +
                      step.fact->source + "]");
    }
  }
}

void check_items(const Provisions& provisions, std::vector<std::string>& notes) {
  const std::vector<Line>& lines = provisions.lines();
  for (const ItemCost& item : provisions.items()) {
    for (const std::string& note : item.plan->notes) {
      notes.push_back(line_list(item.plan->lines, lines) + ": " + note);
    }
    if (item.group == nullptr) {
      notes.push_back(line_list(item.plan->lines, lines) + ": not priced: " + item.problem);
      continue;
    }
    for (const LineWay& way : item.group->ways) {
      if (!way.share_assumed) continue;
      notes.push_back(lines[way.line].id +
                      ": no edible share (EP/AP) is known, so all of it is taken as edible");
    }
    check_conventions(item, lines, notes);
    if (item.keeping.days && !item.leftover.coherent().is_zero()) {
      notes.push_back(line_list(item.plan->lines, lines) + ": what is left keeps " +
                      text_of(item.keeping) + " and is counted as kept");
    }
  }
}

}  // namespace

Costs& Costs::operator+=(const Costs& other) {
  till += other.till;
  used += other.used;
  thrown += other.thrown;
  closing += other.closing;
  opening += other.opening;
  return *this;
}

Costs operator*(const Costs& costs, const Rational& share) {
  return {costs.till * share, costs.used * share, costs.thrown * share, costs.closing * share,
          costs.opening * share};
}

Rational cost_named(const Costs& costs, std::string_view which) {
  if (which == "till") return costs.till;
  if (which == "used") return costs.used;
  if (which == "thrown") return costs.thrown;
  if (which == "borne") return costs.borne();
  std::string all;
  for (const std::string_view name : cost_names) {
    all += (all.empty() ? "" : ", ") + std::string(name);
  }
  fail("cost.which", "no cost is called \"" + excerpt(which) + "\"", "there are: " + all);
}

PacksTaken packs_of(const OfferGroup& group, const Cover& cover) {
  PacksTaken taken;
  for (std::size_t i = 0; i < cover.counts.size(); ++i) {
    if (!cover.counts[i].is_zero()) taken.emplace_back(cover.counts[i], group.offers[i]->pack.text);
  }
  return taken;
}

PacksTaken ItemCost::packs() const {
  return group == nullptr ? PacksTaken() : packs_of(*group, cover);
}

std::vector<std::string> ItemCost::terms() const {
  std::vector<std::string> terms;
  if (group == nullptr) return terms;
  for (std::size_t i = 0; i < cover.bought.size(); ++i) {
    const WayToBuy& way = group->ways_to_buy[i];
    if (cover.bought[i].is_zero() || way.text.empty()) continue;
    terms.push_back(group->offers[way.purchase.row]->pack.text + ": " + way.text);
  }
  return terms;
}

Rational need_of(const OfferGroup& group, const std::vector<Line>& lines) {
  Rational need;
  for (const LineWay& way : group.ways) {
    need += lines[way.line].amount.coherent() * way.conversion.factor;
  }
  return need;
}

Rational to_buy_of(const OfferGroup& group, const Rational& need) {
  return StockTaker(group, need).rest();
}

Keeping keeping_of(const OfferGroup& group, const Cover& cover) {
  Keeping keeping{true, std::nullopt};
  for (std::size_t i = 0; i < cover.counts.size(); ++i) {
    if (cover.counts[i].is_zero()) continue;
    const Keeping& pack = group.offers[i]->keeping;
    keeping.keeps = keeping.keeps && pack.keeps;
    if (!pack.days) continue;
    keeping.days = keeping.days ? std::min(*keeping.days, *pack.days) : *pack.days;
  }
  if (!keeping.keeps) keeping.days.reset();
  return keeping;
}

Costs costs_of(const Cover& cover, const Rational& to_buy, const Keeping& keeping) {
  Costs costs;
  costs.till = cover.price;
  costs.used = cover.total.is_zero() ? Rational(0) : cover.price * to_buy / cover.total;
  const Rational rest = costs.till - costs.used;
  (keeping.keeps ? costs.closing : costs.thrown) = rest;
  return costs;
}

Costs stock_costs_of(const OfferGroup& group, const Rational& need) {
  return costs_of(StockTaker(group, need).uses());
}

namespace {

/// Whether limits leave too little to buy.
bool is_limited(const OfferGroup& group, const Rational& to_buy) {
  const auto most = group.covers ? group.covers->most() : std::nullopt;
  return most && to_buy > *most;
}

[[noreturn]] void fail_limited(const ItemPlan& plan, const OfferGroup& group,
                               const Rational& to_buy) {
  const auto told = [&](const Rational& amount) {
    return tell(Quantity::of_coherent(amount, group.unit)).text;
  };
  fail("cost.limit",
       "of " + plan.item + " at most " + told(*group.covers->most()) + " can be bought, but " +
           told(to_buy) + " is needed",
       "add rows of other packs or shops", group.offers.front()->place);
}

/// Nothing where what is on hand does not do and there are no offers.
std::optional<ItemCost> cost_by(const OfferGroup& group, const Rational& need) {
  const StockTaker stock(group, need);
  if (!group.covers && stock.rest().sign() > 0) return std::nullopt;
  ItemCost cost;
  cost.group = &group;
  cost.need = Quantity::of_coherent(need, group.unit);
  cost.from_stock = Quantity::of_coherent(need - stock.rest(), group.unit);
  cost.stock = stock.uses();
  if (group.covers) {
    cost.cover =
        located(group.offers.front()->place, {}, [&] { return group.covers->at(stock.rest()); });
  }
  return cost;
}

}  // namespace

ItemCost cheapest_item(const ItemPlan& plan, std::span<const GroupNeed> needs, Unit money) {
  ItemCost best;
  best.problem = plan.problem;
  const GroupNeed* limited = nullptr;
  for (const GroupNeed& wanted : needs) {
    const OfferGroup& group = *wanted.group;
    if (is_limited(group, to_buy_of(group, wanted.need))) {
      limited = &wanted;
      continue;
    }
    auto cost = cost_by(group, wanted.need);
    if (!cost) {
      // The first group leans on least.
      if (best.problem != plan.problem) continue;
      best.problem = too_little(plan, group, to_buy_of(group, wanted.need));
    } else if (best.group == nullptr || cost->cover.price < best.cover.price) {
      best = std::move(*cost);
    }
  }
  best.plan = &plan;
  if (best.group == nullptr && limited != nullptr) {
    fail_limited(plan, *limited->group, to_buy_of(*limited->group, limited->need));
  }
  if (best.group == nullptr) return best;
  const Rational scale = Rational(1) / money.ratio();
  best.keeping = keeping_of(*best.group, best.cover);
  best.leftover = Quantity::of_coherent(best.cover.leftover, best.group->unit);
  const Rational to_buy = best.need.coherent() - best.from_stock.coherent();
  best.costs = costs_of(best.cover, to_buy, best.keeping);
  best.costs += costs_of(best.stock);
  best.costs = best.costs * scale;
  best.deposit = deposit_of(*best.group, best.cover) * scale;
  return best;
}

ItemCost cost_item(const ItemPlan& plan, const std::vector<Line>& lines, Unit money) {
  std::vector<GroupNeed> needs;
  for (const OfferGroup& group : plan.groups) needs.push_back({&group, need_of(group, lines)});
  ItemCost item = cheapest_item(plan, needs, money);
  if (item.group != nullptr) share_among_lines(item, lines);
  return item;
}

void expect_priced(const ItemCost& item) {
  if (item.group != nullptr) return;
  fail("cost.stock", item.plan->item + " is not priced at this size: " + item.problem);
}

bool tells_too_little(const Error& error) {
  return error.code() == "cost.limit" || error.code() == "cost.stock";
}

Provisions::Provisions(std::vector<Line> lines, std::vector<LineTerms> terms,
                       std::shared_ptr<const NamedPrices> prices, CostOptions options)
    : lines_(std::move(lines)),
      plan_(std::make_shared<const Plan>(lines_, std::move(terms), std::move(prices), options)),
      items_(items_for(lines_)) {
  add_up();
}

void Provisions::add_up() {
  costs_ = {};
  unpriced_.clear();
  for (const ItemCost& item : items_) {
    costs_ += item.costs;
    if (item.group != nullptr) continue;
    for (const std::size_t line : item.plan->lines) unpriced_.push_back(lines_[line].id);
  }
}

Provisions Provisions::with_items(std::vector<ItemCost> items) const {
  Provisions others = *this;
  others.items_ = std::move(items);
  others.add_up();
  return others;
}

std::vector<ItemCost> Provisions::items_for(const std::vector<Line>& lines) const {
  std::vector<ItemCost> items;
  for (const ItemPlan& plan : plan_->items()) {
    items.push_back(cost_item(plan, lines, plan_->money()));
    const bool was_priced = !items_.empty() && items_[items.size() - 1].group != nullptr;
    if (was_priced) expect_priced(items.back());
  }
  return items;
}

Quantity Provisions::deposit() const {
  Rational sum;
  for (const ItemCost& item : items_) sum += item.deposit;
  return {sum, plan_->money()};
}

std::vector<std::string> Provisions::to_check() const {
  std::vector<std::string> notes;
  check_items(*this, notes);
  const bool priced = unpriced_.size() < lines_.size();
  if (priced && !plan_->currency_stated()) notes.emplace_back("the prices name no currency");
  return notes;
}

}  // namespace scalepan
