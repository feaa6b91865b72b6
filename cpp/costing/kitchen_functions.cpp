#include "costing/kitchen_functions.hpp"

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "costing/kitchen_things.hpp"
#include "costing/why_need.hpp"
#include "costing/why_parts.hpp"
#include "exact/error.hpp"
#include "measure/figure.hpp"
#include "measure/unit_text.hpp"

namespace scalepan {

namespace {

using Types = std::span<const ValueType>;
using Values = std::span<const Value>;

constexpr std::array<FactFunction, 6> fact_functions{{
    {FactKind::edible, Stage::edible, "edible_share", "EP/AP"},
    {FactKind::cooked, Stage::cooked, "cooked_share", "cooked/EP"},
    {FactKind::drained, Stage::drained, "drained_share", "drained/AP"},
    {FactKind::density, Stage::none, "density", "g/mL"},
    {FactKind::piece, Stage::as_purchased, "piece_weight", "g/piece"},
    {FactKind::piece, Stage::edible, "edible_piece_weight", "g EP/(piece AP)"},
}};

// What arguments may be.

void expect_kind(std::string_view function, const ValueType& type, ValueKind kind) {
  if (type.kind == kind) return;
  fail("formula.type", "\"" + std::string(function) + "\" needs " + ValueType{kind}.name() +
                           ", not " + type.name());
}

void expect_packs(std::string_view function, const ValueType& type) {
  if (type.kind == ValueKind::packs) return;
  fail("formula.type", "\"" + std::string(function) + "\" needs packs, not " + type.name());
}

void expect_number(std::string_view function, const ValueType& type) {
  if (type.kind == ValueKind::quantity && type.dimension().is_number()) return;
  fail("formula.dimension",
       "\"" + std::string(function) + "\" needs a plain number, not " + type.name());
}

ValueType money_of_packs(std::string_view function, Types types) {
  expect_packs(function, types[0]);
  return quantity_type(types[0].money);
}

ValueType amount_of_packs(std::string_view function, Types types) {
  expect_packs(function, types[0]);
  return quantity_type(types[0].shown);
}

ValueType share_of_packs(std::string_view function, Types types) {
  expect_packs(function, types[0]);
  return quantity_type(Unit());
}

ValueType flag_of_packs(std::string_view function, Types types) {
  expect_packs(function, types[0]);
  return flag_type();
}

ValueType packs_for_needs(std::string_view function, Types types) {
  if (types.size() % 2 != 0) {
    fail("formula.arguments", "\"" + std::string(function) + "\" needs a need for each offers");
  }
  for (std::size_t i = 0; i < types.size(); i += 2) {
    const ValueType& offers = types[i];
    const ValueType& need = types[i + 1];
    if (offers.kind != ValueKind::offers) {
      fail("formula.type", "\"" + std::string(function) + "\" needs offers, not " + offers.name());
    }
    if (need.kind != ValueKind::quantity || !(need.dimension() == offers.dimension())) {
      fail("formula.dimension",
           "\"" + std::string(function) + "\" meets " + offers.name() + " and a need of " +
               need.name(),
           "bring the need to what the packs hold");
    }
    if (!(offers.money.dimension() == types[0].money.dimension())) {
      fail("formula.dimension",
           "\"" + std::string(function) + "\" meets " + types[0].name() + " and " + offers.name());
    }
  }
  return {ValueKind::packs, false, types[0].shown, types[0].money};
}

ValueType number_at_size(std::string_view function, Types types) {
  expect_kind(function, types[0], ValueKind::recipe);
  if (types.size() == 3) expect_kind(function, types[1], ValueKind::text);
  expect_number(function, types.back());
  return quantity_type(Unit());
}

template <std::size_t Which>
ValueType fact_type(std::string_view function, Types types) {
  expect_kind(function, types[0], ValueKind::food);
  if (types.size() == 2) expect_kind(function, types[1], ValueKind::text);
  static const Unit unit = parse_unit(fact_functions[Which].unit);
  return quantity_type(unit);
}

// What they are worth.

template <typename Kind>
const Kind& thing(const Value& value) {
  const auto* held = dynamic_cast<const Kind*>(std::get<ThingPointer>(value).get());
  if (held != nullptr) return *held;
  fail("formula.type", "\"" + std::get<ThingPointer>(value)->text() + "\" is of another kind");
}

const Rational& single(std::string_view function, const Value& value) {
  if (const auto* number = std::get_if<Rational>(&value)) return *number;
  fail("formula.undecided",
       "\"" + std::string(function) + "\" cannot be decided for more than one figure",
       "give one figure");
}

std::string text_in(const Value& value) { return std::get<ThingPointer>(value)->text(); }

const ItemCost& bought(const Value& packs) { return thing<PacksThing>(packs).bought(); }

Rational in_coherent(const Value& packs, const Rational& money) {
  return money * thing<PacksThing>(packs).money().ratio();
}

Value price_of(Values values) { return in_coherent(values[0], bought(values[0]).costs.till); }

Value deposit_of(Values values) { return in_coherent(values[0], bought(values[0]).deposit); }

Value stock_used(Values values) {
  Rational value;
  for (const StockUse& use : bought(values[0]).stock) value += use.value_used;
  return value;
}

Value from_stock(Values values) { return bought(values[0]).from_stock.coherent(); }

Value content_of(Values values) { return bought(values[0]).cover.total; }

Value keeps(Values values) { return Rational(bought(values[0]).keeping.keeps ? 1 : 0); }

Value used_share(Values values) {
  const ItemCost& item = bought(values[0]);
  if (item.cover.total.is_zero()) return Rational(0);
  return (item.need.coherent() - item.from_stock.coherent()) / item.cover.total;
}

std::vector<Why> used_share_parts(Values values) {
  const Value share = used_share(values);
  return {{"used share",
           figure_of(Quantity(std::get<Rational>(share))),
           "what is to buy / bought",
           "",
           {}}};
}

std::string keeps_source(Values values) {
  const Keeping& keeping = bought(values[0]).keeping;
  if (!keeping.keeps) return "what is left will not keep";
  return keeping.days ? "what is left keeps " + text_of(keeping) + " and is counted as kept"
                      : "what is left keeps";
}

Value left_of(Values values) {
  const PacksThing& packs = thing<PacksThing>(values[0]);
  const ItemCost& item = packs.bought();
  if (packs.kind() == 0) return item.leftover.coherent();
  fail("cost.kind", item.plan->item + " is bought by " +
                        std::string(name_of(item.group->form.kind)) +
                        " now, since that comes cheaper: " + packs.text());
}

std::string left_source(Values values) {
  return bought(values[0]).stock.empty() ? "bought - buy" : "bought - (buy - on hand)";
}

/// A line's part of what all lines of an item need, of whichever kind is bought.
Value share_of(Values values) {
  const PacksThing& packs = thing<PacksThing>(values[0]);
  if (packs.kind() + 1 >= values.size()) {
    fail("cost.kind", "no amount is given for the packs that are bought: " + packs.text());
  }
  return single("share_of", values[packs.kind() + 1]) / packs.bought().need.coherent();
}

ValueType share_type(std::string_view function, Types types) {
  expect_packs(function, types[0]);
  if (types.size() > 1 && types[1].dimension() == types[0].dimension()) {
    return quantity_type(Unit());
  }
  fail("formula.dimension",
       "\"" + std::string(function) + "\" meets " + types[0].name() + " and " + types[1].name());
}

struct OfferedNeed {
  const OffersThing* offers;
  GroupNeed need;
  std::size_t kind;
};

std::vector<OfferedNeed> needs_in(Values values) {
  std::vector<OfferedNeed> needs;
  for (std::size_t i = 0; i < values.size(); i += 2) {
    const auto& offers = thing<OffersThing>(values[i]);
    const Rational& need = single("cheapest_packs", values[i + 1]);
    if (need.sign() < 0) {
      fail("cost.need", "of " + offers.item().item + " less than nothing is needed");
    }
    if (offers.group() == nullptr) {
      fail("cost.unpriced", offers.item().item + " is not priced: " + offers.item().problem);
    }
    needs.push_back({&offers, {offers.group(), need}, i / 2});
  }
  // Of groups that cost alike the plan's first one is taken.
  std::ranges::stable_sort(needs, {}, [](const OfferedNeed& one) { return one.offers->place(); });
  return needs;
}

Value cheapest_packs(Values values) {
  const std::vector<OfferedNeed> offered = needs_in(values);
  std::vector<GroupNeed> needs;
  for (const OfferedNeed& one : offered) needs.push_back(one.need);
  const auto& plan = offered.front().offers->plan();
  ItemCost item = cheapest_item(offered.front().offers->item(), needs, plan->money());
  expect_priced(item);
  const auto taken = std::ranges::find_if(
      offered, [&](const OfferedNeed& one) { return one.need.group == item.group; });
  const std::size_t kind = taken->kind;
  return std::make_shared<const PacksThing>(taken->offers->plan(), std::move(item), kind);
}

// Facts.

template <std::size_t Which>
const Fact& fact_in(Values values) {
  const FactFunction& function = fact_functions[Which];
  const std::string detail = values.size() == 2 ? text_in(values[1]) : "";
  return thing<FoodThing>(values[0]).fact(function.kind, function.to, detail);
}

template <std::size_t Which>
Value fact_value(Values values) {
  return fact_in<Which>(values).value.coherent();
}

template <std::size_t Which>
std::string fact_source(Values values) {
  const Fact& fact = fact_in<Which>(values);
  static const Unit unit = parse_unit(fact_functions[Which].unit);
  const bool as_shown = fact.value.unit().ratio() == unit.ratio();
  return source_of(fact) + (as_shown ? "" : "; stated as " + figure_of_fact(fact));
}

template <std::size_t Which>
std::vector<Why> beside(Values values) {
  return why_beside(thing<FoodThing>(values[0]).catalog(), fact_in<Which>(values));
}

template <std::size_t Which>
Function fact_function(std::string_view shape, std::string_view told) {
  return {fact_functions[Which].name,
          shape,
          told,
          1,
          2,
          Operation::call,
          fact_type<Which>,
          fact_value<Which>,
          fact_source<Which>,
          beside<Which>};
}

// Sizes.

std::shared_ptr<const Recipe> recipe_at(std::string_view function, Values values) {
  return thing<RecipeThing>(values[0]).at(single(function, values.back()));
}

const MadeBase& base_in(const Recipe& recipe, const std::string& name) {
  if (const MadeBase* made = recipe.made_base(name)) return *made;
  fail("cost.base", recipe.name() + " makes no base called \"" + excerpt(name) + "\"");
}

const Line& line_in(const Recipe& recipe, const std::string& id) {
  const auto& lines = recipe.food_lines();
  const auto line = std::ranges::find(lines, id, &Line::id);
  if (line != lines.end()) return *line;
  fail("cost.line", recipe.name() + " has no line \"" + excerpt(id) + "\"");
}

Value size_factor(Values values) { return recipe_at("size_factor", values)->size().factor; }

std::string size_factor_source(Values) {
  return "of the written amounts, so that the batch comes to what is asked";
}

Value batches_of(Values values) {
  const auto recipe = recipe_at("batches_of", values);
  return base_in(*recipe, text_in(values[1])).recipe->size().factor;
}

std::string batches_source(Values values) {
  const auto recipe = recipe_at("batches_of", values);
  return told_batches(base_in(*recipe, text_in(values[1])));
}

std::vector<Why> batches_parts(Values values) {
  const auto recipe = recipe_at("batches_of", values);
  return why_uses(base_in(*recipe, text_in(values[1])));
}

/// Of the written amount, so that an amount written anew grows alike.
Value growth_of(Values values) {
  const auto recipe = recipe_at("growth_of", values);
  const Line& line = line_in(*recipe, text_in(values[1]));
  if (line.written.coherent().is_zero()) return Rational(0);
  return line.amount.coherent() / line.written.coherent();
}

std::string growth_source(Values values) {
  const auto recipe = recipe_at("growth_of", values);
  return told_rule(*recipe, line_in(*recipe, text_in(values[1])));
}

std::vector<Function> functions() {
  constexpr Operation call = Operation::call;
  return {
      fact_function<0>("edible_share(food)", "what is left of the whole after trimming"),
      fact_function<1>("cooked_share(food)", "what cooking leaves of the edible weight"),
      fact_function<2>("drained_share(food)", "what draining leaves of the whole"),
      fact_function<3>("density(food)", "weight by volume"),
      fact_function<4>("piece_weight(food)", "weight of one, as purchased"),
      fact_function<5>("edible_piece_weight(food)", "edible weight of one"),
      {"cheapest_packs", "cheapest_packs(offers, need)",
       "the cheapest whole packs for a need, less what is on hand", 2, 64, call, packs_for_needs,
       cheapest_packs},
      {"price_of", "price_of(packs)", "what the till takes", 1, 1, call, money_of_packs, price_of},
      {"deposit_of", "deposit_of(packs)", "paid besides, and given back", 1, 1, call,
       money_of_packs, deposit_of},
      {"stock_used", "stock_used(packs)", "the value of what is on hand and used", 1, 1, call,
       money_of_packs, stock_used},
      {"from_stock", "from_stock(packs)", "what is on hand and used", 1, 1, call, amount_of_packs,
       from_stock},
      {"content_of", "content_of(packs)", "what the packs hold", 1, 1, call, amount_of_packs,
       content_of},
      {"left_of", "left_of(packs)", "what the packs hold beyond the need", 1, 1, call,
       amount_of_packs, left_of, left_source},
      {"used_share", "used_share(packs)", "the share of the packs that is used", 1, 1, call,
       share_of_packs, used_share, nullptr, used_share_parts},
      {"share_of", "share_of(packs, amount)", "an amount as a share of the whole need", 2, 64, call,
       share_type, share_of},
      {"keeps", "keeps(packs)", "whether what is left keeps", 1, 1, call, flag_of_packs, keeps,
       keeps_source},
      {"size_factor", "size_factor(recipe, portions)", "what the written amounts are multiplied by",
       2, 2, call, number_at_size, size_factor, size_factor_source},
      {"batches_of", "batches_of(recipe, base, portions)", "how many batches of a base are made", 3,
       3, call, number_at_size, batches_of, batches_source, batches_parts},
      {"growth_of", "growth_of(recipe, line, portions)",
       "what a line's rule multiplies its written amount by", 3, 3, call, number_at_size, growth_of,
       growth_source},
  };
}

}  // namespace

std::shared_ptr<const FunctionTable> kitchen_functions() {
  static const auto table = std::make_shared<const FunctionTable>(functions());
  return table;
}

const FactFunction* function_for(const Fact& fact) {
  for (const FactFunction& function : fact_functions) {
    const bool same_stage = fact.kind != FactKind::piece || function.to == fact.to;
    if (fact.kind != function.kind || !same_stage) continue;
    return parse_unit(function.unit).dimension() == fact.value.dimension() ? &function : nullptr;
  }
  return nullptr;
}

}  // namespace scalepan
