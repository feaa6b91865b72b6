// Offers: one pack of one item at one price, read from the fields of a price book row.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exact/error.hpp"
#include "measure/quantity.hpp"

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
};

/// What a pack holds at one stage. `noun` says what a count counts where that is not the item
/// itself: `head`, `bunch`, `tin`.
struct PackContent {
  Quantity amount;
  std::string noun;
};

struct Offer {
  std::string item;
  Stage sold_as = Stage::as_purchased;
  std::string pack;  // as written
  // At `sold_as` first, then at other stages the row states, then as so many containers.
  std::vector<PackContent> contents;
  Quantity price;  // money
  Keeping keeping;
  std::string shop;
  std::string date;  // ISO 8601, or empty
  Place place;
};

/// A day as ISO 8601 has it, `2026-11-24`, without outer spaces; empty stays empty.
/// Throws `price.date` for another form and for days the calendar does not have.
[[nodiscard]] std::string date_text(std::string_view text);

/// Reads one row. A pack is an amount, a word for the container, and in brackets what it holds at
/// another stage: `1 kg`, `6`, `3 heads`, `400 g tin (240 g drained)`. A bare number counts pieces.
/// `measures` says which pint is meant. A price without a currency is held in XXX, which ISO 4217
/// keeps for that. Throws the errors of the amount reader, `price.missing`, `price.stage`,
/// `price.pack`, `price.negative`, `price.currency`, `price.keeps` and `price.date`, with their
/// places.
[[nodiscard]] Offer read_offer(const PriceRow& row, Measures measures);

}  // namespace scalepan
