#include "packs/stock.hpp"

#include <algorithm>
#include <utility>

#include "packs/fields.hpp"
#include "packs/price_number.hpp"

namespace scalepan {

Stock::Stock(std::vector<StockItem> items) : items_(std::move(items)) {
  std::ranges::stable_sort(items_, [](const StockItem& a, const StockItem& b) {
    if (a.use_by.empty() || b.use_by.empty()) return !a.use_by.empty() && b.use_by.empty();
    return a.use_by < b.use_by;
  });
}

StockItem read_stock_item(const StockRow& row, Measures measures) {
  expect_there(row.item, "item");
  expect_there(row.stage, "stage");
  expect_there(row.amount, "amount");
  StockItem stock;
  stock.item = trimmed(row.item.text);
  stock.place = row.item.place;
  stock.stage =
      read_field(row.stage, [](std::string_view text) { return read_stage(text, "stage"); });
  stock.amount = read_field(row.amount, [&](std::string_view text) {
    return read_pack(text, {stock.stage, measures, stock.item});
  });
  if (stock.amount.loose) {
    fail("price.pack", "an amount on hand has no steps", "write the amount alone, such as 350 g",
         row.amount.place);
  }
  stock.valued = is_there(row.value);
  const Rational value = stock.valued ? read_field(row.value, read_price_number) : Rational(0);
  stock.value = Quantity(value, read_field(row.currency, read_currency));
  stock.use_by = read_field(row.use_by, date_text);
  stock.written = written_row<StockRow>(row, stock_fields, measures);
  return stock;
}

}  // namespace scalepan
