#include "packs/offer.hpp"

#include "packs/shelf.hpp"

namespace scalepan {
namespace {

/// What a pack holds as `amount` and, behind it in brackets, what a count counts.
using Contents = std::vector<std::string>;

Contents contents(const std::string& sold_as, const std::string& pack,
                  Measures measures = Measures::unstated) {
  Contents texts;
  for (const PackContent& content :
       read_offer(row_of({"leeks", sold_as, pack, "1"}), measures).pack.contents) {
    const Quantity amount = content.amount.to(Unit::coherent(content.amount.dimension()));
    texts.push_back(amount.text() + (content.noun.empty() ? "" : " (" + content.noun + ")"));
  }
  return texts;
}

TEST_CASE("offers: a pack is an amount at the stage it is sold at") {
  CHECK(contents("AP", "1 kg") == Contents{"1000 g AP"});
  CHECK(contents("AP", "2 x 400 g") == Contents{"800 g AP"});
  CHECK(contents("EP", "250 g") == Contents{"250 g EP"});
}

TEST_CASE("offers: a pack with a word for its container is also so many containers") {
  CHECK(contents("AP", "1.5 kg bag") == Contents{"1500 g AP", "1 piece AP (bag)"});
  CHECK(contents("AP", "  1/2 L  bottle ") == Contents{"500 mL AP", "1 piece AP (bottle)"});
  CHECK(contents("AP", "6 x 400 g tins") == Contents{"2400 g AP", "6 piece AP (tin)"});
  // An avoirdupois ounce is 28.349523125 g; twenty of them.
  CHECK(contents("AP", "1 lb 4 oz tin") == Contents{"566.9904625 g AP", "1 piece AP (tin)"});
}

TEST_CASE("offers: a bare number counts pieces, one with a noun counts that") {
  CHECK(contents("AP", "6") == Contents{"6 piece AP"});
  CHECK(contents("AP", "6 leeks") == Contents{"6 piece AP"});
  CHECK(contents("AP", "1 leek") == Contents{"1 piece AP"});
  CHECK(contents("AP", "3 heads") == Contents{"3 piece AP (head)"});
  CHECK(contents("AP", "1 loaf") == Contents{"1 piece AP (loaf)"});
  CHECK(contents("AP", "1 dozen") == Contents{"12 piece AP"});
}

TEST_CASE("offers: regional packs need the measures of the book") {
  // The imperial pint is 568.26125 mL, the US pint 473.176473 mL (UCUM).
  CHECK(contents("AP", "1 pint", Measures::imperial) == Contents{"568.26125 mL AP"});
  CHECK(contents("AP", "1 pint", Measures::us) == Contents{"473.176473 mL AP"});
}

TEST_CASE("offers: a bracket says what the pack holds at another stage, sold_as first") {
  const std::string tin = "400 g tin (240 g drained)";
  CHECK(contents("AP", tin) == Contents{"400 g AP", "240 g drained", "1 piece AP (tin)"});
  CHECK(contents("drained", tin) == Contents{"240 g drained", "400 g AP", "1 piece AP (tin)"});
  CHECK(contents("drained", "6 x 400 g tins (240 g drained)") ==
        Contents{"1440 g drained", "2400 g AP", "6 piece AP (tin)"});
  CHECK(contents("AP", "1 kg (650 g EP)") == Contents{"1000 g AP", "650 g EP"});
}

TEST_CASE("offers: fields are kept without their outer spaces") {
  const Offer offer = offer_of(
      {" leeks ", " AP ", " 1 kg bag ", " 2.10 ", " no ", " GBP ", " Hill Farm ", " 2026-11-24 "},
      7);
  CHECK(offer.item == "leeks");
  CHECK(offer.sold_as == Stage::as_purchased);
  CHECK(offer.pack.text == "1 kg bag");
  CHECK(offer.price == q("2.10 GBP"));
  CHECK(offer.keeping == Keeping{false, std::nullopt});
  CHECK(offer.shop == "Hill Farm");
  CHECK(offer.date == "2026-11-24");
  CHECK(offer.place.text() == "prices.csv:7:1");
}

TEST_CASE("offers: a price without a currency is held in none") {
  CHECK(offer_of({"leeks", "AP", "1 kg", "2.10"}).price == q("2.10 XXX"));
  CHECK(offer_of({"leeks", "AP", "1 kg", "2 1/2", "yes", "KWD"}).price == q("2.5 KWD"));
  CHECK(offer_of({"leeks", "AP", "1 kg", "0"}).price == q("0 XXX"));
}

TEST_CASE("offers: keeping is yes, no or a number of days") {
  const auto keeping = [](const char* text) {
    return offer_of({"leeks", "AP", "1 kg", "1", text}).keeping;
  };
  CHECK(keeping("yes") == Keeping{true, std::nullopt});
  CHECK(keeping("no") == Keeping{false, std::nullopt});
  CHECK(keeping("3") == Keeping{true, 3});
  CHECK(keeping("3 days") == Keeping{true, 3});
  CHECK(keeping("1 day") == Keeping{true, 1});
  CHECK(text_of({true, std::nullopt}) == "yes");
  CHECK(text_of({false, std::nullopt}) == "no");
  CHECK(text_of({true, 3}) == "3 days");
  CHECK(text_of({true, 1}) == "1 day");
}

}  // namespace
}  // namespace scalepan
