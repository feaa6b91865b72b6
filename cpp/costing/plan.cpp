#include "costing/plan.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "exact/error.hpp"
#include "measure/currency.hpp"
#include "measure/unit_table.hpp"

namespace scalepan {

namespace {

Form form_of(const Quantity& amount, const std::string& detail) {
  return {kind_of(amount.dimension().without_stages()), amount.stage(), detail};
}

/// A pack counted in pieces meets any size the recipe names: the shop sells them as they come.
bool both_counts(const Form& a, const Form& b) {
  return a.kind == Kind::count && b.kind == Kind::count && a.stage == b.stage;
}

/// Lines of one food share packs; foods outside the catalogue go by their name.
std::string key_of(const Catalog& catalog, const std::string& name) {
  const auto found = catalog.find(name);
  return found ? found->food->id : plain_name(name);
}

/// Ways from a line's form to the form of the packs.
class WayFinder {
 public:
  WayFinder(const Catalog& catalog, const Line& line, bool strict)
      : catalog_(catalog), line_(line), food_(catalog.food(line.food_id)), strict_(strict) {}

  /// Throws what `conversion` throws where there is no way.
  [[nodiscard]] LineWay find(std::size_t index, const Form& to) const {
    const Form from = form_of(line_.written, line_.detail());
    LineWay way;
    way.line = index;
    if (both_counts(from, to)) return way;
    if (auto how = known(from, to)) {
      way.conversion = std::move(*how);
      return way;
    }
    if (auto how = assumed(from, to)) {
      if (strict_) fail_stages(from, to);
      way.conversion = std::move(*how);
      way.share_assumed = true;
      return way;
    }
    fail_no_way(from, to);
  }

 private:
  [[nodiscard]] std::optional<Conversion> known(const Form& from, const Form& to) const {
    if (food_ != nullptr) {
      return find_conversion(catalog_, *food_, from, to, line_.preparations);
    }
    const bool same = from.kind == to.kind && from.stage == to.stage;
    return same ? std::optional(Conversion{}) : std::nullopt;
  }

  /// Between AP and EP only: a drained or cooked weight is never near the whole.
  [[nodiscard]] std::optional<Conversion> assumed(Form from, const Form& to) const {
    const auto raw = [](Stage stage) {
      return stage == Stage::as_purchased || stage == Stage::edible;
    };
    if (from.stage == to.stage || !raw(from.stage) || !raw(to.stage)) return std::nullopt;
    from.stage = to.stage;
    if (auto how = known(from, to)) return how;
    return std::nullopt;
  }

  [[noreturn]] void fail_stages(const Form& from, const Form& to) const {
    fail("cost.stage",
         line_.food + " is needed at " + std::string(symbol_of(from.stage)) + " (" +
             std::string(name_of(from.stage)) + ") but sold at " +
             std::string(symbol_of(to.stage)) + " (" + std::string(name_of(to.stage)) +
             "), and no edible share links the two",
         "add the share as a fact of your own", line_.place);
  }

  [[noreturn]] void fail_no_way(const Form& from, const Form& to) const {
    if (food_ != nullptr) {
      static_cast<void>(conversion(catalog_, *food_, from, to, line_.preparations));
    }
    fail("cost.no_way",
         line_.food + " is needed by " + std::string(name_of(from.kind)) + " " +
             std::string(symbol_of(from.stage)) + " but sold by " + std::string(name_of(to.kind)) +
             " " + std::string(symbol_of(to.stage)) + ", and nothing is known of this food",
         "use a name the catalogue has, or price it as it is needed");
  }

  const Catalog& catalog_;
  const Line& line_;
  const Food* food_;
  bool strict_;
};

void group_offer(std::vector<OfferGroup>& groups, const Offer& offer) {
  for (const Quantity& content : offer.contents) {
    const Form form = form_of(content, {});
    auto group = std::ranges::find(groups, form, &OfferGroup::form);
    if (group == groups.end()) {
      groups.push_back({});
      group = std::prev(groups.end());
      group->form = form;
    }
    group->offers.push_back(&offer);
    group->contents.push_back(content);
  }
}

/// How much a group leans on: assumptions first, then facts.
std::pair<bool, std::size_t> leaning_of(const OfferGroup& group) {
  std::size_t facts = 0;
  for (const LineWay& way : group.ways) facts += way.conversion.steps.size();
  return {group.assumes(), facts};
}

/// A pack that states its content at two stages is taken at the one that leans on least.
void keep_best_statement(std::vector<OfferGroup>& groups) {
  std::map<const Offer*, const OfferGroup*> best;
  for (const OfferGroup& group : groups) {
    for (const Offer* offer : group.offers) {
      const auto [known, fresh] = best.emplace(offer, &group);
      if (!fresh && leaning_of(group) < leaning_of(*known->second)) known->second = &group;
    }
  }
  for (OfferGroup& group : groups) {
    for (std::size_t i = group.offers.size(); i-- > 0;) {
      if (best.at(group.offers[i]) == &group) continue;
      const auto at = static_cast<std::ptrdiff_t>(i);
      group.offers.erase(group.offers.begin() + at);
      group.contents.erase(group.contents.begin() + at);
    }
  }
  std::erase_if(groups, [](const OfferGroup& group) { return group.offers.empty(); });
}

std::shared_ptr<const CoverFinder> finder_of(const OfferGroup& group) {
  std::vector<Pack> packs;
  for (std::size_t i = 0; i < group.offers.size(); ++i) {
    packs.push_back({group.contents[i].coherent(), group.offers[i]->price.coherent()});
  }
  return std::make_shared<const CoverFinder>(packs);
}

/// Keeps the groups that every line has a way to; notes why where none is left.
void find_ways(ItemPlan& item, std::vector<OfferGroup> groups, const Recipe& recipe, bool strict) {
  for (OfferGroup& group : groups) {
    try {
      for (const std::size_t line : item.lines) {
        group.ways.push_back(
            WayFinder(recipe.catalog(), recipe.lines()[line], strict).find(line, group.form));
      }
    } catch (const Error& error) {
      if (error.code() == "cost.stage") throw;
      if (item.problem.empty()) item.problem = error.what();
      continue;
    }
    item.groups.push_back(std::move(group));
  }
  keep_best_statement(item.groups);
  // What is known goes before what is assumed.
  const bool some_known =
      std::ranges::any_of(item.groups, [](const OfferGroup& group) { return !group.assumes(); });
  if (some_known) std::erase_if(item.groups, [](const OfferGroup& g) { return g.assumes(); });
  for (OfferGroup& group : item.groups) group.finder = finder_of(group);
}

std::vector<ItemPlan> items_of(const Recipe& recipe) {
  std::vector<ItemPlan> items;
  std::map<std::string, std::size_t> places;
  for (std::size_t i = 0; i < recipe.lines().size(); ++i) {
    const Line& line = recipe.lines()[i];
    const std::string key = line.food_id.empty() ? plain_name(line.food) : line.food_id;
    const auto [place, fresh] = places.emplace(key, items.size());
    if (fresh) items.push_back({line.food, {}, {}, {}});
    items[place->second].lines.push_back(i);
  }
  return items;
}

std::map<std::string, std::vector<OfferGroup>> groups_of(const Catalog& catalog,
                                                         const PriceBook& prices) {
  std::map<std::string, std::vector<OfferGroup>> groups;
  for (const Offer& offer : prices.offers()) {
    const std::string key =
        located(offer.place, offer.item, [&] { return key_of(catalog, offer.item); });
    group_offer(groups[key], offer);
  }
  return groups;
}

Unit common_currency(const std::vector<ItemPlan>& items) {
  const Offer* first = nullptr;
  for (const ItemPlan& item : items) {
    for (const OfferGroup& group : item.groups) {
      for (const Offer* offer : group.offers) {
        if (first == nullptr) first = offer;
        if (offer->price.dimension() == first->price.dimension()) continue;
        fail("cost.currencies",
             "prices in " + first->price.unit().symbol() + " (" + first->item + ") and in " +
                 offer->price.unit().symbol() + " (" + offer->item + ") meet in one costing",
             "use one currency", offer->place);
      }
    }
  }
  return first == nullptr ? Unit({{&unit_with_symbol(no_currency), 1}}) : first->price.unit();
}

}  // namespace

bool OfferGroup::assumes() const {
  return std::ranges::any_of(ways, [](const LineWay& way) { return way.share_assumed; });
}

Plan::Plan(const Recipe& recipe, std::shared_ptr<const PriceBook> prices, CostOptions options)
    : prices_(std::move(prices)), items_(items_of(recipe)) {
  auto groups = groups_of(recipe.catalog(), *prices_);
  for (ItemPlan& item : items_) {
    const Line& line = recipe.lines()[item.lines.front()];
    const std::string key = line.food_id.empty() ? plain_name(line.food) : line.food_id;
    const auto found = groups.find(key);
    if (found == groups.end()) {
      item.problem = "no price row is for " + item.item;
    } else {
      find_ways(item, std::move(found->second), recipe, options.strict);
    }
  }
  money_ = common_currency(items_);
}

bool Plan::currency_stated() const { return money_.symbol() != no_currency; }

}  // namespace scalepan
