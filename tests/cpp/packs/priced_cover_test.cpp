#include "packs/priced_cover.hpp"

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

using Taken = std::vector<std::pair<Rational, std::string>>;

PricedPack pack(const char* size, const char* price) { return {size, q(size), q(price)}; }

// Prices made up. With 3, 2, 1 and 0 of the large pack: 12.30, 12.10, 11.90 (holds 6.5 kg), 13.65.
TEST_CASE("priced covers: packs as written, price in money, leftover in the need's unit") {
  const PricedCover found =
      cover(q("6.3 kg"), std::vector{pack("2.5 kg", "4.10 EUR"), pack("1 kg", "1.95 EUR")});
  CHECK(found.packs == Taken{{1, "2.5 kg"}, {4, "1 kg"}});
  CHECK(found.price == q("11.90 EUR"));
  CHECK(found.leftover == q("200 g"));
  CHECK(found.leftover.unit() == u("kg"));
}

TEST_CASE("priced covers: packs not taken are not listed, and rows keep their order") {
  const PricedCover found =
      cover(q("600 g"), std::vector{pack("500 g", "1.00 GBP"), pack("200 g", "0.45 GBP")});
  CHECK(found.packs == Taken{{3, "200 g"}});
  CHECK(found.price == q("1.35 GBP"));
  CHECK(cover(q("0 g"), std::vector{pack("500 g", "1.00 GBP")}).packs.empty());
}

TEST_CASE("priced covers: need and packs in unlike units of one dimension") {
  // Two pounds are 907.18474 g.
  const PricedCover found =
      cover(q("2 lb AP"), std::vector{pack("500 g AP", "1.00 GBP"), pack("1 lb AP", "1.10 GBP")});
  CHECK(found.packs == Taken{{2, "500 g AP"}});
  CHECK(found.leftover.to(u("g")).value() == 1000 - 2 * Rational(45359237, 100000));
}

TEST_CASE("priced covers: a pack of another stage or kind is refused with both named") {
  CHECK(thrown_by([] {
          return cover(q("5 kg EP"), std::vector{pack("1 kg AP", "2.10 GBP")}).price;
        }) == Thrown{"cover.dimension",
                     "a pack cannot meet the need: 5 kg EP and 1 kg AP: weight EP and weight AP; "
                     "stages EP (edible portion) and AP (as purchased)",
                     "a share links the stages: multiply by it one way, divide by it the other"});
  CHECK(thrown_by([] {
          return cover(q("5 kg"), std::vector{pack("1 kg", "2.10 GBP"), pack("6 piece", "1 GBP")})
              .price;
        }) == Thrown{"cover.dimension",
                     "a pack cannot meet the need: 5 kg and 6 piece: weight and count"});
}

TEST_CASE("priced covers: prices must be money of one currency") {
  CHECK(thrown_by([] { return cover(q("5 kg"), std::vector{pack("1 kg", "2.10")}).price; }) ==
        Thrown{"cover.money", "the price 2.1 is not in money",
               "write an ISO 4217 code after it: 4.10 EUR"});
  CHECK(thrown_by([] {
          return cover(q("5 kg"), std::vector{pack("1 kg", "2 GBP"), pack("2 kg", "3 EUR")}).price;
        }) == Thrown{"cover.money",
                     "prices meet in two currencies: 2 GBP and 3 EUR: money in GBP and money in "
                     "EUR"});
  CHECK(thrown_by([] { return cover(q("5 kg"), {}).price; }).code == "cover.no_packs");
}

}  // namespace
}  // namespace scalepan
