// Offers: one pack of one item at its price and terms, read from the fields of a price book row.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exact/error.hpp"
#include "measure/quantity.hpp"
#include "packs/offer_terms.hpp"
#include "packs/pack_text.hpp"
#include "packs/price_number.hpp"
#include "packs/written_row.hpp"

namespace scalepan {

/// Whether what is left of a pack can be kept, and for how many days if that is known.
struct Keeping {
  bool keeps = false;
  std::optional<int> days;

  friend bool operator==(const Keeping&, const Keeping&) = default;
};

/// `yes`, `no`, `3 days`.
[[nodiscard]] std::string text_of(const Keeping& keeping);

/// A row as it stands in the file. Empty texts stand for fields that are not there.
struct PriceRow {
  PlacedText item;
  PlacedText sold_as;
  PlacedText pack;
  PlacedText price;
  PlacedText currency;
  PlacedText keeps;
  PlacedText shop;
  PlacedText date;
  PlacedText offer{};  // terms: `3 for 4.50`
  PlacedText least{};  // packs sold at once, at least
  PlacedText limit{};  // packs a customer may buy
  PlacedText tax{};
  PlacedText deposit{};  // money paid on each pack and given back for it
};

/// The columns of a price book.
inline constexpr std::array<WrittenField<PriceRow>, 13> price_fields{{
    {"item", &PriceRow::item},
    {"sold_as", &PriceRow::sold_as},
    {"pack", &PriceRow::pack},
    {"price", &PriceRow::price},
    {"currency", &PriceRow::currency},
    {"keeps", &PriceRow::keeps},
    {"shop", &PriceRow::shop},
    {"date", &PriceRow::date},
    {"offer", &PriceRow::offer},
    {"least", &PriceRow::least},
    {"limit", &PriceRow::limit},
    {"tax", &PriceRow::tax},
    {"deposit", &PriceRow::deposit},
}};

struct Offer {
  std::string item;
  Stage sold_as = Stage::as_purchased;
  PackText pack;
  Quantity price;  // of one pack
  OfferTerms terms;
  std::optional<PriceTax> tax;
  Quantity deposit;  // on one pack, not part of the price
  Keeping keeping;
  std::string shop;
  std::string date;  // ISO 8601, or empty
  Place place;
  std::shared_ptr<const WrittenRow> written;
};

/// Reads one row. `measures` says which pint is meant. A price without a currency is held in XXX,
/// which ISO 4217 keeps for that. Throws the errors of `read_pack`, `read_offer_terms` and
/// `read_pack_number`, `price.missing`, `price.unreadable`, `price.negative`, `price.currency`,
/// `price.tax`, `price.keeps` and `price.date`, with their places.
[[nodiscard]] Offer read_offer(const PriceRow& row, Measures measures);

}  // namespace scalepan
