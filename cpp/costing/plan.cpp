#include "costing/plan.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

#include "exact/error.hpp"
#include "measure/count_nouns.hpp"
#include "measure/currency.hpp"
#include "measure/nearest.hpp"
#include "recipe/food_phrase.hpp"

namespace scalepan {

namespace {

Form form_of(const Quantity& amount, const std::string& detail) {
  return {kind_of(amount.dimension().without_stages()), amount.stage(), detail};
}

/// Counts meet as they are where they count one thing: cloves and cloves, or the item itself in
/// whatever size the recipe names, since the shop sells it as it comes.
bool counts_alike(const Line& line, const Form& from, const Form& to) {
  if (from.kind != Kind::count || to.kind != Kind::count || from.stage != to.stage) return false;
  const std::string& noun = line.counted_noun();
  return to.detail.empty() ? noun.empty() : same_noun(noun, to.detail);
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
    if (counts_alike(line_, from, to)) return way;
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
    return same && from.kind != Kind::count ? std::optional(Conversion{}) : std::nullopt;
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

  static std::string counted(const Form& form) {
    return "the " + (form.detail.empty() ? "piece" : form.detail);
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
    if (from.kind == Kind::count && to.kind == Kind::count) {
      fail("cost.no_way",
           line_.food + " is counted by " + counted(from) + " but sold by " + counted(to) +
               ", and no weights of both link the two",
           "price it as it is needed, or add a piece weight of each as facts of your own");
    }
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
  for (const PackContent& content : offer.contents) {
    const Form form = form_of(content.amount, content.noun);
    auto group = std::ranges::find(groups, form, &OfferGroup::form);
    if (group == groups.end()) {
      groups.push_back({});
      group = std::prev(groups.end());
      group->form = form;
    }
    group->offers.push_back(&offer);
    group->contents.push_back(content.amount);
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

std::shared_ptr<const CoverFunction> covers_of(const OfferGroup& group) {
  std::vector<Pack> packs;
  for (std::size_t i = 0; i < group.offers.size(); ++i) {
    packs.push_back({group.contents[i].coherent(), group.offers[i]->price.coherent()});
  }
  return std::make_shared<const CoverFunction>(purchases_of(packs));
}

std::string packs_of(const OfferGroup& group) {
  std::string packs;
  for (const Offer* offer : group.offers) packs += (packs.empty() ? "" : ", ") + offer->pack;
  return packs;
}

/// What is known goes before what is assumed.
void keep_known(ItemPlan& item) {
  const bool some_known =
      std::ranges::any_of(item.groups, [](const OfferGroup& group) { return !group.assumes(); });
  if (!some_known) return;
  for (const OfferGroup& group : item.groups) {
    if (!group.assumes()) continue;
    item.notes.push_back("the packs " + packs_of(group) +
                         " are left out: no edible share (EP/AP) is known");
  }
  std::erase_if(item.groups, [](const OfferGroup& group) { return group.assumes(); });
}

/// Rows that no kept group holds, and that kinds of packs are not mixed.
void note_left_out(ItemPlan& item,
                   const std::vector<std::pair<const Offer*, std::string>>& left_out) {
  if (item.groups.empty()) return;
  for (const auto& [offer, reason] : left_out) {
    const bool kept = std::ranges::any_of(item.groups, [&](const OfferGroup& group) {
      return std::ranges::find(group.offers, offer) != group.offers.end();
    });
    if (!kept) item.notes.push_back("the pack " + offer->pack + " is left out: " + reason);
  }
  if (item.groups.size() > 1) {
    item.notes.emplace_back(
        "packs of unlike kinds are not mixed; the kind that comes cheapest is bought");
  }
}

/// The lines, and the facts their ways go by.
struct Wanted {
  const std::vector<Line>& lines;
  const std::vector<LineTerms>& terms;

  [[nodiscard]] const Catalog& catalog(std::size_t line) const { return *terms[line].catalog; }
};

/// Keeps the groups that every line has a way to; notes why where none is left.
void find_ways(ItemPlan& item, std::vector<OfferGroup> groups, const Wanted& wanted, bool strict) {
  std::vector<std::pair<const Offer*, std::string>> left_out;
  for (OfferGroup& group : groups) {
    try {
      for (const std::size_t line : item.lines) {
        group.ways.push_back(
            WayFinder(wanted.catalog(line), wanted.lines[line], strict).find(line, group.form));
      }
    } catch (const Error& error) {
      if (error.code() == "cost.stage") throw;
      if (item.problem.empty()) item.problem = error.what();
      for (const Offer* offer : group.offers) left_out.emplace_back(offer, error.what());
      continue;
    }
    item.groups.push_back(std::move(group));
  }
  keep_best_statement(item.groups);
  keep_known(item);
  note_left_out(item, left_out);
  for (OfferGroup& group : item.groups) group.covers = covers_of(group);
}

/// The item a price row belongs to. A name of several foods is nobody's but its own.
std::string key_of(const Catalog& catalog, const Offer& offer) {
  const bool tinned = std::ranges::any_of(
      offer.contents, [](const PackContent& content) { return is_tin(content.noun); });
  try {
    return read_food_phrase(catalog, offer.item, tinned).key();
  } catch (const Error&) {
    return "name " + plain_name(offer.item);
  }
}

/// The rows of a line's item; by a near name where it has none of its own.
struct RowsFound {
  const ItemRows* rows = nullptr;
  bool by_near = false;
};

/// A close relative without rows of its own is bought as the food it stands near.
RowsFound rows_for(const Wanted& wanted, std::size_t index, const NamedPrices& prices) {
  const Line& line = wanted.lines[index];
  const Catalog& catalog = wanted.catalog(index);
  if (const ItemRows* own = prices.rows(catalog, line.item_key)) return {own, false};
  const ItemRows* near = line.near ? prices.rows(catalog, "food " + line.food_id) : nullptr;
  return {near, near != nullptr};
}

std::vector<ItemPlan> items_of(const Wanted& wanted, const NamedPrices& prices) {
  using Together = std::tuple<std::string, std::string, std::vector<const Offer*>>;
  std::vector<ItemPlan> items;
  std::map<Together, std::size_t> places;
  for (std::size_t i = 0; i < wanted.lines.size(); ++i) {
    const Line& line = wanted.lines[i];
    if (!line.measured) continue;
    const ItemRows* rows = rows_for(wanted, i, prices).rows;
    Together together{line.item_key, wanted.terms[i].pool, {}};
    if (rows != nullptr) std::get<2>(together) = rows->offers;
    const auto [place, fresh] = places.emplace(std::move(together), items.size());
    if (fresh) items.push_back({line.food, {}, {}, {}, {}});
    items[place->second].lines.push_back(i);
  }
  return items;
}

std::string no_row_text(const std::string& item, const PriceBook& prices) {
  std::vector<std::string_view> names;
  for (const Offer& offer : prices.offers()) names.push_back(offer.item);
  const std::string hint = nearest_hint(nearest_names(item, names));
  return "no price row is for " + item + (hint.empty() ? "" : " (" + hint + ")");
}

void buy_item(ItemPlan& item, const NamedPrices& prices, const Wanted& wanted, bool strict) {
  const std::size_t first = item.lines.front();
  const Line& line = wanted.lines[first];
  if (line.several) {
    item.problem = "one amount is written for several foods, and their shares are not stated";
    return;
  }
  const RowsFound found = rows_for(wanted, first, prices);
  if (found.by_near) {
    item.notes.push_back("bought as " + wanted.catalog(first).food(line.food_id)->name +
                         ", since no price row is for " + item.item);
  }
  if (found.rows == nullptr) {
    item.problem = no_row_text(item.item, prices.book());
  } else {
    find_ways(item, found.rows->groups, wanted, strict);
  }
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
  return first == nullptr ? Unit::named(no_currency) : first->price.unit();
}

}  // namespace

bool OfferGroup::assumes() const {
  return std::ranges::any_of(ways, [](const LineWay& way) { return way.share_assumed; });
}

NamedPrices::NamedPrices(std::shared_ptr<const PriceBook> book,
                         const std::vector<std::shared_ptr<const Catalog>>& catalogs)
    : book_(std::move(book)), catalogs_(catalogs) {
  for (const auto& catalog : catalogs_) {
    const auto [known, fresh] = rows_.try_emplace(catalog.get());
    if (!fresh) continue;
    for (const Offer& offer : book_->offers()) {
      ItemRows& item = known->second[key_of(*catalog, offer)];
      group_offer(item.groups, offer);
      item.offers.push_back(&offer);
    }
  }
}

const ItemRows* NamedPrices::rows(const Catalog& catalog, const std::string& item_key) const {
  const RowsByKey& rows = rows_.at(&catalog);
  const auto found = rows.find(item_key);
  return found == rows.end() ? nullptr : &found->second;
}

Plan::Plan(const std::vector<Line>& lines, std::vector<LineTerms> terms,
           std::shared_ptr<const NamedPrices> prices, CostOptions options)
    : terms_(std::move(terms)), prices_(std::move(prices)), options_(options) {
  const Wanted wanted{lines, terms_};
  items_ = items_of(wanted, *prices_);
  for (ItemPlan& item : items_) buy_item(item, *prices_, wanted, options.strict);
  money_ = common_currency(items_);
}

bool Plan::currency_stated() const { return money_.symbol() != no_currency; }

}  // namespace scalepan
