#include "costing/costing_sheet.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <utility>
#include <variant>

#include "costing/kitchen_functions.hpp"
#include "costing/kitchen_things.hpp"
#include "costing/possible_figures.hpp"
#include "sheet/cell_text.hpp"

namespace scalepan {

namespace {

/// What a line's cells call the facts of its food.
constexpr std::array<std::string_view, 5> facts{".edible", ".cooked", ".drained", ".density",
                                                ".piece_weight"};

Quantity lower_bound(const CellValue& value) {
  const auto* interval = std::get_if<Interval>(&value.value);
  const Rational& number = interval == nullptr ? std::get<Rational>(value.value) : interval->low;
  return Quantity::of_coherent(number, value.type.shown);
}

/// Why an item is not priced, without the words that name it.
std::string problem_of(const ItemPlan& plan, const Error& error) {
  if (plan.groups.empty()) return plan.problem;
  const std::string named = plan.item + " is not priced at this size: ";
  const std::string& message = error.message();
  return message.starts_with(named) ? message.substr(named.size()) : message;
}

const ItemCost& bought_in(const CellValue& value) {
  return dynamic_cast<const PacksThing&>(*std::get<ThingPointer>(value.value)).bought();
}

/// Of the cell that a change declares; empty where it declares none.
std::string name_of(const Change& change) {
  if (const auto* set = std::get_if<Set>(&change)) return set->name;
  const auto* define = std::get_if<Define>(&change);
  return define == nullptr ? std::string() : define->name;
}

/// Empty where the two declare the same.
std::string redeclared_text(const Change& now, const Change& before) {
  const auto* set = std::get_if<Set>(&now);
  const auto* was = std::get_if<Set>(&before);
  if (set != nullptr && was != nullptr) {
    if (set->value == was->value) return {};
    return set->name + " is set to " + figure_of(set->value) + "; it was " + figure_of(was->value);
  }
  const auto* define = std::get_if<Define>(&now);
  const auto* old = std::get_if<Define>(&before);
  if (define == nullptr) return set->name + " is set to " + figure_of(set->value);
  if (old != nullptr && old->formula == define->formula) return {};
  return define->name + " is defined anew: " + define->formula;
}

}  // namespace

CostingSheet::CostingSheet(const Recipe& recipe, std::shared_ptr<const Provisions> provisions)
    : recipe_(std::make_shared<const Recipe>(recipe)),
      provisions_(std::move(provisions)),
      sheet_(std::make_shared<Sheet>(kitchen_functions(), &expect_possible)) {
  layout_ = lay_out(recipe_, *provisions_, provisions_->shared_plan());
  sheet_->apply(layout_.changes);
  sheet_->forget_past();
  sheet_->keep_cells();
  layout_.changes.clear();
}

std::string CostingSheet::cell(std::string_view name) const {
  const std::size_t dot = name.rfind('.');
  if (dot == std::string_view::npos) return std::string(name);
  const auto known = layout_.names.find(name.substr(0, dot));
  if (known == layout_.names.end()) return std::string(name);
  return known->second + std::string(name.substr(dot));
}

std::string CostingSheet::owner(std::string_view cell) const {
  const std::string_view front = cell.substr(0, cell.rfind('.'));
  for (const auto& [id, name] : layout_.names) {
    if (name == front || id == front) return id;
  }
  return {};
}

void CostingSheet::override_figure(std::string_view name, Override with) {
  const std::string called = cell(name);
  sheet_->apply({PutOverride{called, std::move(with)}});
  const std::lock_guard lock(mutex_);
  overridden_.insert(called);
  ++own_changes_;
}

void CostingSheet::release(std::string_view name) {
  const std::string called = cell(name);
  sheet_->apply({Release{called}});
  const std::lock_guard lock(mutex_);
  overridden_.erase(called);
  ++own_changes_;
}

bool CostingSheet::is_changed() const {
  const std::lock_guard lock(mutex_);
  return !overridden_.empty() || sheet_->changes_made() != own_changes_;
}

std::vector<std::string> CostingSheet::redeclared() const {
  if (!is_changed()) return {};
  std::map<std::string, const Change*, std::less<>> before;
  const std::vector<Change> plain = CostingSheet(*recipe_, provisions_).sheet_->changes();
  for (const Change& change : plain) before.emplace(name_of(change), &change);
  std::vector<std::string> told;
  for (const Change& change : sheet_->changes()) {
    const std::string name = name_of(change);
    const auto was = name.empty() ? before.end() : before.find(name);
    if (was == before.end()) continue;
    std::string text = redeclared_text(change, *was->second);
    if (!text.empty()) told.push_back(std::move(text));
  }
  return told;
}

std::vector<std::string> CostingSheet::overrides() const {
  std::vector<PutOverride> puts;
  std::set<std::string> names;
  for (const Change& change : sheet_->changes()) {
    if (const auto* put = std::get_if<PutOverride>(&change))
      names.insert(puts.emplace_back(*put).name);
  }
  std::vector<std::string> told;
  for (const PutOverride& put : puts) {
    std::string text =
        put.name + " is overridden with " + figure_of(put.with.value) + ": " + put.with.why;
    for (const std::string* more : {&put.with.who, &put.with.when}) {
      if (!more->empty()) text += ", " + *more;
    }
    const std::string others = same_fact_of_others(put.name, names);
    if (!others.empty()) text += "; of the same item, but not overridden: " + others;
    told.push_back(std::move(text));
  }
  return told;
}

std::string CostingSheet::same_fact_of_others(std::string_view cell,
                                              const std::set<std::string>& overridden) const {
  const std::size_t dot = cell.rfind('.');
  if (dot == std::string_view::npos || std::ranges::find(facts, cell.substr(dot)) == facts.end()) {
    return {};
  }
  const auto cell_of = [&](std::size_t line) {
    return layout_.names.find(provisions_->lines()[line].id)->second +
           std::string(cell.substr(dot));
  };
  std::string others;
  for (const ItemPlan& plan : provisions_->plan().items()) {
    if (std::ranges::find(plan.lines, cell, cell_of) == plan.lines.end()) continue;
    for (const std::size_t line : plan.lines) {
      const std::string other = cell_of(line);
      if (overridden.contains(other) || !sheet_->has(other)) continue;
      others += (others.empty() ? "" : ", ") + other;
    }
  }
  return others;
}

Quantity CostingSheet::figure(std::string_view name) const {
  return lower_bound(sheet_->value(cell(name)));
}

LineCost CostingSheet::line_now(const ItemCost& item, const LineWay& way,
                                const std::string& suffix) const {
  const std::string& id = layout_.names.find(provisions_->lines()[way.line].id)->second;
  LineCost line;
  line.line = way.line;
  line.bought_as = lower_bound(sheet_->value(id + ".buy" + suffix));
  const Rational& need = item.need.coherent();
  const bool first = way.line == item.plan->lines.front();
  const Rational share =
      need.is_zero() ? Rational(first ? 1 : 0) : line.bought_as.coherent() / need;
  line.costs = item.costs * share;
  const auto money = [&](const char* which) {
    return lower_bound(sheet_->value(id + which)).value();
  };
  line.costs.till = money(".till");
  line.costs.used = money(".used");
  line.costs.thrown = money(".thrown");
  return line;
}

ItemCost CostingSheet::item_now(std::size_t index) const {
  const ItemPlan& plan = provisions_->plan().items()[index];
  ItemCost item;
  try {
    item = bought_in(sheet_->value(layout_.items[index].packs));
    Costs costs;
    for (std::size_t i = 0; i < plan.groups.size(); ++i) {
      if (&plan.groups[i] != item.group) continue;
      for (const LineWay& way : plan.groups[i].ways) {
        item.lines.push_back(line_now(item, way, layout_.items[index].suffixes[i]));
        costs += item.lines.back().costs;
      }
    }
    if (!item.lines.empty()) item.costs = costs;
  } catch (const Error& error) {
    item = ItemCost();
    item.problem = problem_of(plan, error);
  }
  item.plan = &plan;
  return item;
}

Provisions CostingSheet::now() const {
  std::vector<ItemCost> items;
  for (std::size_t i = 0; i < layout_.items.size(); ++i) items.push_back(item_now(i));
  return provisions_->with_items(std::move(items));
}

std::vector<CellValue> CostingSheet::at(const Rational& portions,
                                        const std::vector<std::string>& names) const {
  const CellValue value{quantity_type(Unit()), portions};
  std::vector<CellValue> values;
  for (Outcome& outcome : sheet_->values_with(
           {PutOverride{"portions", {value, "a point of a curve", "", ""}}}, names)) {
    if (auto* error = std::get_if<Error>(&outcome)) throw Error(std::move(*error));
    values.push_back(std::get<CellValue>(std::move(outcome)));
  }
  return values;
}

}  // namespace scalepan
