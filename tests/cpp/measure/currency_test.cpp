// ISO 4217, list one of 2024-06-25: the minor units as that list prints them.
#include "measure/currency.hpp"

#include <array>
#include <map>

#include "check.hpp"

namespace scalepan {
namespace {

int digits_of(std::string_view code) {
  const auto index = currency_coded(code);
  return index ? currency_at(*index).minor_digits : -2;
}

TEST_CASE("currencies: those without a minor unit") {
  for (const char* code : {"BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF",
                           "UGX", "UYI", "VND", "VUV", "XAF", "XOF", "XPF"}) {
    INFO(code);
    CHECK(digits_of(code) == 0);
  }
}

TEST_CASE("currencies: those with three and four digits") {
  for (const char* code : {"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"}) {
    INFO(code);
    CHECK(digits_of(code) == 3);
  }
  CHECK(digits_of("CLF") == 4);
  CHECK(digits_of("UYW") == 4);
}

TEST_CASE("currencies: two digits for the rest, and none for metals and funds") {
  for (const char* code : {"GBP", "EUR", "USD", "AUD", "CHF", "HUF", "IDR", "CAD", "NZD"}) {
    INFO(code);
    CHECK(digits_of(code) == 2);
  }
  for (const char* code : {"XAU", "XAG", "XPT", "XPD", "XDR", "XTS", "XXX"}) {
    INFO(code);
    CHECK(digits_of(code) == -1);
  }
}

TEST_CASE("currencies: seventeen have 0 digits, seven 3, two 4 and 140 have 2") {
  std::map<int, int> counts;
  for (std::size_t i = 0; i < currency_count(); ++i) ++counts[currency_at(i).minor_digits];
  CHECK(counts[0] == 17);
  CHECK(counts[3] == 7);
  CHECK(counts[4] == 2);
  CHECK(counts[2] == 140);
  CHECK(counts.size() == 5);
}

TEST_CASE("currencies: found by their three capitals only") {
  for (std::size_t i = 0; i < currency_count(); ++i) {
    CHECK(currency_coded(currency_at(i).code) == i);
    CHECK(currency_at(i).code.size() == 3);
    CHECK_FALSE(currency_at(i).name.empty());
  }
  CHECK_FALSE(currency_coded("gbp"));
  CHECK_FALSE(currency_coded("GB"));
  CHECK_FALSE(currency_coded(""));
  CHECK_FALSE(currency_coded("ZZZ"));
}

}  // namespace
}  // namespace scalepan
