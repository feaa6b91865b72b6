#include "packs/offer.hpp"

#include <algorithm>
#include <charconv>
#include <utility>

#include "exact/number_text.hpp"
#include "measure/amount.hpp"
#include "measure/currency.hpp"
#include "measure/unit_table.hpp"

namespace scalepan {

namespace {

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

template <typename Read>
auto read_field(const PlacedText& field, Read read) {
  return located(field.place, field.text, [&] { return read(std::string_view(field.text)); });
}

Stage read_stage(std::string_view text) {
  const std::string_view word = trimmed(text);
  if (const auto stage = stage_named(word)) return *stage;
  fail("price.stage", "\"" + excerpt(word) + "\" is no stage to sell at",
       "sold_as is one of AP, EP, cooked, drained, served");
}

Quantity staged_amount(const Amount& amount, Stage stage) {
  const Unit unit = amount.unit.value_or(Unit({{&unit_with_symbol("piece"), 1}}));
  return Quantity::of_coherent(amount.high, unit.at(stage));
}

/// An amount above zero at `position`, moved past.
Amount read_content(std::string_view text, std::size_t& position, Measures measures) {
  while (position < text.size() && text[position] == ' ') ++position;
  const std::size_t start = position;
  const auto amount = read_amount(text, position, measures, UnitStyle::kitchen);
  if (!amount) {
    fail_at(start, "price.pack", "no amount is written in \"" + excerpt(text.substr(start)) + "\"",
            "write a pack as 1 kg, 6, or 400 g tin (240 g drained)");
  }
  if (amount->is_range()) fail_at(start, "price.pack", "a pack cannot hold a range");
  if (amount->high.sign() <= 0) fail_at(start, "price.pack", "a pack must hold more than nothing");
  return *amount;
}

/// The `(240 g drained)` of a pack.
std::optional<Quantity> read_bracket(std::string_view text, std::size_t open, Measures measures) {
  const std::size_t close = text.find(')', open);
  if (close == std::string_view::npos) {
    fail_at(open, "price.pack", "a bracket is not closed");
  }
  if (!trimmed(text.substr(close + 1)).empty()) {
    fail_at(close + 1, "price.pack", "text follows the bracket of a pack");
  }
  std::size_t position = open + 1;
  const Amount amount = read_content(text.substr(0, close), position, measures);
  const std::string_view word = trimmed(text.substr(position, close - position));
  const auto stage = stage_named(word);
  if (!stage) {
    fail_at(position, "price.stage", "\"" + excerpt(word) + "\" is no stage",
            "write (240 g drained)");
  }
  return staged_amount(amount, *stage);
}

std::vector<Quantity> read_pack(std::string_view text, Stage sold_as, Measures measures) {
  std::size_t position = 0;
  const Amount amount = read_content(text, position, measures);
  const std::size_t open = text.find('(', position);
  const std::string_view container = trimmed(text.substr(position, open - position));
  const bool digits = container.find_first_of("0123456789") != std::string_view::npos;
  if (digits) {
    fail_at(position, "price.pack", "\"" + excerpt(container) + "\" is no word for a container",
            "write a pack as 1 kg, 6, or 400 g tin (240 g drained)");
  }
  if (open == std::string_view::npos) return {staged_amount(amount, sold_as)};
  const Quantity inside = *read_bracket(text, open, measures);
  if (inside.stage() == sold_as && sold_as != Stage::as_purchased) {
    return {inside, staged_amount(amount, Stage::as_purchased)};
  }
  if (inside.stage() == Stage::as_purchased || sold_as != Stage::as_purchased) {
    fail_at(open, "price.stage",
            "the pack is sold as " + std::string(symbol_of(sold_as)) + ", but its bracket says " +
                std::string(symbol_of(inside.stage())),
            "sold_as is AP, or the stage in the bracket");
  }
  return {staged_amount(amount, sold_as), inside};
}

Quantity read_price(const PlacedText& price, const PlacedText& currency) {
  const Rational number = read_field(price, [](std::string_view text) {
    const Rational value = parse_amount_number(trimmed(text));
    if (value.sign() < 0) {
      fail("price.negative", "the price " + excerpt(trimmed(text)) + " is below zero");
    }
    return value;
  });
  return read_field(currency, [&](std::string_view text) {
    const std::string_view code = trimmed(text).empty() ? no_currency : trimmed(text);
    const auto index = currency_coded(code);
    if (!index) {
      fail("price.currency", "\"" + excerpt(code) + "\" is no currency of ISO 4217",
           "write its three capital letters, such as EUR");
    }
    return Quantity(number, Unit({{&unit_with_symbol(code), 1}}));
  });
}

Keeping read_keeping(std::string_view text) {
  const std::string_view word = trimmed(text);
  if (word == "yes") return {true, std::nullopt};
  if (word == "no") return {false, std::nullopt};
  int days = 0;
  const auto [end, status] = std::from_chars(word.data(), word.data() + word.size(), days);
  const std::string_view rest = trimmed(word.substr(static_cast<std::size_t>(end - word.data())));
  const bool known_rest = rest.empty() || rest == "day" || rest == "days";
  if (status != std::errc() || days <= 0 || !known_rest) {
    fail("price.keeps", "\"" + excerpt(word) + "\" does not say whether the rest keeps",
         "keeps is yes, no, or a number of days");
  }
  return {true, days};
}

bool digits_at(std::string_view text, std::size_t from, std::size_t count) {
  return std::ranges::all_of(text.substr(from, count), [](char c) { return c >= '0' && c <= '9'; });
}

std::string read_date(std::string_view text) {
  const std::string_view date = trimmed(text);
  if (date.empty()) return {};
  const bool shaped = date.size() == 10 && date[4] == '-' && date[7] == '-' &&
                      digits_at(date, 0, 4) && digits_at(date, 5, 2) && digits_at(date, 8, 2);
  const auto number = [&](std::size_t at) { return (date[at] - '0') * 10 + date[at + 1] - '0'; };
  if (!shaped || number(5) < 1 || number(5) > 12 || number(8) < 1 || number(8) > 31) {
    fail("price.date", "\"" + excerpt(date) + "\" is no date", "write it as 2026-11-24");
  }
  return std::string(date);
}

void expect_there(const PlacedText& field, std::string_view name) {
  if (trimmed(field.text).empty()) {
    fail("price.missing", "the row has no " + std::string(name), {}, field.place);
  }
}

}  // namespace

std::string text_of(const Keeping& keeping) {
  if (!keeping.keeps) return "no";
  if (!keeping.days) return "yes";
  return std::to_string(*keeping.days) + (*keeping.days == 1 ? " day" : " days");
}

std::optional<Quantity> Offer::content(Stage stage) const {
  const auto found = std::ranges::find(contents, stage, &Quantity::stage);
  return found == contents.end() ? std::nullopt : std::optional(*found);
}

Offer read_offer(const PriceRow& row, Measures measures) {
  expect_there(row.item, "item");
  expect_there(row.sold_as, "sold_as");
  expect_there(row.pack, "pack");
  expect_there(row.price, "price");
  expect_there(row.keeps, "keeps");
  Offer offer;
  offer.item = trimmed(row.item.text);
  offer.place = row.item.place;
  offer.sold_as = read_field(row.sold_as, read_stage);
  offer.pack = trimmed(row.pack.text);
  offer.contents = read_field(
      row.pack, [&](std::string_view text) { return read_pack(text, offer.sold_as, measures); });
  offer.price = read_price(row.price, row.currency);
  offer.keeping = read_field(row.keeps, read_keeping);
  offer.shop = trimmed(row.shop.text);
  offer.date = read_field(row.date, read_date);
  return offer;
}

}  // namespace scalepan
