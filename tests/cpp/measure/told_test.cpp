// Amounts told to people: handy units, kitchen fractions, rounding marked and its error exact.
#include "measure/told.hpp"

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

std::string told(std::string_view text) { return tell(q(text)).text; }

TEST_CASE("told: grams and litres take the handy unit") {
  CHECK(told("999 g") == "999 g");
  CHECK(told("1000 g") == "1 kg");
  CHECK(told("5000 g EP") == "5 kg");
  CHECK(told("0.25 kg") == "250 g");
  CHECK(told("1500 mL") == "1.5 L");
  CHECK(told("0.05 L") == "50 mL");
  CHECK(told("-1500 g") == "-1.5 kg");
  CHECK(told("2 lb") == "2 lb");
  CHECK(told("5000 mg") == "5000 mg");
}

TEST_CASE("told: spoons, cups and counts in the fractions that are sold") {
  CHECK(told("2 1/4 tsp_us") == "2 1/4 tsp");
  CHECK(told("1/3 cup_us") == "1/3 cup");
  CHECK(told("1 1/2 cup_us") == "1 1/2 cups");
  CHECK(told("0.125 cup_us") == "1/8 cup");
  CHECK(told("5/6 cup_au") == "5/6 cup");
  CHECK(told("0.2 cup_us") == "0.2 cup");
  CHECK(told("7/2 piece") == "3 1/2 pieces");
  CHECK(told("1.5 kg") == "1.5 kg");
  CHECK(told("500/3 g") == "166 2/3 g");
}

TEST_CASE("told: one is singular, more than one is plural") {
  CHECK(told("1 cup_us") == "1 cup");
  CHECK(told("1/2 cup_us") == "1/2 cup");
  CHECK(told("2 cup_us") == "2 cups");
  CHECK(told("1 portion") == "1 portion");
  CHECK(told("40 portion") == "40 portions");
  CHECK(told("40") == "40");
}

// 125000/11 g is 11.3636... kg, told as 11.36 kg, which is 40/11 g less: 11360 - 125000/11.
TEST_CASE("told: what is neither is rounded to four digits and carries its exact error") {
  const Told leeks = tell(q("125000/11 g AP"));
  CHECK(leeks.text == "≈ 11.36 kg");
  CHECK_FALSE(leeks.is_exact());
  CHECK(leeks.error.coherent() == Rational(11360) - Rational(125000, 11));
  CHECK(leeks.error.coherent() == Rational(-40, 11));
  CHECK(leeks.error.stage() == Stage::as_purchased);
  CHECK(told("1/7 cup_us") == "≈ 0.1429 cup");
  CHECK(told("16/7 kg") == "≈ 2.286 kg");
  CHECK(told("100000/7 piece") == "≈ 14290 pieces");
  CHECK(told("1.00005 kg") == "≈ 1 kg");
  CHECK(tell(q("1.00005 kg")).error == q("-0.05 g"));
}

TEST_CASE("told: exact texts have no error") {
  for (const char* text : {"5 kg EP", "1/3 cup_us", "0.125 L", "2/3 kg", "0 g"}) {
    INFO(text);
    CHECK(tell(q(text)).is_exact());
  }
}

// ISO 4217: GBP 2 digits, JPY 0, KWD 3; XAU has none and is told with two.
TEST_CASE("told: money in the minor unit of its currency") {
  CHECK(tell_money(q("11.5 GBP")).text == "11.50 GBP");
  CHECK(tell_money(q("11.5 GBP")).is_exact());
  CHECK(tell_money(q("1 17/160 GBP")).text == "1.11 GBP");
  CHECK(tell_money(q("1 17/160 GBP")).error.coherent() == Rational(111, 100) - Rational(177, 160));
  CHECK(tell_money(q("0.005 GBP")).text == "0.01 GBP");
  CHECK(tell_money(q("-0.005 GBP")).text == "-0.01 GBP");
  CHECK(tell_money(q("1234.5 JPY")).text == "1235 JPY");
  CHECK(tell_money(q("1234.5 JPY")).error == q("0.5 JPY"));
  CHECK(tell_money(q("1.2345 KWD")).text == "1.235 KWD");
  CHECK(tell_money(q("2 XAU")).text == "2.00 XAU");
}

TEST_CASE("told: money in no currency has no code") {
  CHECK(tell_money(q("44.25 XXX")).text == "44.25");
  CHECK(tell_money(q("2/3 XXX")).text == "0.67");
}

}  // namespace
}  // namespace scalepan
