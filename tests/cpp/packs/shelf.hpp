// Price rows as a file has them, each field with a place of its own.
#pragma once

#include <string>

#include "measure/measuring.hpp"
#include "packs/offer.hpp"

namespace scalepan {

struct Shelf {
  std::string item;
  std::string sold_as;
  std::string pack;
  std::string price;
  std::string keeps = "yes";
  std::string currency{};
  std::string shop{};
  std::string date{};
};

/// Columns 1, 21, 41 ... of the given line of prices.csv.
inline PriceRow row_of(const Shelf& shelf, int line = 2) {
  const auto placed = [&](const std::string& text, int field) {
    return PlacedText{text, Place{"prices.csv", line, 1 + 20 * field, {}}};
  };
  return {placed(shelf.item, 0),  placed(shelf.sold_as, 1),  placed(shelf.pack, 2),
          placed(shelf.price, 3), placed(shelf.currency, 4), placed(shelf.keeps, 5),
          placed(shelf.shop, 6),  placed(shelf.date, 7)};
}

inline Offer offer_of(const Shelf& shelf, int line = 2) {
  return read_offer(row_of(shelf, line), Measures::unstated);
}

}  // namespace scalepan
