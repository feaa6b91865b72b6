#include "recipe/amount_doubts.hpp"

#include <algorithm>
#include <array>

#include "exact/error.hpp"
#include "measure/unit_table.hpp"
#include "recipe/food_phrase.hpp"
#include "recipe/number_words.hpp"

namespace scalepan {

void expect_number_alone(const AmountSoFar& amount) {
  if (amount.number.vague() || !is_digit(amount.text()[amount.start])) return;
  const std::string_view rest = amount.behind.rest();
  const std::string_view glued = rest.substr(0, word_end(rest, 0));
  const bool ordinal = same_word(glued, "st") || same_word(glued, "nd") || same_word(glued, "rd") ||
                       same_word(glued, "th");
  const bool degrees = rest.starts_with("\u00B0") || same_word(amount.behind.word(), "degrees");
  const bool fraction = !ordinal && is_fraction_name(amount.behind.word());
  if (!ordinal && !degrees && !fraction && !rest.starts_with(". ")) return;
  fail_at(
      amount.start, "line.no_amount",
      "\"" + excerpt(amount.text().substr(amount.start)) + "\" does not begin with an amount",
      fraction ? "write a quarter as 1/4" : "begin with a number and a unit: 500 g leeks, 3 eggs");
}

void expect_no_price(const AmountSoFar& amount) {
  const std::string_view rest = amount.behind.rest();
  const bool pence = rest == "d" || rest.starts_with("d.") || rest.starts_with("d ");
  constexpr std::array<std::string_view, 7> money{"pennyworth", "cents",     "cent", "pence",
                                                  "dollars",    "shillings", "penny"};
  const std::string_view word = amount.behind.word();
  const bool named = is_one_of(word, money);
  if (!pence && !named) return;
  const std::size_t end =
      pence ? amount.behind.at() + 1 : offset_in(amount.text(), word) + word.size();
  fail_at(amount.start, "line.price",
          "\"" + excerpt(amount.up_to(end)) + "\" is a price, not an amount",
          "write a weight, a volume or a count");
}

void expect_no_temperature(const AmountSoFar& amount, std::size_t at) {
  const char letter = amount.text()[at];
  const bool alone = word_end(amount.text(), at) == at + 1 && at == amount.behind.at();
  if (!alone || (letter != 'C' && letter != 'c') || !amount.number.high) return;
  constexpr int most_cups = 10;
  if (*amount.number.high <= Rational(most_cups)) return;
  fail_at(amount.start, "line.temperature",
          "\"" + excerpt(amount.up_to(at + 1)) + "\" may be cups, cents or degrees",
          "write cups for cups");
}

void expect_clear_letter(std::string_view letter, std::size_t at, Measures measures) {
  at_offset(at, [&] { static_cast<void>(find_unit(letter, measures, UnitScope::kitchen)); });
}

void expect_clear_range(const AmountSoFar& amount, const UnitWord& word, std::size_t end) {
  if (!amount.number.hyphened || !word.in_full_singular) return;
  const std::string low = amount.number.low ? exact_text(*amount.number.low) : "";
  const std::string high = amount.number.high ? exact_text(*amount.number.high) : "";
  fail_at(amount.start, "amount.doubtful",
          "\"" + excerpt(amount.up_to(end)) + "\" can mean " + low + "/" + high + " or " + low +
              " to " + high,
          "write " + low + "/" + high + ", or " + low + " to " + high);
}

void expect_clear_size(const AmountSoFar& amount, const UnitWord& word, std::size_t end) {
  if (!word.plural) return;
  fail_at(amount.start, "amount.doubtful",
          "\"" + excerpt(amount.up_to(end)) + "\" does not tell how many there are of what size",
          "write the count, x and the size: 2 x 1 cm slices");
}

void expect_no_pound_cake(const UnitWord& word, std::size_t at) {
  if (word.kind != UnitKind::measure || word.name != "lb") return;
  fail_at(at, "amount.doubtful", "\"pound cake\" can be a weight or the name of a cake",
          "write 1 lb of cake, or 1 piece pound cake");
}

void expect_one_unit(const AmountSoFar& amount, std::string_view unit, std::size_t unit_at,
                     const Catalog& catalog) {
  Cursor probe = amount.behind;
  const bool alternative = probe.take_word("or") || probe.take_word("a") || probe.take_word("per");
  const std::size_t second = probe.skip_spaces().at();
  const auto word = read_unit_word(probe);
  if (!word || word->kind != UnitKind::measure) return;
  if (begins_compound(Cursor(amount.text(), second).word(), probe.word())) return;
  if (!alternative && knows_food(catalog, trimmed(amount.behind.rest()))) return;
  fail_at(
      second, "line.two_units",
      "one number has two units in \"" + excerpt(amount.up_to(probe.at())) + "\"",
      "write one amount: " + std::string(trimmed(amount.up_to(unit_at))) + " " + std::string(unit));
}

}  // namespace scalepan
