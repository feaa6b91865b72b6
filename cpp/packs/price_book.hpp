// The price book: offers, by shop and date.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "packs/offer.hpp"

namespace scalepan {

class PriceBook {
 public:
  PriceBook() = default;
  /// Throws `price.duplicate` where two rows give one item, stage, pack, shop and date.
  explicit PriceBook(std::vector<Offer> offers);

  [[nodiscard]] const std::vector<Offer>& offers() const { return offers_; }

  /// What holds on a day: of each item, stage, pack and shop the newest row of that day or before
  /// (rows without a date are older than any). An empty date takes the newest of all; an empty
  /// list of shops takes every shop. Throws `price.shop` for a shop that no row names, and
  /// `price.date`.
  [[nodiscard]] PriceBook on(std::string_view day, std::span<const std::string> shops = {}) const;

 private:
  std::vector<Offer> offers_;
};

/// The rows of both. Throws `price.duplicate` as the constructor does.
[[nodiscard]] PriceBook operator+(const PriceBook& first, const PriceBook& second);

}  // namespace scalepan
