#include "food/yield_row.hpp"

#include <array>
#include <vector>

#include "exact/text.hpp"
#include "measure/amount.hpp"
#include "measure/nearest.hpp"

namespace scalepan {

namespace {

struct WordText {
  YieldWord word;
  std::string_view text;
  Stage stage;
};

constexpr std::array<WordText, 10> word_texts{{
    {YieldWord::bought, "bought", Stage::as_purchased},
    {YieldWord::by_product, "by-product", Stage::none},
    {YieldWord::loss, "loss", Stage::none},
    {YieldWord::edible, "edible", Stage::edible},
    {YieldWord::drained, "drained", Stage::drained},
    {YieldWord::into_the_pan, "into the pan", Stage::edible},
    {YieldWord::cooked, "cooked", Stage::cooked},
    {YieldWord::taken_off, "taken off", Stage::none},
    {YieldWord::carving_loss, "carving loss", Stage::none},
    {YieldWord::served, "served", Stage::served},
}};

const WordText& row_of(YieldWord word) { return word_texts.at(static_cast<std::size_t>(word)); }

template <typename Read>
auto read_field(const PlacedText& field, Read read) {
  const std::string_view written = trimmed(field.text);
  Place start = field.place;
  if (start.column > 0) start.column += static_cast<int>(written.data() - field.text.data());
  return located(start, written, [&] { return read(written); });
}

void expect_there(const PlacedText& field, std::string_view name, const Place& row) {
  if (trimmed(field.text).empty()) {
    fail("yield.missing", "the row has no " + std::string(name), {}, row);
  }
}

YieldWord word_named(std::string_view written) {
  const std::string word = lower(written);
  std::string all;
  std::vector<std::string_view> known;
  for (const WordText& text : word_texts) {
    if (text.text == word) return text.word;
    all += (all.empty() ? "" : ", ") + std::string(text.text);
    known.push_back(text.text);
  }
  const std::string nearest = nearest_hint(nearest_names(word, known));
  fail("yield.what", "no row of a yield test is called \"" + excerpt(written) + "\"",
       (nearest.empty() ? "" : nearest + "; ") + "there are: " + all);
}

bool is_loss(YieldWord word) { return word == YieldWord::loss || word == YieldWord::carving_loss; }

bool may_have_value(YieldWord word) {
  return word == YieldWord::bought || word == YieldWord::by_product || word == YieldWord::taken_off;
}

/// Sums of longer numbers would grow without end, and no scale or till gives them.
void expect_handy(const Quantity& amount, std::string_view code, std::string_view written) {
  if (amount.coherent().is_word()) return;
  fail(code, "\"" + excerpt(written) + "\" has more digits than any scale or till gives");
}

void expect_weight(const Quantity& weight, YieldWord word, std::string_view written) {
  const Dimension kind = weight.dimension().without_stages();
  if (!(kind == dimension::mass() || kind == dimension::volume())) {
    fail("yield.weight",
         "\"" + excerpt(written) + "\" is neither a weight nor a volume, but a " +
             weight.dimension().name(),
         "write it with its unit, such as 2.5 kg or 3 lb 5 oz");
  }
  const Stage stage = weight.stage();
  if (stage != Stage::none && stage != stage_of(word)) {
    const Stage own = stage_of(word);
    const std::string right =
        own == Stage::none ? "written without a stage" : "at " + std::string(symbol_of(own));
    fail("yield.stage",
         "the weight of \"" + std::string(text_of(word)) + "\" is " + right + ", but " +
             weight.text() + " is written",
         "leave the stage out");
  }
  const int sign = weight.coherent().sign();
  if (sign < 0 || (sign == 0 && !is_part(word))) {
    fail("yield.weight", "the weight of \"" + std::string(text_of(word)) + "\" is " +
                             (sign < 0 ? "below zero" : "zero"));
  }
}

std::optional<Quantity> read_weight(std::string_view written, YieldWord word, Measures measures) {
  if (lower(written) == "rest") {
    if (is_loss(word)) return std::nullopt;
    fail("yield.weight", "the weight of \"" + std::string(text_of(word)) + "\" cannot be the rest",
         "weigh it; only a loss is what the other weights leave over");
  }
  const Quantity weight = parse_quantity(written, measures);
  expect_handy(weight, "yield.weight", written);
  expect_weight(weight, word, written);
  return weight.stage() == Stage::none ? weight.at(stage_of(word)) : weight;
}

struct Money {
  Quantity in_all;
  std::optional<Unit> per;
};

/// The weight unit of `USD/lb` and of `USD/(lb AP)`.
std::optional<Unit> unit_below(Unit price) {
  std::vector<Unit::Part> below;
  for (const auto& [unit, power] : price.without_stages().parts()) {
    if (power < 0) below.emplace_back(unit, -power);
  }
  return Unit(std::move(below));
}

std::optional<Money> read_value(std::string_view written, const Quantity& weight,
                                Measures measures) {
  const Quantity value = parse_quantity(written, measures);
  expect_handy(value, "yield.value", written);
  if (value.dimension().is_number() && value.coherent().is_zero()) return std::nullopt;
  if (value.coherent().sign() < 0) {
    fail("yield.value", "the value " + excerpt(written) + " is below zero");
  }
  if (value.dimension().currency()) return Money{value, std::nullopt};
  const bool staged = value.dimension().has_stages();
  const Quantity amount = staged ? weight : without_stage(weight);
  const Quantity in_all = value * amount;
  if (in_all.dimension().currency()) return Money{in_all, unit_below(value.unit())};
  fail("yield.value",
       "\"" + excerpt(written) + "\" is no value of " + weight.text() + ": it is of the kind " +
           value.dimension().name(),
       "write money per unit, such as 5.00 USD/lb, or in all, such as 150.00 USD");
}

}  // namespace

Quantity without_stage(const Quantity& amount) {
  return Quantity::of_coherent(amount.coherent(), amount.unit().without_stages());
}

std::string_view text_of(YieldWord word) { return row_of(word).text; }

Stage stage_of(YieldWord word) { return row_of(word).stage; }

bool is_part(YieldWord word) { return stage_of(word) == Stage::none; }

WeighedRow read_yield_row(const YieldRow& row, Measures measures) {
  WeighedRow read;
  read.place = row.what.place;
  expect_there(row.trial, "trial", read.place);
  expect_there(row.what, "what", read.place);
  expect_there(row.weight, "weight", read.place);
  read.trial = trimmed(row.trial.text);
  read.what = read_field(row.what, word_named);
  read.part = trimmed(row.part.text);
  read.use = trimmed(row.use.text);
  read.value_place = row.value.place;
  read.weight = read_field(
      row.weight, [&](std::string_view text) { return read_weight(text, read.what, measures); });
  if (trimmed(row.value.text).empty()) return read;
  const auto money = read_field(row.value, [&](std::string_view text) -> std::optional<Money> {
    if (!may_have_value(read.what) || !read.weight) {
      fail("yield.value", "a row \"" + std::string(text_of(read.what)) + "\" has no value",
           "values stand at bought, by-product and taken off");
    }
    return read_value(text, *read.weight, measures);
  });
  if (money) {
    read.value = money->in_all;
    read.per = money->per;
  }
  return read;
}

}  // namespace scalepan
