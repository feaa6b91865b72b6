#include "packs/offer.hpp"

#include <algorithm>
#include <charconv>
#include <utility>

#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/amount.hpp"
#include "measure/count_nouns.hpp"
#include "measure/currency.hpp"
#include "measure/unit_table.hpp"

namespace scalepan {

namespace {

template <typename Read>
auto read_field(const PlacedText& field, Read read) {
  return located(field.place, field.text, [&] { return read(std::string_view(field.text)); });
}

Stage read_stage(std::string_view text) {
  const std::string_view word = trimmed(text);
  for (const std::string& form : {std::string(word), upper(word), lower(word)}) {
    if (const auto stage = stage_named(form)) return *stage;
  }
  fail("price.stage", "\"" + excerpt(word) + "\" is no stage to sell at",
       "sold_as is one of AP, EP, cooked, drained, served");
}

Quantity staged_amount(const Amount& amount, Stage stage) {
  const Unit unit = amount.unit.value_or(Unit::named("piece"));
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
  const Dimension kind = amount->unit.value_or(Unit::named("piece")).dimension();
  if (!(kind == dimension::mass() || kind == dimension::volume() || kind == dimension::piece())) {
    fail_at(start, "price.pack", "a pack is a weight, a volume or a count, not a " + kind.name());
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

/// The word behind the amount of a pack, in the singular: `tins` gives `tin`.
std::string singular_of(std::string_view word) {
  const std::string written = lower(word);
  if (const auto noun = container_noun(written)) return std::string(*noun);
  if (const auto noun = piece_noun(written)) return std::string(*noun);
  return written;
}

/// `6 eggs` of the item eggs counts the item itself.
bool names_item(std::string_view word, std::string_view item) {
  const std::string written = lower(word);
  const std::string name = lower(item);
  return written == name || written + "s" == name || written == name + "s";
}

std::string read_container(std::string_view text, std::size_t position, std::string_view word,
                           bool counted) {
  const std::string noun = singular_of(word);
  const bool known = container_noun(noun) || piece_noun(noun);
  const bool digits = word.find_first_of("0123456789") != std::string_view::npos;
  if (digits || (counted && word.find(' ') != std::string_view::npos)) {
    fail_at(position, "price.pack", "\"" + excerpt(word) + "\" is no word for a container",
            "write a pack as 1 kg, 6, or 400 g tin (240 g drained)");
  }
  if (counted && !known && misspells_unit(word)) {
    fail_unknown_unit(word, static_cast<std::size_t>(word.data() - text.data()));
  }
  return noun;
}

void expect_fits(const PackContent& whole, const Quantity& inside, std::size_t offset) {
  const bool same_kind =
      whole.amount.dimension().without_stages() == inside.dimension().without_stages();
  if (same_kind && inside.coherent() > whole.amount.coherent()) {
    fail_at(offset, "price.pack",
            "the pack holds " + whole.amount.text() + ", but its bracket says " + inside.text());
  }
}

std::vector<PackContent> read_pack(std::string_view text, Stage sold_as, Measures measures,
                                   std::string_view item) {
  std::size_t position = 0;
  const Amount amount = read_content(text, position, measures);
  const std::size_t open = text.find('(', position);
  const std::string_view word = trimmed(text.substr(position, open - position));
  const bool counted = !amount.unit;
  const std::string container =
      word.empty() || names_item(word, item) ? "" : read_container(text, position, word, counted);
  const PackContent whole{staged_amount(amount, sold_as), counted ? container : ""};
  std::vector<PackContent> contents{whole};
  if (open != std::string_view::npos) {
    // The bracket speaks of one tin, also where the pack holds six.
    const Quantity inside = *read_bracket(text, open, measures) * amount.times;
    expect_fits(whole, inside, open);
    if (inside.stage() == sold_as && sold_as != Stage::as_purchased) {
      contents = {{inside, ""}, {staged_amount(amount, Stage::as_purchased), whole.noun}};
    } else if (inside.stage() == Stage::as_purchased || sold_as != Stage::as_purchased) {
      fail_at(open, "price.stage",
              "the pack is sold as " + std::string(symbol_of(sold_as)) + ", but its bracket says " +
                  std::string(symbol_of(inside.stage())),
              "sold_as is AP, or the stage in the bracket");
    } else {
      contents.push_back({inside, ""});
    }
  }
  if (!counted && !container.empty()) {
    const Unit piece = Unit::named("piece").at(Stage::as_purchased);
    contents.push_back({Quantity(amount.times, piece), container});
  }
  return contents;
}

/// The whole rest of the text as one number.
std::optional<Rational> number_or_nothing(std::string_view text, std::size_t position) {
  try {
    auto value = read_amount_number(text, position);
    return position == text.size() ? value : std::nullopt;
  } catch (const Error& error) {
    if (error.code() == "number.comma" || error.code() == "number.doubtful") return std::nullopt;
    throw;
  }
}

Quantity read_price(const PlacedText& price, const PlacedText& currency) {
  const Rational number = read_field(price, [](std::string_view text) {
    const std::string_view written = trimmed(text);
    const auto start = static_cast<std::size_t>(written.data() - text.data());
    std::size_t position = start;
    const auto value = number_or_nothing(text.substr(0, start + written.size()), position);
    if (!value) {
      fail_at(start, "price.unreadable", "\"" + excerpt(written) + "\" is no price",
              "write a number such as 1.05, and the currency's code in its own column");
    }
    if (value->sign() < 0) {
      fail_at(start, "price.negative", "the price " + excerpt(written) + " is below zero");
    }
    return *value;
  });
  return read_field(currency, [&](std::string_view text) {
    const std::string written = upper(trimmed(text));
    const std::string code = written.empty() ? std::string(no_currency) : written;
    if (!currency_coded(code)) {
      fail("price.currency", "\"" + excerpt(trimmed(text)) + "\" is no currency of ISO 4217",
           "write its three capital letters, such as EUR");
    }
    return Quantity(number, Unit::named(code));
  });
}

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
         "keeps is yes, no, or a number of days");
  }
  return {true, days};
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
  offer.contents = read_field(row.pack, [&](std::string_view text) {
    return read_pack(text, offer.sold_as, measures, offer.item);
  });
  offer.price = read_price(row.price, row.currency);
  offer.keeping = read_field(row.keeps, read_keeping);
  offer.shop = trimmed(row.shop.text);
  offer.date = read_field(row.date, date_text);
  return offer;
}

}  // namespace scalepan
