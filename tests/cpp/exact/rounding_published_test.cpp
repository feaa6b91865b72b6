// Printed tables of the Armed Forces Recipe Service, TM 10-412 / NAVSUP P-7, General Information
// card No. 1(2) (2003 edition).
#include <array>
#include <string>

#include "check.hpp"
#include "exact/rounding.hpp"

namespace scalepan {
namespace {

std::string pounds_of_ounces(const Rational& ounces) { return fixed_text(ounces / 16, 2); }

Rational kitchen_ounces(const Rational& ounces) {
  return round_to_multiple(ounces, Rational(1, 4), Rounding::half_up).value;
}

TEST_CASE("ounces to decimal pounds as printed, 2, 6, 10 and 14 oz being ties") {
  const std::array<std::string, 16> printed{"0.06", "0.13", "0.19", "0.25", "0.31", "0.38",
                                            "0.44", "0.50", "0.56", "0.63", "0.69", "0.75",
                                            "0.81", "0.88", "0.94", "1.00"};
  for (std::size_t ounces = 1; ounces <= printed.size(); ++ounces) {
    CAPTURE(ounces);
    CHECK(pounds_of_ounces(ounces) == printed.at(ounces - 1));
  }
}

TEST_CASE("the printed row tells half up from the other modes") {
  CHECK(round_to_places(Rational(2, 16), 2, Rounding::half_up).value == Rational(13, 100));
  CHECK(round_to_places(Rational(2, 16), 2, Rounding::half_even).value == Rational(12, 100));
  CHECK(round_to_places(Rational(2, 16), 2, Rounding::half_down).value == Rational(12, 100));
}

TEST_CASE("the printed scale of ounce roundings, every hundredth of it") {
  struct Band {
    int first;
    int last;
    Rational ounces;
  };
  const std::array<Band, 5> scale{{{0, 12, 0},
                                   {13, 37, Rational(1, 4)},
                                   {38, 62, Rational(1, 2)},
                                   {63, 87, Rational(3, 4)},
                                   {88, 99, 1}}};
  int hundredths_seen = 0;
  for (const auto& [first, last, ounces] : scale) {
    for (int hundredths = first; hundredths <= last; ++hundredths, ++hundredths_seen) {
      CAPTURE(hundredths);
      CHECK(kitchen_ounces(Rational(hundredths, 100)) == ounces);
    }
  }
  CHECK(hundredths_seen == 100);
}

TEST_CASE("the worked example: .35 lb is 5.60 oz, weighed as 5-1/2 oz") {
  const Rational ounces = parse_amount_number(".35") * 16;
  CHECK(fixed_text(ounces, 2) == "5.60");
  CHECK(kitchen_ounces(ounces) == parse_amount_number("5-1/2"));
}

TEST_CASE("the worked examples of pounds and ounces as decimal pounds") {
  CHECK(fixed_text(1 + Rational(4, 16), 2) == "1.25");
  CHECK(fixed_text(2 + Rational(10, 16), 2) == "2.63");
}

}  // namespace
}  // namespace scalepan
