#include "packs/offer.hpp"

#include <charconv>
#include <utility>

#include "exact/text.hpp"
#include "packs/fields.hpp"

namespace scalepan {

namespace {

Keeping read_keeping(std::string_view text) {
  const std::string written = lower(trimmed(text));
  const std::string_view word = written;
  if (word == "yes") return {true, std::nullopt};
  if (word == "no") return {false, std::nullopt};
  int days = 0;
  const auto [end, status] = std::from_chars(word.data(), word.data() + word.size(), days);
  const std::string_view rest = trimmed(word.substr(static_cast<std::size_t>(end - word.data())));
  const bool known_rest = rest.empty() || rest == "day" || rest == "days";
  if (status != std::errc() || days <= 0 || !known_rest) {
    fail("price.keeps", "\"" + excerpt(word) + "\" does not say whether the rest keeps",
         std::string(keeps_choices));
  }
  return {true, days};
}

}  // namespace

std::string text_of(const Keeping& keeping) {
  if (!keeping.keeps) return "no";
  if (!keeping.days) return "yes";
  return std::to_string(*keeping.days) + (*keeping.days == 1 ? " day" : " days");
}

namespace {

OfferTerms read_terms(const PriceRow& row, const Offer& offer, Measures measures) {
  OfferTerms terms;
  const auto number = [&](const PlacedText& field, std::string_view name) {
    return read_field(field, [&](std::string_view text) {
      return read_pack_number(text, offer.pack, measures, name);
    });
  };
  if (is_there(row.offer)) {
    read_field(row.offer, [&](std::string_view text) {
      read_offer_terms(text, offer.pack, offer.price.value(), measures, terms);
    });
  }
  if (is_there(row.least)) terms.least = number(row.least, "the least");
  if (is_there(row.limit)) terms.limit = number(row.limit, "the limit");
  located(row.item.place, row.item.text, [&] { expect_terms_meet(terms); });
  return terms;
}

}  // namespace

Offer read_offer(const PriceRow& row, Measures measures) {
  expect_there(row.item, "item");
  expect_there(row.sold_as, "sold_as");
  expect_there(row.pack, "pack");
  expect_there(row.price, "price");
  expect_there(row.keeps, "keeps");
  Offer offer;
  offer.item = trimmed(row.item.text);
  offer.place = row.item.place;
  offer.sold_as =
      read_field(row.sold_as, [](std::string_view text) { return read_stage(text, "sold_as"); });
  offer.pack = read_field(row.pack, [&](std::string_view text) {
    return read_pack(text, {offer.sold_as, measures, offer.item});
  });
  const Rational price = read_field(row.price, read_price_number);
  const Unit currency = read_field(row.currency, read_currency);
  offer.price = Quantity(price / offer.pack.priced, currency);
  offer.deposit = Quantity(
      is_there(row.deposit) ? read_field(row.deposit, read_price_number) : Rational(0), currency);
  if (offer.pack.loose && !offer.deposit.coherent().is_zero()) {
    fail("price.offer", "loose goods have no packs to pay a deposit on", {}, row.deposit.place);
  }
  if (is_there(row.tax)) offer.tax = read_field(row.tax, read_price_tax);
  offer.terms = read_terms(row, offer, measures);
  offer.keeping = read_field(row.keeps, read_keeping);
  offer.shop = trimmed(row.shop.text);
  offer.date = read_field(row.date, date_text);
  offer.written = written_row<PriceRow>(row, price_fields, measures);
  return offer;
}

}  // namespace scalepan
