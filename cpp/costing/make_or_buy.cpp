#include "costing/make_or_buy.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "exact/error.hpp"
#include "measure/nearest.hpp"

namespace scalepan {

namespace {

const MadeBase& base_named(const Recipe& recipe, std::string_view name) {
  if (const MadeBase* made = recipe.made_base(name)) return *made;
  std::vector<std::string_view> names;
  for (const MadeBase& made : recipe.made_bases()) names.push_back(made.name);
  const std::string near = nearest_hint(nearest_names(name, names));
  std::string all;
  for (const std::string_view known : names) all += (all.empty() ? "" : ", ") + std::string(known);
  fail("base.unknown", recipe.name() + " takes from no base called \"" + excerpt(name) + "\"",
       !near.empty() ? near
       : all.empty() ? "it has no bases"
                     : "bases: " + all);
}

/// The base that a use is a line of; empty for a line of the dish.
std::string_view user_of(const BaseUse& use, const std::set<std::string_view>& bases) {
  for (std::size_t dot = use.line.find('.'); dot != std::string::npos;
       dot = use.line.find('.', dot + 1)) {
    const auto known = bases.find(std::string_view(use.line).substr(0, dot));
    if (known != bases.end()) return *known;
  }
  return {};
}

/// The base and those that are made for it alone.
std::set<std::string_view> made_for(const Recipe& recipe, const MadeBase& base) {
  std::set<std::string_view> all;
  for (const MadeBase& made : recipe.made_bases()) all.insert(made.name);
  std::set<std::string_view> gone{base.name};
  for (std::size_t i = recipe.made_bases().size(); i-- > 0;) {  // users before what they use
    const MadeBase& made = recipe.made_bases()[i];
    const auto for_gone = std::ranges::count_if(
        made.uses, [&](const BaseUse& use) { return gone.contains(user_of(use, all)); });
    if (for_gone == 0 || made.name == base.name) continue;
    if (static_cast<std::size_t>(for_gone) < made.uses.size()) {
      fail("base.ready",
           base.name + " takes from " + made.name + ", which other lines take from too",
           "write the dish with " + base.name + " bought ready, and cost that");
    }
    gone.insert(made.name);
  }
  return gone;
}

Quantity amount_of(const MadeBase& base) {
  const Recipe& recipe = *base.recipe;
  const auto whole = recipe.batch().amount(size_of_portions(recipe.serves(), recipe.serves()));
  if (whole) return *whole * base.batches;
  fail("base.ready", "how much of " + base.name + " is taken is not known",
       "say in its recipe what it makes: makes = \"1.4 kg\"");
}

Line ready_line(const Recipe& recipe, const Quantity& amount, std::string_view item) {
  const bool pieces = amount.dimension().without_stages() == dimension::piece();
  LineInput input;
  input.line.text = "1 " + (pieces ? "" : amount.unit().symbol() + " ") + std::string(item);
  Line line = recipe.line_at_size(input);
  if (line.written.dimension().without_stages() != amount.dimension().without_stages()) {
    fail("base.ready",
         "\"" + excerpt(item) + "\" cannot be read as an item to buy by " + amount.unit().symbol());
  }
  const Quantity taken = Quantity::of_coherent(amount.coherent(), line.written.unit());
  line.written = line.written_low = line.exact = line.amount = line.amount_low = taken;
  return line;
}

}  // namespace

MakeOrBuy make_or_buy(const Costing& costing, std::string_view base, std::string_view item) {
  const Recipe& recipe = costing.recipe();
  const MadeBase& made = base_named(recipe, base);
  const std::set<std::string_view> gone = made_for(recipe, made);
  MakeOrBuy found;
  found.base = made.name;
  found.item = item;
  found.amount = amount_of(made);
  found.dish_made = costing.costs();
  const std::vector<Line>& own = recipe.food_lines();
  const auto goes = [&](const Line& line) { return gone.contains(line.made_in); };
  for (const ItemCost& bought : costing.items()) {
    for (const LineCost& line : bought.lines) {
      if (goes(own[line.line])) found.made += line.costs;
    }
  }
  std::vector<Line> lines{ready_line(recipe, found.amount, item)};
  for (const Line& line : own) {
    if (!goes(line)) {
      lines.push_back(line);
      continue;
    }
    found.lines.push_back(line.id);
    if (std::ranges::find(costing.unpriced(), line.id) != costing.unpriced().end()) {
      found.unpriced_made.push_back(line.id);
    }
  }
  const Provisions ready = bought_for(costing, std::move(lines));
  found.dish_bought = ready.costs();
  const ItemCost& first = ready.items().front();  // of the first line, which is measured
  if (first.group == nullptr) {
    found.unpriced_bought.emplace_back(item);
    return found;
  }
  found.bought = first.lines.front().costs;
  found.packs = first.packs();
  found.leftover = first.leftover;
  return found;
}

}  // namespace scalepan
