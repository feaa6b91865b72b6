#include "packs/price_book.hpp"

#include "packs/shelf.hpp"

namespace scalepan {
namespace {

Shelf leeks(const std::string& price, const std::string& shop = "", const std::string& date = "") {
  return {"leeks", "AP", "1 kg", price, "yes", "GBP", shop, date};
}

PriceBook book_of(const std::vector<Shelf>& shelves) {
  std::vector<Offer> offers;
  for (const Shelf& shelf : shelves) {
    offers.push_back(offer_of(shelf, static_cast<int>(offers.size()) + 2));
  }
  return PriceBook(std::move(offers));
}

/// Prices of the rows that hold, in pounds, in row order.
std::vector<Rational> prices(const PriceBook& book) {
  std::vector<Rational> all;
  for (const Offer& offer : book.offers()) all.push_back(offer.price.value());
  return all;
}

using Prices = std::vector<Rational>;

// Shops and prices made up.
TEST_CASE("price book: the newest row of the day or before holds") {
  const PriceBook book = book_of({leeks("1"), leeks("3", "", "2026-03-01"),
                                  leeks("2", "", "2026-02-01"), leeks("4", "", "2026-04-01")});
  CHECK(prices(book.on("2026-01-31")) == Prices{1});
  CHECK(prices(book.on("2026-02-01")) == Prices{2});
  CHECK(prices(book.on("2026-03-31")) == Prices{3});
  CHECK(prices(book.on("2027-01-01")) == Prices{4});
  CHECK(prices(book.on("")) == Prices{4});
}

TEST_CASE("price book: a row that begins later does not hold yet") {
  CHECK(book_of({leeks("1", "", "2026-03-01")}).on("2026-02-28").offers().empty());
}

TEST_CASE("price book: two that are joined hold as one, and a pack of one day only once") {
  const PriceBook market = book_of({leeks("1", "market", "2026-02-01"), leeks("2", "market")});
  const PriceBook store = book_of({leeks("3", "store"), leeks("4", "market", "2026-03-01")});
  const PriceBook both = market + store;
  CHECK(prices(both) == Prices{1, 2, 3, 4});
  CHECK(prices(both.on("2026-02-28")) == Prices{1, 3});
  CHECK(prices(both.on("")) == Prices{3, 4});
  CHECK(prices(market) == Prices{1, 2});
  CHECK(thrown_by([&] { return (both + market).offers().size(); }) ==
        Thrown{"price.duplicate",
               "the pack 1 kg of leeks is priced twice, here and at prices.csv:2:1",
               "give the rows different shops or dates, or take one out"});
}

TEST_CASE("price book: items, packs and shops hold side by side, in row order") {
  Shelf half = leeks("5");
  half.pack = "500 g";
  Shelf onions = leeks("6");
  onions.item = "onions";
  const PriceBook book =
      book_of({leeks("1", "Hill Farm", "2026-01-01"), half, leeks("2", "Quay Stores", "2025-01-01"),
               onions, leeks("3", "Hill Farm", "2025-06-01")});
  CHECK(prices(book.on("2026-06-01")) == Prices{1, 5, 2, 6});
  CHECK(prices(book.on("2025-06-30")) == Prices{5, 2, 6, 3});
}

TEST_CASE("price book: only the shops asked for") {
  const PriceBook book = book_of({leeks("1", "Hill Farm"), leeks("2", "Quay Stores"), leeks("3")});
  CHECK(prices(book.on("", std::vector<std::string>{"Quay Stores"})) == Prices{2});
  CHECK(prices(book.on("", std::vector<std::string>{"Quay Stores", "Hill Farm"})) == Prices{1, 2});
  CHECK(thrown_by([&] {
          return book.on("", std::vector<std::string>{"Hill Fram"}).offers().size();
        }) == Thrown{"price.shop", "no row is of the shop \"Hill Fram\"", "nearest: Hill Farm"});
}

TEST_CASE("price book: one pack priced twice is refused with both places") {
  try {
    static_cast<void>(book_of({leeks("1", "Hill Farm"), leeks("2"), leeks("3", "Hill Farm")}));
    FAIL("no error was thrown");
  } catch (const Error& error) {
    CHECK(error.code() == "price.duplicate");
    CHECK(
        std::string(error.what()) ==
        "prices.csv:4:1: the pack 1 kg of leeks is priced twice, here and at prices.csv:2:1 (give "
        "the rows different shops or dates, or take one out)");
  }
  CHECK(book_of({leeks("1"), leeks("2", "", "2026-01-01"), leeks("3", "Hill Farm")})
            .offers()
            .size() == 3);
}

}  // namespace
}  // namespace scalepan
