#include "costing/item_layout.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "costing/kitchen_functions.hpp"
#include "costing/kitchen_things.hpp"
#include "costing/why_parts.hpp"
#include "measure/unit_text.hpp"

namespace scalepan {

namespace {

std::string cell_of(FactKind kind) {
  switch (kind) {
    case FactKind::density:
      return "density";
    case FactKind::piece:
      return "piece_weight";
    case FactKind::edible:
      return "edible";
    case FactKind::cooked:
      return "cooked";
    case FactKind::word:
      return "word";
    case FactKind::drained:
      break;
  }
  return "drained";
}

std::string kind_suffix(const Form& form) {
  switch (form.kind) {
    case Kind::mass:
      return "_by_weight";
    case Kind::volume:
      return "_by_volume";
    case Kind::count:
      break;
  }
  return "_by_count";
}

const LineWay& way_of(const OfferGroup& group, std::size_t line) {
  return *std::ranges::find(group.ways, line, &LineWay::line);
}

/// Facts, each once, over all kinds of packs.
std::vector<const Fact*> facts_of(const ItemPlan& plan, std::size_t line) {
  std::vector<const Fact*> facts;
  for (const OfferGroup& group : plan.groups) {
    for (const Step& step : way_of(group, line).conversion.steps) {
      if (std::ranges::find(facts, step.fact) == facts.end()) facts.push_back(step.fact);
    }
  }
  return facts;
}

const std::string& detail_of(const Fact& fact) {
  return fact.state.empty() ? fact.size : fact.state;
}

/// The formula that asks the food for a fact; empty where none can tell it from the others.
std::string formula_for(const Fact& fact, const std::vector<const Fact*>& facts,
                        const std::string& food) {
  const FactFunction* function = function_for(fact);
  if (function == nullptr) return {};
  const auto alike = [&](const Fact* other) {
    return other->kind == fact.kind && (fact.kind != FactKind::piece || other->to == fact.to);
  };
  const auto first = std::ranges::find_if(facts, alike);
  std::string formula = std::string(function->name) + "(" + food;
  if (*first != &fact) {
    const std::string& detail = detail_of(fact);
    const auto named = std::ranges::find_if(facts, [&](const Fact* other) {
      return alike(other) && (other->state == detail || other->size == detail);
    });
    if (detail.empty() || *named != &fact || detail.find('"') != std::string::npos) return {};
    formula += ", \"" + detail + "\"";
  }
  return formula + ")";
}

/// Of a word the stage of what it counts stays, as it does for weights.
CellValue value_of(const Fact& fact) {
  Unit unit = fact.value.unit();
  if (fact.kind == FactKind::word) unit = Unit::coherent(unit.dimension().without_stages());
  return {quantity_type(unit), fact.value.coherent()};
}

}  // namespace

void ItemLayout::define(std::string name, std::string formula) {
  layout_.changes.emplace_back(Define{std::move(name), std::move(formula)});
}

void ItemLayout::lay_out() {
  const ValueType money = quantity_type(plan_->money());
  AddBlock block{"lines", {}};
  for (const std::string_view which : cost_names) {
    block.columns.push_back({std::string(which), money});
  }
  layout_.changes.emplace_back(std::move(block));
  for (std::size_t i = 0; i < plan_->items().size(); ++i) {
    if (plan(i).groups.empty()) {
      lay_out_unpriced(i);
    } else {
      lay_out_item(i);
    }
  }
}

/// Each line by itself: nothing is known that would bring them together.
void ItemLayout::lay_out_unpriced(std::size_t index) {
  layout_.items.push_back({name_of_line(plan(index).lines.front()) + ".packs", {}});
  for (const std::size_t line : plan(index).lines) {
    const std::string& id = name_of_line(line);
    put_offers(id + ".offers", index, OffersThing::no_group,
               provisions_.lines()[line].written.unit());
    define(id + ".packs", "cheapest_packs(" + id + ".offers, " + id + ".need)");
    put_row(id, id, false, false);
  }
}

ItemLayout::Kinds ItemLayout::kinds_of(std::size_t index) const {
  const ItemPlan& item = plan(index);
  const OfferGroup* chosen = provisions_.items()[index].group;
  Kinds kinds{index, {}, std::vector<std::string>(item.groups.size())};
  for (std::size_t i = 0; i < item.groups.size(); ++i) {
    if (&item.groups[i] == chosen)
      kinds.groups.insert(kinds.groups.begin(), i);
    else
      kinds.groups.push_back(i);
  }
  std::set<std::string> taken;
  for (std::size_t i = 1; i < kinds.groups.size(); ++i) {
    const std::string kind = kind_suffix(item.groups[kinds.groups[i]].form);
    std::string suffix = kind;
    for (int n = 2; !taken.insert(suffix).second; ++n) suffix = kind + "_" + std::to_string(n);
    kinds.suffixes[kinds.groups[i]] = suffix;
  }
  return kinds;
}

void ItemLayout::lay_out_item(std::size_t index) {
  const Kinds kinds = kinds_of(index);
  const std::vector<std::size_t>& lines = plan(index).lines;
  const bool pooled = lines.size() > 1;
  const std::string& first = name_of_line(lines.front());
  layout_.items.push_back({first + ".packs", kinds.suffixes});
  for (const std::size_t line : lines) {
    lay_out_facts(provisions_.lines()[line], kinds);
    lay_out_buy(line, kinds);
  }
  if (pooled) {
    for (const std::size_t group : kinds.groups) {
      std::string sum;
      for (const std::size_t line : lines) {
        sum += (sum.empty() ? "" : " + ") + name_of_line(line) + ".buy" + kinds.suffixes[group];
      }
      define(first + ".in_all" + kinds.suffixes[group], sum);
    }
  }
  lay_out_packs(first, kinds, pooled);
  const bool from_stock = std::ranges::any_of(
      plan(index).groups, [](const OfferGroup& group) { return !group.on_hand.empty(); });
  for (const std::size_t line : lines) {
    const std::string& id = name_of_line(line);
    if (id != first) {
      define(id + ".packs", first + ".packs");
      define(id + ".leftover", first + ".leftover");
    }
    if (pooled) lay_out_share(line, first, kinds);
    put_row(id, first, pooled, from_stock);
  }
}

void ItemLayout::lay_out_facts(const Line& line, const Kinds& kinds) {
  facts_.clear();
  const std::string& id = ids_.name(line.id);
  const auto index = static_cast<std::size_t>(&line - provisions_.lines().data());
  const std::vector<const Fact*> facts = facts_of(plan(kinds.item), index);
  const auto& catalog = plan_->terms()[index].catalog;
  if (!line.food_id.empty()) {
    layout_.changes.emplace_back(
        Set{id + ".food",
            {{ValueKind::food},
             std::make_shared<const FoodThing>(catalog->food(line.food_id)->name, catalog, facts)},
            "\"" + line.food + "\" in the catalogue"});
  }
  std::map<std::string, int> used;
  const auto fresh = [&](const std::string& kind) {
    const int n = ++used[kind];
    return id + "." + kind + (n == 1 ? "" : "_" + std::to_string(n));
  };
  for (const Fact* fact : facts) {
    facts_.emplace_back(fact, fresh(cell_of(fact->kind)));
    const std::string formula = formula_for(*fact, facts, id + ".food");
    if (formula.empty()) {
      layout_.changes.emplace_back(Set{facts_.back().second, value_of(*fact), source_of(*fact)});
    } else {
      define(facts_.back().second, formula);
    }
  }
  const bool assumed = std::ranges::any_of(plan(kinds.item).groups, [&](const OfferGroup& group) {
    return way_of(group, index).share_assumed;
  });
  if (!assumed) return;
  facts_.emplace_back(nullptr, fresh("edible"));
  const Unit share = parse_unit("EP/AP");
  layout_.changes.emplace_back(Set{facts_.back().second,
                                   {quantity_type(share), Rational(1)},
                                   "assumed: no edible share is known"});
}

void ItemLayout::lay_out_buy(std::size_t line, const Kinds& kinds) {
  const std::string& id = name_of_line(line);
  const auto cell = [&](const Fact* fact) {
    return std::ranges::find(facts_, fact, &std::pair<const Fact*, std::string>::first)->second;
  };
  for (const std::size_t group : kinds.groups) {
    const OfferGroup& offered = plan(kinds.item).groups[group];
    const LineWay& way = way_of(offered, line);
    std::string formula = id + ".need";
    if (way.share_assumed) {
      formula += (offered.form.stage == Stage::as_purchased ? " / " : " * ") + cell(nullptr);
    }
    for (const Step& step : way.conversion.steps) {
      formula += (step.divides ? " / " : " * ") + cell(step.fact);
    }
    define(id + ".buy" + kinds.suffixes[group], formula);
  }
}

void ItemLayout::put_offers(const std::string& name, std::size_t item, std::size_t group,
                            Unit unit) {
  layout_.changes.emplace_back(Set{name,
                                   {{ValueKind::offers, false, unit, plan_->money()},
                                    std::make_shared<const OffersThing>(plan_, item, group)}});
}

void ItemLayout::lay_out_packs(const std::string& first, const Kinds& kinds, bool pooled) {
  std::string arguments;
  for (const std::size_t group : kinds.groups) {
    const std::string& suffix = kinds.suffixes[group];
    put_offers(first + ".offers" + suffix, kinds.item, group, plan(kinds.item).groups[group].unit);
    arguments += (arguments.empty() ? "" : ", ") + first + ".offers" + suffix + ", " + first +
                 (pooled ? ".in_all" : ".buy") + suffix;
  }
  define(first + ".packs", "cheapest_packs(" + arguments + ")");
  define(first + ".leftover", "left_of(" + first + ".packs)");
}

void ItemLayout::lay_out_share(std::size_t line, const std::string& first, const Kinds& kinds) {
  const std::string& id = name_of_line(line);
  std::string part = id + ".buy / " + first + ".in_all";
  if (kinds.groups.size() > 1) {
    part = "share_of(" + first + ".packs";
    for (const std::size_t group : kinds.groups) part += ", " + id + ".buy" + kinds.suffixes[group];
    part += ")";
  }
  // What is on hand of a need of nothing is the first line's to show.
  define(id + ".share",
         "if " + first + ".in_all = 0 then " + (id == first ? "1" : "0") + " else " + part);
}

void ItemLayout::put_row(const std::string& row, const std::string& first, bool pooled,
                         bool from_stock) {
  const std::string packs = "(" + first + ".packs)";
  const std::string share = pooled ? " * " + row + ".share" : "";
  const std::string stock = from_stock ? " + stock_used" + packs + share : "";
  layout_.changes.emplace_back(AddRow{
      "lines",
      row,
      {{"till", std::nullopt, "", "price_of" + packs + share},
       {"used", std::nullopt, "", row + ".till * used_share" + packs + stock},
       {"thrown", std::nullopt, "",
        "if keeps" + packs + " then 0 else " + row + ".till * (1 - used_share" + packs + ")"},
       {"borne", std::nullopt, "", row + ".used + " + row + ".thrown"}}});
}

}  // namespace scalepan
