#include "costing/selling.hpp"

#include "exact/error.hpp"
#include "exact/number_text.hpp"

namespace scalepan {

namespace {

std::string percent_text(const Rational& share) { return exact_text(share * Rational(100)) + " %"; }

void expect_tax(const Rational& tax) {
  if (tax.sign() >= 0) return;
  fail("sell.tax", "a tax of " + percent_text(tax) + " is below zero");
}

/// The smallest price of the ending that is not below.
Rational raised_to_ending(const Rational& price, const Rational& ending) {
  return ceil(price - ending) + ending;
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
  const Rational& share = asked.food_cost_share;
  if (share.sign() <= 0 || share > Rational(1)) {
    fail("sell.share", "a food cost of " + percent_text(share) + " of the price has no price",
         "give a percentage above 0 and up to 100, of the price without tax");
  }
  if (asked.ending && (asked.ending->sign() < 0 || *asked.ending >= Rational(1))) {
    fail("sell.ending", exact_text(*asked.ending) + " is no ending of a price",
         "give what stands behind the whole units, such as 0.95 or 0");
  }
  const Selling exact = with_net(food_cost, food_cost * (Rational(1) / share), asked.tax);
  if (!asked.ending) return {exact, exact, exact.gross * Rational(0)};
  const Rational price = raised_to_ending(exact.gross.value(), *asked.ending);
  const Quantity gross(price, exact.gross.unit());
  if (gross.coherent().is_zero()) return {exact, exact, gross};
  return {exact, selling_at(food_cost, gross, asked.tax), gross - exact.gross};
}

}  // namespace scalepan
