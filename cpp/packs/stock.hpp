// Stock: amounts on hand, what they are worth and until when they may be used.
#pragma once

#include <array>
#include <memory>
#include <string>
#include <vector>

#include "exact/error.hpp"
#include "packs/pack_text.hpp"
#include "packs/written_row.hpp"

namespace scalepan {

/// A row as it stands in the file. Empty texts stand for fields that are not there.
struct StockRow {
  PlacedText item;
  PlacedText stage;
  PlacedText amount;
  PlacedText value;
  PlacedText currency;
  PlacedText use_by;
};

/// The columns of a file of what is on hand.
inline constexpr std::array<WrittenField<StockRow>, 6> stock_fields{{
    {"item", &StockRow::item},
    {"stage", &StockRow::stage},
    {"amount", &StockRow::amount},
    {"value", &StockRow::value},
    {"currency", &StockRow::currency},
    {"use_by", &StockRow::use_by},
}};

struct StockItem {
  std::string item;
  Stage stage = Stage::as_purchased;
  PackText amount;
  Quantity value;  // money; nothing where the row states none
  bool valued = false;
  std::string use_by;  // ISO 8601, or empty
  Place place;
  std::shared_ptr<const WrittenRow> written;
};

class Stock {
 public:
  Stock() = default;
  /// In the order of use: what must be used first comes first, what keeps comes last.
  explicit Stock(std::vector<StockItem> items);

  [[nodiscard]] const std::vector<StockItem>& items() const { return items_; }

 private:
  std::vector<StockItem> items_;
};

/// Reads one row; an amount is written as a pack is. Throws the errors of `read_pack`,
/// `price.missing`, `price.stage`, `price.unreadable`, `price.negative`, `price.currency` and
/// `price.date`, with their places.
[[nodiscard]] StockItem read_stock_item(const StockRow& row, Measures measures);

}  // namespace scalepan
