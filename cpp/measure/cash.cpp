#include "measure/cash.hpp"

#include <algorithm>
#include <array>

#include "exact/error.hpp"
#include "measure/currency.hpp"

namespace scalepan {

namespace {

struct Row {
  std::string_view code;
  std::int64_t numerator;
  std::int64_t denominator;
};

// Where the smallest cash amount differs from the minor unit of ISO 4217.
constexpr std::string_view cldr = "Unicode CLDR 48.2, supplemental currencyData, cash rounding";
constexpr std::array cldr_rows = std::to_array<Row>(
    {{"AFN", 1, 1}, {"ALL", 1, 1}, {"AMD", 1, 1}, {"CAD", 1, 20}, {"CHF", 1, 20}, {"COP", 1, 1},
     {"CRC", 1, 1}, {"CZK", 1, 1}, {"DKK", 1, 2}, {"GYD", 1, 1},  {"HUF", 5, 1},  {"IDR", 1, 1},
     {"IQD", 1, 1}, {"IRR", 1, 1}, {"KPW", 1, 1}, {"LAK", 1, 1},  {"LBP", 1, 1},  {"MGA", 1, 1},
     {"MMK", 1, 1}, {"MNT", 1, 1}, {"MUR", 1, 1}, {"NOK", 1, 1},  {"PKR", 1, 1},  {"RSD", 1, 1},
     {"SEK", 1, 1}, {"SOS", 1, 1}, {"SYP", 1, 1}, {"TWD", 1, 1},  {"TZS", 1, 1},  {"UZS", 1, 1},
     {"YER", 1, 1}});

constexpr std::string_view encyclopaedia = "encyclopaedia, cash rounding; not in CLDR";
constexpr std::array other_rows = std::to_array<Row>({{"AUD", 1, 20}, {"NZD", 1, 10}});

constexpr std::string_view iso = "ISO 4217 list one of 2024-06-25, minor unit";

template <std::size_t Size>
const Row* row_of(const std::array<Row, Size>& rows, std::string_view code) {
  const auto row = std::ranges::find(rows, code, &Row::code);
  return row == rows.end() ? nullptr : &*row;
}

}  // namespace

CashStep cash_step(const Quantity& money) {
  const auto index = money.dimension().currency();
  if (!index) {
    fail("money.currency", "cash pays amounts of money, and this is " + money.text(),
         "give an amount such as 20.42 AUD");
  }
  const Currency& currency = currency_at(*index);
  if (const Row* row = row_of(cldr_rows, currency.code)) {
    return {Rational(row->numerator, row->denominator), std::string(cldr)};
  }
  if (const Row* row = row_of(other_rows, currency.code)) {
    return {Rational(row->numerator, row->denominator), std::string(encyclopaedia)};
  }
  if (currency.minor_digits < 0) {
    fail("money.currency",
         std::string(currency.code) + " has no minor unit in ISO 4217, and no coins",
         "give an amount in a currency that is paid in cash");
  }
  return {power(Rational(1, 10), currency.minor_digits), std::string(iso)};
}

CashTotal cash_total(const Quantity& bill, Rounding mode) {
  return cash_total(bill, mode, cash_step(bill));
}

CashTotal cash_total(const Quantity& bill, Rounding mode, const CashStep& step) {
  const Rounded rounded = round_to_multiple(bill.value(), step.step / bill.unit().ratio(), mode);
  return {Quantity(rounded.value, bill.unit()), Quantity(rounded.error, bill.unit()), step};
}

}  // namespace scalepan
