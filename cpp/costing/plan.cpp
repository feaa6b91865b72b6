#include "costing/plan.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

#include "costing/on_hand.hpp"
#include "exact/error.hpp"
#include "measure/currency.hpp"
#include "measure/nearest.hpp"

namespace scalepan {

namespace {

void group_offer(std::vector<OfferGroup>& groups, const Offer& offer) {
  for (const PackContent& content : offer.pack.contents) {
    OfferGroup& group = group_of(groups, content);
    group.offers.push_back(&offer);
    group.contents.push_back(content.amount);
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
  if (best.empty()) {  // only on hand
    std::ranges::stable_sort(groups, {}, leaning_of);
    return;
  }
  std::erase_if(groups, [](const OfferGroup& group) { return group.offers.empty(); });
}

void add_covers(OfferGroup& group, Taxes taxes) {
  std::vector<Purchase> purchases;
  for (std::size_t i = 0; i < group.offers.size(); ++i) {
    for (WayToBuy& way : ways_to_buy(*group.offers[i], group.contents[i].coherent(), i, taxes)) {
      purchases.push_back(way.purchase);
      group.ways_to_buy.push_back(std::move(way));
    }
  }
  if (purchases.empty()) return;
  group.covers = located(group.offers.front()->place, {},
                         [&] { return std::make_shared<const CoverFunction>(purchases); });
}

std::string packs_of(const OfferGroup& group) {
  std::string packs;
  for (const Offer* offer : group.offers) packs += (packs.empty() ? "" : ", ") + offer->pack.text;
  return packs;
}

/// What is known goes before what is assumed.
void keep_known(ItemPlan& item) {
  const bool some_known =
      std::ranges::any_of(item.groups, [](const OfferGroup& group) { return !group.assumes(); });
  if (!some_known) return;
  for (const OfferGroup& group : item.groups) {
    if (!group.assumes() || group.offers.empty()) continue;
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
    if (!kept) item.notes.push_back("the pack " + offer->pack.text + " is left out: " + reason);
  }
  if (item.groups.size() > 1 && !item.groups.front().offers.empty()) {
    item.notes.emplace_back(
        "packs of unlike kinds are not mixed; the kind that comes cheapest is bought");
  }
}

/// What one of those that an offer counts holds, coherently; nothing where the pack does not say.
std::optional<Rational> held_by_one(const Offer& offer, const Quantity& pieces) {
  for (const PackContent& content : offer.pack.contents) {
    if (content.amount.dimension().without_stages() == pieces.dimension().without_stages())
      continue;
    return content.amount.coherent() / pieces.coherent();
  }
  return std::nullopt;
}

/// `2 tins` may be of any size that is sold: the cheapest is bought, and that is told.
void note_unlike_containers(ItemPlan& item, const std::vector<Line>& lines) {
  const auto counts = [&](std::size_t line) { return !lines[line].container.empty(); };
  if (std::ranges::none_of(item.lines, counts)) return;
  for (const OfferGroup& group : item.groups) {
    if (group.form.kind != Kind::count) continue;
    std::set<Rational> held;
    for (std::size_t i = 0; i < group.offers.size(); ++i) {
      if (const auto one = held_by_one(*group.offers[i], group.contents[i])) held.insert(*one);
    }
    if (held.size() < 2) continue;
    item.notes.push_back("what is counted is sold in unlike sizes, and the cheapest is bought (" +
                         packs_of(group) + "): say which is meant, as 2 x 400 g tins");
  }
}

/// The lines, the facts their ways go by, and what a cost is asked with.
struct Wanted {
  const std::vector<Line>& lines;
  const std::vector<LineTerms>& terms;
  const NamedPrices& prices;
  const CostOptions& options;

  [[nodiscard]] const Catalog& catalog(std::size_t line) const { return *terms[line].catalog; }
};

/// Keeps the groups that every line has a way to; notes why where none is left.
void find_ways(ItemPlan& item, std::vector<OfferGroup> groups, const Wanted& wanted) {
  std::vector<std::pair<const Offer*, std::string>> left_out;
  for (OfferGroup& group : groups) {
    try {
      for (const std::size_t line : item.lines) {
        group.ways.push_back(
            WayFinder(wanted.catalog(line), wanted.lines[line], wanted.options.strict)
                .find(line, group.form));
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
  note_unlike_containers(item, wanted.lines);
  for (OfferGroup& group : item.groups) add_covers(group, wanted.options.taxes);
}

/// One pack of one shop, by whatever name the rows know the item.
bool same_pack(const Offer& a, const Offer& b) {
  return a.shop == b.shop && a.sold_as == b.sold_as &&
         a.pack.contents.front().noun == b.pack.contents.front().noun &&
         a.pack.contents.front().amount.dimension() == b.pack.contents.front().amount.dimension() &&
         a.pack.contents.front().amount.coherent() == b.pack.contents.front().amount.coherent();
}

/// The row that takes its place: a newer one of the same pack under another name. The price book
/// keeps the newest row of one name by itself.
const Offer* newer_row(const Offer& offer, const std::vector<const Offer*>& offers) {
  const auto newer = std::ranges::find_if(offers, [&](const Offer* other) {
    return same_pack(offer, *other) && offer.item != other->item && offer.date < other->date;
  });
  return newer == offers.end() ? nullptr : *newer;
}

/// Meant of tap water, a slip of the pen elsewhere.
void note_free(const std::vector<const Offer*>& offers, ItemRows& rows) {
  for (const Offer* offer : offers) {
    if (!offer->price.coherent().is_zero()) continue;
    rows.notes.push_back("the pack " + offer->pack.text + " costs nothing: its price is 0");
  }
}

ItemRows rows_of(std::vector<const Offer*> offers) {
  ItemRows rows;
  note_free(offers, rows);
  const bool one_name = std::ranges::all_of(
      offers, [&](const Offer* offer) { return offer->item == offers.front()->item; });
  for (const Offer* offer : offers) {
    const Offer* newer = one_name ? nullptr : newer_row(*offer, offers);
    if (newer == nullptr) {
      group_offer(rows.groups, *offer);
    } else {
      rows.notes.push_back("the pack " + offer->pack.text + " of " + offer->item +
                           " is left out: the row of " + newer->item + " is newer");
    }
  }
  rows.offers = std::move(offers);
  return rows;
}

/// The rows of a line's item; by a near name where it has none of its own.
struct RowsFound {
  const ItemRows* rows = nullptr;
  bool by_near = false;
};

/// A close relative without rows of its own is bought as the food it stands near.
RowsFound rows_for(const Wanted& wanted, std::size_t index) {
  const Line& line = wanted.lines[index];
  const Catalog& catalog = wanted.catalog(index);
  if (const ItemRows* own = wanted.prices.rows(catalog, line.item_key)) return {own, false};
  const ItemRows* near = line.near ? wanted.prices.rows(catalog, "food " + line.food_id) : nullptr;
  return {near, near != nullptr};
}

std::vector<ItemPlan> items_of(const Wanted& wanted) {
  using Together = std::tuple<std::string, std::string, std::vector<const Offer*>>;
  std::vector<ItemPlan> items;
  std::map<Together, std::size_t> places;
  for (std::size_t i = 0; i < wanted.lines.size(); ++i) {
    const Line& line = wanted.lines[i];
    if (!line.measured) continue;
    const ItemRows* rows = rows_for(wanted, i).rows;
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

/// What is on hand by the names of each catalogue. An amount goes to one item only, the first.
class StockOfPlan {
 public:
  explicit StockOfPlan(const CostOptions& options) : options_(options) {}

  StockItems take(const Catalog& catalog, const Line& line, ItemPlan& item) {
    if (options_.stock == nullptr) return {};
    const auto named =
        by_catalog_.try_emplace(&catalog, catalog, *options_.stock, options_.day).first;
    StockItems usable = named->second.usable(line.item_key, item);
    if (line.near) named->second.note_relative("food " + line.food_id, item);
    std::erase_if(usable, [&](const StockItem* stock) { return !taken_.insert(stock).second; });
    return usable;
  }

 private:
  const CostOptions& options_;
  std::map<const Catalog*, StockByItem> by_catalog_;
  std::set<const StockItem*> taken_;
};

/// The ways to buy it, and the ways from what is on hand.
void buy_item(ItemPlan& item, StockOfPlan& stock, const Wanted& wanted) {
  const std::size_t first = item.lines.front();
  const Line& line = wanted.lines[first];
  if (line.several) {
    item.problem = "one amount is written for several foods, and their shares are not stated";
    return;
  }
  const Catalog& catalog = wanted.catalog(first);
  const StockItems on_hand = stock.take(catalog, line, item);
  const RowsFound found = rows_for(wanted, first);
  if (found.by_near) {
    item.notes.push_back("bought as " + catalog.food(line.food_id)->name +
                         ", since no price row is for " + item.item);
  }
  if (found.rows != nullptr) {
    item.notes.insert(item.notes.end(), found.rows->notes.begin(), found.rows->notes.end());
    find_ways(item, found.rows->groups, wanted);
  } else {
    item.problem = no_row_text(item.item, wanted.prices.book());
  }
  if (item.groups.empty()) find_ways(item, groups_on_hand(on_hand), wanted);
  add_on_hand(item, on_hand, WayFinder(catalog, line, wanted.options.strict));
}

/// Money that meets in one costing, and where it stands.
struct Stated {
  const Quantity& money;
  const std::string& item;
  const Place& place;
};

std::vector<Stated> money_in(const std::vector<ItemPlan>& items) {
  std::vector<Stated> stated;
  for (const ItemPlan& item : items) {
    for (const OfferGroup& group : item.groups) {
      for (const Offer* offer : group.offers) {
        stated.push_back({offer->price, offer->item, offer->place});
      }
    }
  }
  for (const ItemPlan& item : items) {
    for (const OfferGroup& group : item.groups) {
      for (const OnHand& held : group.on_hand) {
        if (held.value.is_zero()) continue;
        stated.push_back({held.stock->value, held.stock->item, held.stock->place});
      }
    }
  }
  return stated;
}

bool in_no_currency(const Stated& stated) { return stated.money.unit().symbol() == no_currency; }

std::string currency_text(const Stated& stated) {
  return in_no_currency(stated) ? "no currency" : stated.money.unit().symbol();
}

Unit common_currency(const std::vector<ItemPlan>& items) {
  const std::vector<Stated> stated = money_in(items);
  if (stated.empty()) return Unit::named(no_currency);
  const Stated& first = stated.front();
  for (const Stated& other : stated) {
    if (other.money.dimension() == first.money.dimension()) continue;
    const bool unnamed = in_no_currency(first) || in_no_currency(other);
    fail("cost.currencies",
         "prices in " + currency_text(first) + " (" + first.item + ") and in " +
             currency_text(other) + " (" + other.item + ") meet in one costing",
         unnamed ? "name the currency in every row, or once for all rows that name none"
                 : "use one currency",
         other.place);
  }
  return first.money.unit();
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
    std::map<std::string, std::vector<const Offer*>> offers;
    for (const Offer& offer : book_->offers()) {
      offers[item_key(*catalog, offer.item, offer.pack)].push_back(&offer);
    }
    for (auto& [key, of_item] : offers) known->second.emplace(key, rows_of(std::move(of_item)));
  }
}

const ItemRows* NamedPrices::rows(const Catalog& catalog, const std::string& item_key) const {
  const RowsByKey& rows = rows_.at(&catalog);
  const auto found = rows.find(item_key);
  return found == rows.end() ? nullptr : &found->second;
}

Plan::Plan(const std::vector<Line>& lines, std::vector<LineTerms> terms,
           std::shared_ptr<const NamedPrices> prices, CostOptions options)
    : terms_(std::move(terms)), prices_(std::move(prices)), options_(std::move(options)) {
  const Wanted wanted{lines, terms_, *prices_, options_};
  items_ = items_of(wanted);
  StockOfPlan stock(options_);
  for (ItemPlan& item : items_) buy_item(item, stock, wanted);
  money_ = common_currency(items_);
}

std::vector<const Offer*> Plan::offers(const std::vector<Line>& lines) const {
  const Wanted wanted{lines, terms_, *prices_, options_};
  std::set<const Offer*> used;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const ItemRows* rows = rows_for(wanted, i).rows;
    if (rows != nullptr) used.insert(rows->offers.begin(), rows->offers.end());
  }
  std::vector<const Offer*> offers;
  for (const Offer& offer : prices_->book().offers()) {
    if (used.contains(&offer)) offers.push_back(&offer);
  }
  return offers;
}

bool Plan::currency_stated() const { return money_.symbol() != no_currency; }

}  // namespace scalepan
