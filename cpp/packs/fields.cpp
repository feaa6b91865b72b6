#include "packs/fields.hpp"

#include "measure/currency.hpp"
#include "packs/pack_text.hpp"

namespace scalepan {

namespace {

constexpr std::string_view stages = " is one of AP, EP, cooked, drained, served";

/// As everything that is printed calls them.
std::optional<Stage> stage_in_words(std::string_view text) {
  const std::string words = lower(text);
  if (words == "as purchased") return Stage::as_purchased;
  if (words == "edible portion") return Stage::edible;
  return std::nullopt;
}

std::string choices_of(std::string_view name) {
  if (name == "sold_as" || name == "stage") return std::string(name) + std::string(stages);
  if (name == "pack") return std::string(pack_hint);
  if (name == "price") return "write what a pack costs, or 0 where nothing is paid";
  return std::string(name == "keeps" ? keeps_choices : "");
}

}  // namespace

void expect_there(const PlacedText& field, std::string_view name) {
  if (is_there(field)) return;
  fail("price.missing", "the row has no " + std::string(name), choices_of(name), field.place);
}

Stage read_stage(std::string_view text, std::string_view field) {
  const std::string_view word = trimmed(text);
  for (const std::string& form : {std::string(word), upper(word), lower(word)}) {
    if (const auto stage = stage_named(form)) return *stage;
  }
  if (const auto stage = stage_in_words(word)) return *stage;
  fail("price.stage",
       "\"" + excerpt(word) + "\" is no stage" +
           std::string(field == "sold_as" ? " to sell at" : ""),
       std::string(field) + std::string(stages));
}

Unit read_currency(std::string_view text) {
  const std::string written = upper(trimmed(text));
  const std::string code = written.empty() ? std::string(no_currency) : written;
  if (!currency_coded(code)) {
    fail("price.currency", "\"" + excerpt(trimmed(text)) + "\" is no currency of ISO 4217",
         "write its three capital letters, such as EUR");
  }
  return Unit::named(code);
}

}  // namespace scalepan
