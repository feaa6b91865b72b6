#include "measure/told.hpp"

#include <algorithm>
#include <optional>

#include "exact/number_text.hpp"
#include "exact/rounding.hpp"
#include "measure/currency.hpp"
#include "measure/unit_table.hpp"

namespace scalepan {

namespace {

constexpr int decimal_places = 3;
constexpr int significant_digits = 4;
constexpr int usual_minor_digits = 2;

bool is_kitchen_fraction(const Rational& x) {
  const Rational d = denominator(x);
  return std::ranges::any_of(std::initializer_list<int>{2, 3, 4, 6, 8},
                             [&](int known) { return d == Rational(known); });
}

bool measured_by_spoon(Unit unit) {
  return std::ranges::any_of(unit.parts(), [](const Unit::Part& part) {
    return part.first->measures != Measures::unstated;
  });
}

/// The exact text, where it is short enough to be read out.
std::optional<std::string> short_text(const Rational& value, Unit unit) {
  const bool metric = unit.dimension().without_stages() == dimension::mass() ||
                      unit.dimension().without_stages() == dimension::volume();
  const bool fraction_first = measured_by_spoon(unit) || !metric;
  if (fraction_first && is_kitchen_fraction(value)) return mixed_text(value);
  if (auto decimal = decimal_text(value, decimal_places)) return decimal;
  if (is_kitchen_fraction(value)) return mixed_text(value);
  return std::nullopt;
}

std::string rounded_text(const Rational& value) {
  constexpr int longest = 12;
  return decimal_text(value, longest).value_or(mixed_text(value));
}

}  // namespace

Quantity in_handy_unit(const Quantity& amount) {
  const Unit unit = amount.unit().without_stages();
  for (const auto& [small, large] : {std::pair{"g", "kg"}, std::pair{"mL", "L"}}) {
    if (unit.symbol() != small && unit.symbol() != large) continue;
    const bool many = abs(amount.coherent()) >= unit_with_symbol(large).ratio;
    return amount.to(Unit::named(many ? large : small));
  }
  return amount;
}

Told tell(const Quantity& amount) {
  if (amount.dimension().currency()) {
    const Told money = tell_money(amount);
    return {(money.is_exact() ? "" : "≈ ") + money.text, money.error};
  }
  const Quantity handy = in_handy_unit(amount);
  const Rational exact = handy.value();
  Rational shown = exact;
  std::string text;
  if (const auto brief = short_text(exact, handy.unit())) {
    text = *brief;
  } else {
    shown = round_to_digits(exact, significant_digits, Rounding::half_up).value;
    text = (shown == exact ? "" : "≈ ") + rounded_text(shown);
  }
  const std::string& label = abs(shown) > 1 ? handy.unit().plural() : handy.unit().label();
  if (!label.empty()) text += " " + label;
  return {text, Quantity(shown - exact, handy.unit())};
}

Told tell_money(const Quantity& money) {
  const auto index = money.dimension().currency();
  const Currency currency =
      index ? currency_at(*index) : Currency{no_currency, usual_minor_digits, ""};
  const int digits = currency.minor_digits < 0 ? usual_minor_digits : currency.minor_digits;
  const Rational exact = money.value();
  const Rational shown = round_to_places(exact, digits, Rounding::half_up).value;
  std::string text = fixed_text(exact, digits);
  if (currency.code != no_currency) text += " " + std::string(currency.code);
  return {text, Quantity(shown - exact, money.unit())};
}

}  // namespace scalepan
