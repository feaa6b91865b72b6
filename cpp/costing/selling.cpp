#include "costing/selling.hpp"

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "measure/currency.hpp"

namespace scalepan {

namespace {

std::string percent_text(const Rational& share) { return exact_text(share * Rational(100)) + " %"; }

/// `7` is 700 %, and hardly meant.
std::string percent_hint(const Rational& share) {
  const std::string number = exact_text(share);
  return "a bare number is a share of 1: for " + number + " per cent write \"" + number + " %\"";
}

void expect_tax(const Rational& tax) {
  if (tax.sign() < 0) fail("sell.tax", "a tax of " + percent_text(tax) + " is below zero");
  if (tax <= Rational(1)) return;
  fail("sell.tax", "a tax of " + percent_text(tax) + " is more than the price that it comes on",
       percent_hint(tax));
}

void expect_share(const Rational& share) {
  if (share.sign() > 0 && share <= Rational(1)) return;
  fail("sell.share", "a food cost of " + percent_text(share) + " of the price has no price",
       share.sign() > 0 ? percent_hint(share)
                        : "give a percentage above 0 and up to 100, of the price without tax");
}

/// The currency of money, or of money a portion; nothing where ISO 4217 names no minor unit.
const Currency* divided_currency(const Quantity& money) {
  for (const auto& [base, power] : money.dimension().factors()) {
    const auto index = base.currency();
    if (index && currency_at(*index).minor_digits >= 0) return &currency_at(*index);
  }
  return nullptr;
}

void expect_ending(const Rational& ending, const Rational& step, const Quantity& money) {
  if (step.sign() <= 0) {
    fail("sell.ending", "prices do not go by steps of " + exact_text(step),
         "give a step above zero, such as 1 or 100");
  }
  if (ending.sign() < 0 || ending >= step) {
    fail("sell.ending",
         exact_text(ending) + " is no ending of a price that goes by steps of " + exact_text(step),
         "give one from 0 to below the step: 0.95 by steps of 1, 80 by steps of 100");
  }
  const Currency* currency = divided_currency(money);
  if (currency == nullptr) return;
  const Rational minor = power(Rational(1, 10), currency->minor_digits);
  for (const Rational& part : {ending, step}) {
    if ((part / minor).is_integer()) continue;
    const std::string code(currency->code);
    fail("sell.ending",
         exact_text(part) + " " + code + " is finer than the minor unit, " + exact_text(minor) +
             " " + code + ": no price ends so",
         "give an ending and a step in whole minor units");
  }
}

/// The smallest price that is not below, of those that lie the ending above a multiple of the step.
Rational raised_to_ending(const Rational& price, const Rational& ending, const Rational& step) {
  return ceil((price - ending) / step) * step + ending;
}

Selling with_net(const Quantity& food_cost, const Quantity& net, const Rational& tax) {
  return {food_cost, net, net * tax, net * (Rational(1) + tax)};
}

}  // namespace

Rational Selling::food_cost_share() const { return food_cost.coherent() / net.coherent(); }

Rational Selling::gross_profit_share() const { return Rational(1) - food_cost_share(); }

Quantity Selling::contribution() const { return net - food_cost; }

Selling selling_at(const Quantity& food_cost, const Quantity& gross, const Rational& tax) {
  expect_tax(tax);
  if (gross.coherent().sign() <= 0) {
    fail("sell.price", "a price of " + gross.text() + " sells nothing", "give one above zero");
  }
  if (!(gross.dimension() == food_cost.dimension())) {
    fail_dimensions("sell.price", "no food cost can be told of", food_cost, gross);
  }
  return with_net(food_cost, gross * (Rational(1) / (Rational(1) + tax)), tax);
}

PriceFound price_for_share(const Quantity& food_cost, const PriceAsked& asked) {
  expect_tax(asked.tax);
  expect_share(asked.food_cost_share);
  const Selling exact =
      with_net(food_cost, food_cost * (Rational(1) / asked.food_cost_share), asked.tax);
  if (!asked.ending) return {exact, exact, exact.gross * Rational(0)};
  expect_ending(*asked.ending, asked.step, exact.gross);
  const Rational price = raised_to_ending(exact.gross.value(), *asked.ending, asked.step);
  const Quantity gross(price, exact.gross.unit());
  if (gross.coherent().is_zero()) return {exact, exact, gross};
  return {exact, selling_at(food_cost, gross, asked.tax), gross - exact.gross};
}

}  // namespace scalepan
