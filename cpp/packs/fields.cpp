#include "packs/fields.hpp"

#include "measure/currency.hpp"

namespace scalepan {

void expect_there(const PlacedText& field, std::string_view name) {
  if (is_there(field)) return;
  fail("price.missing", "the row has no " + std::string(name), {}, field.place);
}

Stage read_stage(std::string_view text, std::string_view field) {
  const std::string_view word = trimmed(text);
  for (const std::string& form : {std::string(word), upper(word), lower(word)}) {
    if (const auto stage = stage_named(form)) return *stage;
  }
  fail("price.stage",
       "\"" + excerpt(word) + "\" is no stage" +
           std::string(field == "sold_as" ? " to sell at" : ""),
       std::string(field) + " is one of AP, EP, cooked, drained, served");
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
