#include "costing/packs_functions.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "costing/function_arguments.hpp"
#include "costing/kitchen_things.hpp"
#include "costing/packs_along.hpp"
#include "costing/why_parts.hpp"
#include "measure/figure.hpp"

namespace scalepan {

namespace {

// What arguments may be.

void expect_packs(std::string_view function, const ValueType& type) {
  if (type.kind == ValueKind::packs) return;
  fail("formula.type", "\"" + std::string(function) + "\" needs packs, not " + type.name());
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

// What they are worth.

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
  const Value& amount = values[packs.place_of_amount(values.size())];
  return single("share_of", amount) / packs.bought().need.coherent();
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

}  // namespace

std::vector<Function> packs_functions() {
  constexpr Operation call = Operation::call;
  return {
      {"cheapest_packs", "cheapest_packs(offers, need)",
       "the cheapest whole packs for a need, less what is on hand", 2, 64, call, packs_for_needs,
       cheapest_packs, nullptr, nullptr, packs_along},
      {"share_of", "share_of(packs, amount)", "an amount as a share of the whole need", 2, 64, call,
       share_type, share_of, nullptr, nullptr, share_along},
      {"price_of", "price_of(packs)", "what the till takes", 1, 1, call, money_of_packs, price_of,
       nullptr, nullptr, told_along},
      {"deposit_of", "deposit_of(packs)", "paid besides, and given back", 1, 1, call,
       money_of_packs, deposit_of, nullptr, nullptr, told_along},
      {"stock_used", "stock_used(packs)", "the value of what is on hand and used", 1, 1, call,
       money_of_packs, stock_used, nullptr, nullptr, told_along},
      {"from_stock", "from_stock(packs)", "what is on hand and used", 1, 1, call, amount_of_packs,
       from_stock, nullptr, nullptr, told_along},
      {"content_of", "content_of(packs)", "what the packs hold", 1, 1, call, amount_of_packs,
       content_of, nullptr, nullptr, told_along},
      {"left_of", "left_of(packs)", "what the packs hold beyond the need", 1, 1, call,
       amount_of_packs, left_of, left_source, nullptr, told_along},
      {"used_share", "used_share(packs)", "the share of the packs that is used", 1, 1, call,
       share_of_packs, used_share, nullptr, used_share_parts, told_along},
      {"keeps", "keeps(packs)", "whether what is left keeps", 1, 1, call, flag_of_packs, keeps,
       keeps_source, nullptr, told_along},
  };
}

}  // namespace scalepan
