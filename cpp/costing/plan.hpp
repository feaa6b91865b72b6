// The plan: which offers meet which lines, and by which facts. It holds for every size of a
// recipe, so that a curve asks only for needs and covers.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "food/convert.hpp"
#include "packs/cover_function.hpp"
#include "packs/price_book.hpp"
#include "packs/stock.hpp"
#include "packs/ways_to_buy.hpp"
#include "recipe/recipe.hpp"

namespace scalepan {

/// How one line's amount becomes a need in the packs' unit and stage.
struct LineWay {
  std::size_t line = 0;  // of those planned for
  Conversion conversion;
  bool share_assumed = false;  // no edible share is known, so all of it was taken
};

/// What is on hand of an item, in the unit of a group's packs.
struct OnHand {
  const StockItem* stock = nullptr;
  Rational amount;
  Rational value;
  bool share_assumed = false;  // no edible share is known, so all of it was taken
};

/// Offers that state their content in one kind and stage, and the ways of the lines to it. None
/// where the item is only on hand.
struct OfferGroup {
  Form form;
  Unit unit;  // needs are shown in that of the first pack
  std::vector<const Offer*> offers;
  std::vector<Quantity> contents;  // one an offer
  std::vector<LineWay> ways;
  std::vector<OnHand> on_hand;                  // in the order of use
  std::vector<WayToBuy> ways_to_buy;            // one a purchase of `covers`
  std::shared_ptr<const CoverFunction> covers;  // null where there are no offers

  [[nodiscard]] bool assumes() const;
};

/// Lines of one food that are bought together, and the ways to buy it.
struct ItemPlan {
  std::string item;  // as the first line names it
  std::vector<std::size_t> lines;
  std::vector<OfferGroup> groups;  // empty where it cannot be priced
  std::string problem;             // why it cannot
  std::vector<std::string> notes;  // price rows left out, and for what reason
};

struct CostOptions {
  bool strict = false;  // an unknown edible share is an error
  Taxes taxes = Taxes::with;
  std::shared_ptr<const Stock> stock{};  // used before anything is bought
  std::string day{};  // ISO 8601: what had to be used before it stays; empty where not known
};

/// What the price book has of one item.
struct ItemRows {
  std::vector<OfferGroup> groups;  // without ways or covers
  std::vector<const Offer*> offers;
  std::vector<std::string> notes;  // rows left out, and for what reason
};

/// A price book by the names of each catalogue that lines go by. Never changes, so that plans share
/// it.
class NamedPrices {
 public:
  NamedPrices(std::shared_ptr<const PriceBook> book,
              const std::vector<std::shared_ptr<const Catalog>>& catalogs);

  [[nodiscard]] const PriceBook& book() const { return *book_; }
  [[nodiscard]] std::shared_ptr<const PriceBook> shared_book() const { return book_; }
  /// By one of the catalogues; null where no row is for the item.
  [[nodiscard]] const ItemRows* rows(const Catalog& catalog, const std::string& item_key) const;

 private:
  using RowsByKey = std::map<std::string, ItemRows>;

  std::shared_ptr<const PriceBook> book_;
  std::map<const Catalog*, RowsByKey> rows_;
  std::vector<std::shared_ptr<const Catalog>> catalogs_;  // so that none is another by its address
};

/// What a line is bought by, beside its own words.
struct LineTerms {
  std::shared_ptr<const Catalog> catalog;  // its facts, and its names for the price rows
  std::string pool{};  // lines of one item are bought together where this is the same
};

class Plan {
 public:
  /// One entry of `terms` a line, each by one of the catalogues of the prices. Lines whose
  /// catalogues find unlike price rows for an item are not bought together. Throws `cost.stage`,
  /// naming both stages, for an unknown edible share where `strict`; `cost.currencies` where the
  /// offers are in more than one; and the errors of the covers.
  Plan(const std::vector<Line>& lines, std::vector<LineTerms> terms,
       std::shared_ptr<const NamedPrices> prices, CostOptions options);

  [[nodiscard]] const std::vector<ItemPlan>& items() const { return items_; }
  [[nodiscard]] std::shared_ptr<const NamedPrices> prices() const { return prices_; }
  [[nodiscard]] const CostOptions& options() const { return options_; }
  /// One a line.
  [[nodiscard]] const std::vector<LineTerms>& terms() const { return terms_; }
  /// The unit all money is in.
  [[nodiscard]] Unit money() const { return money_; }
  [[nodiscard]] bool currency_stated() const;
  /// The rows for its lines, those left out among them, in the order of the price book.
  [[nodiscard]] std::vector<const Offer*> offers(const std::vector<Line>& lines) const;
  [[nodiscard]] Taxes taxes() const { return options_.taxes; }

 private:
  std::vector<LineTerms> terms_;  // the facts on the ways are those of their catalogues
  std::shared_ptr<const NamedPrices> prices_;
  CostOptions options_;
  std::vector<ItemPlan> items_;
  Unit money_;
};

}  // namespace scalepan
