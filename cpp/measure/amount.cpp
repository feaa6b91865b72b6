#include "measure/amount.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/unit_text.hpp"

namespace scalepan {

namespace {

/// Takes one of the signs, with spaces before and after it.
template <std::size_t N>
bool take_sign(std::string_view text, std::size_t& position,
               const std::array<std::string_view, N>& signs) {
  std::size_t probe = position;
  skip_spaces(text, probe);
  for (const std::string_view sign : signs) {
    if (!text.substr(std::min(probe, text.size())).starts_with(sign)) continue;
    probe += sign.size();
    skip_spaces(text, probe);
    position = probe;
    return true;
  }
  return false;
}

/// A number after one of the signs; nothing moves where the number is missing.
template <std::size_t N>
std::optional<Rational> read_number_after(std::string_view text, std::size_t& position,
                                          const std::array<std::string_view, N>& signs) {
  std::size_t probe = position;
  if (!take_sign(text, probe, signs)) return std::nullopt;
  if (probe < text.size() && text[probe] == '-') return std::nullopt;
  auto number = read_amount_number(text, probe);
  if (number) position = probe;
  return number;
}

constexpr std::array<std::string_view, 3> times_signs{"x ", "\u00D7", "x"};
constexpr std::array<std::string_view, 4> range_signs{"to ", "-", "\u2013", "\u2014"};

std::optional<Unit> read_styled_unit(std::string_view text, std::size_t& position,
                                     Measures measures, UnitStyle style) {
  return style == UnitStyle::full ? read_unit(text, position, measures)
                                  : read_kitchen_unit(text, position, measures);
}

class AmountReader {
 public:
  AmountReader(std::string_view text, Measures measures, UnitStyle style)
      : text_(text), measures_(measures), style_(style) {}

  std::optional<Amount> read(std::size_t& position) const {
    std::size_t probe = position;
    auto first = read_amount_number(text_, probe);
    if (!first) return std::nullopt;
    Amount amount;
    if (const auto each = read_number_after(text_, probe, times_signs)) {
      amount.times = *first;
      first = each;
    }
    amount.low = amount.high = *first;
    read_range(amount, probe);
    read_units(amount, probe);
    amount.low *= amount.times;
    amount.high *= amount.times;
    position = probe;
    return amount;
  }

 private:
  void read_range(Amount& amount, std::size_t& position) const {
    const std::size_t start = position;
    const Rational first = amount.low;
    const bool in_words = text_.substr(start).starts_with(" to ");
    const auto last = read_number_after(text_, position, range_signs);
    if (!last) return;
    if (*last < first && !in_words) {
      fail_at(start, "amount.doubtful",
              "\"" + excerpt(text_.substr(start, position - start)) +
                  "\" is neither the rest of a mixed number nor the end of a range",
              "write 1 1/2, or 1 to 2");
    }
    amount.low = std::min(first, *last);
    amount.high = std::max(first, *last);
  }

  void read_units(Amount& amount, std::size_t& position) const {
    amount.unit = read_styled_unit(text_, position, measures_, style_);
    if (!amount.unit) return;
    amount.low *= amount.unit->ratio();
    amount.high *= amount.unit->ratio();
    Unit smallest = *amount.unit;
    while (const auto part = read_part(smallest, position)) {
      if (amount.is_range()) {
        fail_at(position, "amount.doubtful", "a range is followed by a second amount",
                "write the range in one unit");
      }
      amount.low += part->coherent();
      amount.high += part->coherent();
      smallest = part->unit();
    }
  }

  /// The `4 oz` of `1 lb 4 oz`.
  std::optional<Quantity> read_part(Unit smallest, std::size_t& position) const {
    std::size_t probe = position;
    skip_spaces(text_, probe);
    const std::size_t start = probe;
    if (probe == position || probe >= text_.size() || text_[probe] == '-') return std::nullopt;
    const auto number = read_amount_number(text_, probe);
    if (!number) return std::nullopt;
    const auto unit = read_styled_unit(text_, probe, measures_, style_);
    if (!unit) return std::nullopt;
    if (!(unit->dimension() == smallest.dimension()) || unit->ratio() >= smallest.ratio()) {
      fail_at(start, "amount.doubtful",
              "\"" + excerpt(text_.substr(start, probe - start)) +
                  "\" does not go on with a smaller unit of the same kind as " + smallest.symbol());
    }
    position = probe;
    return Quantity(*number, *unit);
  }

  std::string_view text_;
  Measures measures_;
  UnitStyle style_;
};

constexpr const char* money_hint = "write the code of the currency behind the number: 50 EUR";

bool holds_sign_of_money(std::string_view text) {
  constexpr std::array<std::string_view, 3> signs{"\u20AC", "\u00A3", "$"};
  return std::ranges::any_of(
      signs, [&](std::string_view sign) { return text.find(sign) != std::string_view::npos; });
}

}  // namespace

std::optional<Amount> read_amount(std::string_view text, std::size_t& position, Measures measures,
                                  UnitStyle style) {
  return AmountReader(text, measures, style).read(position);
}

Quantity parse_quantity(std::string_view text, Measures measures) {
  std::size_t position = 0;
  skip_spaces(text, position);
  const auto amount = read_amount(text, position, measures, UnitStyle::full);
  if (!amount) {
    fail_at(position, "amount.unreadable",
            "no number is written at the start of \"" + excerpt(text) + "\"",
            holds_sign_of_money(text) ? money_hint : "write a number and a unit: 1 1/2 kg");
  }
  skip_spaces(text, position);
  if (position < text.size()) {
    fail_at(position, "amount.unreadable",
            "\"" + excerpt(text.substr(position)) + "\" cannot be read after \"" +
                excerpt(text.substr(0, position)) + "\"",
            holds_sign_of_money(text) ? money_hint : "");
  }
  if (amount->is_range()) {
    fail_at(0, "amount.range", "\"" + excerpt(text) + "\" is a range, where one amount is needed",
            "write one amount");
  }
  return Quantity::of_coherent(amount->low, amount->unit.value_or(Unit()));
}

}  // namespace scalepan
