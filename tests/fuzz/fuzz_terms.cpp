#include <algorithm>
#include <array>
#include <utility>

#include "fuzz.hpp"
#include "packs/cover_function.hpp"
#include "packs/stock.hpp"
#include "packs/ways_to_buy.hpp"

using namespace scalepan;

namespace {

/// Fields parted by bars: pack, price, offer, least, limit, tax, deposit, use-by day.
std::array<std::string, 8> fields_of(std::string_view text) {
  std::array<std::string, 8> fields;
  for (std::string& field : fields) {
    const std::size_t end = std::min(text.find('|'), text.size());
    field = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return fields;
}

PlacedText field(std::string text) { return {std::move(text), {}}; }

/// Terms never make a cover dearer than packs at their price, where any number of those is sold.
void expect_sound(const Offer& offer) {
  const Rational& size = offer.pack.contents.front().amount.coherent();
  std::vector<Purchase> purchases;
  for (const WayToBuy& way : ways_to_buy(offer, size, 0, Taxes::with)) {
    purchases.push_back(way.purchase);
  }
  const CoverFunction covers(purchases);
  const Cover cover = covers.at(size);
  fuzz::expect(cover.total >= size && cover.price.sign() >= 0);
  fuzz::expect(cover.counts.front() >= offer.terms.least);
  if (offer.terms.limit) fuzz::expect(cover.counts.front() <= *offer.terms.limit);
  const bool plain = offer.terms.least == Rational(1);
  const Rational single = with_taxes(offer.price.coherent(), offer, Taxes::with);
  if (plain) fuzz::expect(cover.price <= single);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto fields = fields_of(fuzz::text_of(data, size));
  fuzz::reads_or_refuses([&] {
    PriceRow row;
    row.item = field("beans");
    row.sold_as = field("AP");
    row.pack = field(fields[0]);
    row.price = field(fields[1]);
    row.offer = field(fields[2]);
    row.least = field(fields[3]);
    row.limit = field(fields[4]);
    row.tax = field(fields[5]);
    row.deposit = field(fields[6]);
    row.keeps = field("no");
    expect_sound(read_offer(row, Measures::us));
  });
  fuzz::reads_or_refuses([&] {
    StockRow row;
    row.item = field("beans");
    row.stage = field("AP");
    row.amount = field(fields[0]);
    row.value = field(fields[1]);
    row.use_by = field(fields[7]);
    const StockItem stock = read_stock_item(row, Measures::us);
    fuzz::expect(stock.amount.contents.front().amount.coherent().sign() > 0);
    fuzz::expect(stock.value.coherent().sign() >= 0);
  });
  return 0;
}
