#include "recipe/batch_text.hpp"

#include <array>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/amount.hpp"
#include "measure/told.hpp"
#include "recipe/cursor.hpp"

namespace scalepan {

namespace {

constexpr std::array<std::string_view, 6> before_words{"raw",   "uncooked", "unbaked",
                                                       "dough", "batter",   "mixture"};
constexpr std::array<std::string_view, 4> after_words{"cooked", "baked", "finished", "bread"};

[[noreturn]] void fail_makes(std::string_view text) {
  fail_at(0, "batch.makes", "\"" + excerpt(text) + "\" is no amount that a recipe makes",
          "write a weight, a volume, pieces or portions: 1.2 kg, 3 L, 24 pieces");
}

[[noreturn]] void fail_loss(std::string_view text) {
  fail_at(0, "batch.loss", "\"" + excerpt(text) + "\" is no loss",
          "write a percentage and what it is of: 12 % of the raw batch");
}

std::string grams_text(const Rational& grams) {
  return tell(Quantity(grams, Unit::named("g"))).text;
}

/// `12 % of` alone could be of either weight, and the two differ.
[[noreturn]] void fail_open_loss(const Rational& percent) {
  const std::string text = exact_text(percent);
  fail_at(0, "batch.loss",
          "it is not said what the loss of " + text + " % is of: of 1 kg raw it leaves " +
              grams_text(Rational(1000) - percent * Rational(10)) + ", of the cooked weight " +
              grams_text(Rational(100000) / (Rational(100) + percent)),
          "write \"" + text + " % of the raw batch\" or \"" + text + " % of the cooked batch\"");
}

}  // namespace

Quantity parse_makes(std::string_view text, Measures measures) {
  const Quantity parsed = parse_quantity(trimmed(text), measures);
  const bool counted = parsed.dimension().is_number();
  const Quantity makes = counted ? Quantity(parsed.coherent(), Unit::named("piece")) : parsed;
  const Dimension kind = makes.dimension();
  const bool known = kind == dimension::mass() || kind == dimension::volume() ||
                     kind == dimension::piece() || kind == dimension::portion();
  if (!known || makes.coherent().sign() <= 0) fail_makes(text);
  return makes;
}

Quantity parse_capacity(std::string_view text, Measures measures) {
  Quantity capacity = parse_makes(text, measures);
  const Dimension kind = capacity.dimension();
  const bool counted = kind == dimension::piece() || kind == dimension::portion();
  if (!counted || capacity.coherent().is_integer()) return capacity;
  fail_at(0, "batch.load", "a load of " + capacity.text() + " would hold a part of one",
          "write a whole number of them");
}

Rational parse_loss(std::string_view text) {
  Cursor cursor(text);
  cursor.skip_spaces();
  std::size_t at = cursor.at();
  const auto percent = read_amount_number(text, at);
  cursor.move_to(at);
  const bool valid = percent && percent->sign() >= 0 && *percent < Rational(100);
  if (!valid || !cursor.take_sign("%")) fail_loss(text);
  if (cursor.skip_spaces().done()) fail_open_loss(*percent);
  if (!cursor.take_word("of")) fail_loss(text);
  cursor.take_word("the");
  const std::string_view of = cursor.take_word();
  cursor.take_word("batch");
  cursor.take_word("weight");
  if (!cursor.skip_spaces().done()) fail_loss(text);
  const Rational share = *percent / Rational(100);
  if (is_one_of(of, before_words)) return Rational(1) - share;
  if (is_one_of(of, after_words)) return Rational(1) / (Rational(1) + share);
  fail_open_loss(*percent);
}

std::optional<Rational> parse_trays(std::string_view text) {
  Cursor cursor(text);
  cursor.skip_spaces();
  std::size_t at = cursor.at();
  const auto number = read_amount_number(text, at);
  cursor.move_to(at);
  if (!number || !(cursor.take_word("trays") || cursor.take_word("tray"))) return std::nullopt;
  if (!cursor.skip_spaces().done()) return std::nullopt;
  if (number->sign() <= 0 || !number->is_integer()) {
    fail_at(0, "batch.load", "\"" + excerpt(text) + "\" is no number of trays in a load",
            "write a whole number above zero");
  }
  return number;
}

}  // namespace scalepan
