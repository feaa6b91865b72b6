#include "costing/provisions.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "exact/error.hpp"
#include "measure/told.hpp"

namespace scalepan {

namespace {

/// Needs are shown in the unit of the first pack.
Unit unit_of(const OfferGroup& group) { return group.contents.front().unit(); }

void share_among_lines(ItemCost& item, const std::vector<Line>& lines) {
  const Rational& need = item.need.coherent();
  for (const LineWay& way : item.group->ways) {
    const Rational part = lines[way.line].amount.coherent() * way.conversion.factor;
    const Rational share = need.is_zero() ? Rational(0) : part / need;
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
      notes.push_back(line_list(item.plan->lines, lines) + ": not priced: " + item.plan->problem);
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

Rational need_of(const OfferGroup& group, const std::vector<Line>& lines) {
  Rational need;
  for (const LineWay& way : group.ways) {
    need += lines[way.line].amount.coherent() * way.conversion.factor;
  }
  return need;
}

Keeping keeping_of(const OfferGroup& group, const Cover& cover) {
  Keeping keeping{true, std::nullopt};
  for (std::size_t i = 0; i < group.offers.size(); ++i) {
    if (cover.counts[i].is_zero()) continue;
    const Keeping& pack = group.offers[i]->keeping;
    keeping.keeps = keeping.keeps && pack.keeps;
    if (!pack.days) continue;
    keeping.days = keeping.days ? std::min(*keeping.days, *pack.days) : *pack.days;
  }
  if (!keeping.keeps) keeping.days.reset();
  return keeping;
}

Costs costs_of(const Cover& cover, const Rational& need, const Keeping& keeping) {
  Costs costs;
  costs.till = cover.price;
  costs.used = cover.total.is_zero() ? Rational(0) : cover.price * need / cover.total;
  const Rational rest = costs.till - costs.used;
  (keeping.keeps ? costs.closing : costs.thrown) = rest;
  return costs;
}

Costs& Costs::operator+=(const Costs& other) {
  till += other.till;
  used += other.used;
  thrown += other.thrown;
  closing += other.closing;
  return *this;
}

Costs operator*(const Costs& costs, const Rational& share) {
  return {costs.till * share, costs.used * share, costs.thrown * share, costs.closing * share};
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
  for (std::size_t i = 0; i < group.offers.size(); ++i) {
    if (!cover.counts[i].is_zero()) taken.emplace_back(cover.counts[i], group.offers[i]->pack);
  }
  return taken;
}

PacksTaken ItemCost::packs() const {
  return group == nullptr ? PacksTaken() : packs_of(*group, cover);
}

ItemCost cost_item(const ItemPlan& plan, const std::vector<Line>& lines, Unit money) {
  ItemCost best;
  best.plan = &plan;
  for (const OfferGroup& group : plan.groups) {
    const Rational need = need_of(group, lines);
    Cover cover = group.covers->at(need);
    if (best.group != nullptr && cover.price >= best.cover.price) continue;
    best.group = &group;
    best.need = Quantity::of_coherent(need, unit_of(group));
    best.cover = std::move(cover);
  }
  if (best.group == nullptr) return best;
  best.keeping = keeping_of(*best.group, best.cover);
  best.leftover = Quantity::of_coherent(best.cover.leftover, unit_of(*best.group));
  best.costs =
      costs_of(best.cover, best.need.coherent(), best.keeping) * (Rational(1) / money.ratio());
  share_among_lines(best, lines);
  return best;
}

Provisions::Provisions(std::vector<Line> lines, std::shared_ptr<const Catalog> catalog,
                       std::shared_ptr<const PriceBook> prices, CostOptions options)
    : lines_(std::move(lines)),
      plan_(std::make_shared<const Plan>(lines_, std::move(catalog), std::move(prices), options)),
      items_(items_for(lines_)) {
  for (const ItemCost& item : items_) {
    costs_ += item.costs;
    if (item.group != nullptr) continue;
    for (const std::size_t line : item.plan->lines) unpriced_.push_back(lines_[line].id);
  }
}

std::vector<ItemCost> Provisions::items_for(const std::vector<Line>& lines) const {
  std::vector<ItemCost> items;
  for (const ItemPlan& plan : plan_->items()) {
    items.push_back(cost_item(plan, lines, plan_->money()));
  }
  return items;
}

std::vector<std::string> Provisions::to_check() const {
  std::vector<std::string> notes;
  check_items(*this, notes);
  const bool priced = unpriced_.size() < lines_.size();
  if (priced && !plan_->currency_stated()) notes.emplace_back("the prices name no currency");
  return notes;
}

}  // namespace scalepan
