// text() is exact, and reads back to the same quantity in the same unit.
#include <array>
#include <random>
#include <vector>

#include "measure/currency.hpp"
#include "measure/measuring.hpp"
#include "measure/unit_table.hpp"

namespace scalepan {
namespace {

std::vector<Unit> many_units() {
  std::vector<Unit> units{Unit()};
  for (const NamedUnit* unit : all_units()) {
    units.emplace_back(std::vector<Unit::Part>{{unit, 1}});
    units.push_back(units.back().at(Stage::edible));
  }
  for (std::size_t i = 0; i < currency_count(); ++i) {
    units.push_back(u(currency_at(i).code));
  }
  for (const char* text :
       {"1/kg", "1/(kg AP)", "GBP/(kg AP)", "g EP/(piece AP)", "EP/AP", "cooked/EP", "% EP/AP",
        "cm^2", "kg m^2/s^3", "g/cup_us", "JPY/portion"}) {
    units.push_back(u(text));
  }
  return units;
}

TEST_CASE("quantity text: random amounts of every unit read back to the same") {
  std::mt19937_64 random(20240625);
  const auto between = [&](std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random);
  };
  constexpr std::array<std::int64_t, 10> denominators{1, 2, 3, 4, 7, 8, 10, 11, 1000, 99999};
  for (const Unit unit : many_units()) {
    for (int i = 0; i < 40; ++i) {
      const auto pick = static_cast<std::size_t>(between(0, 9));
      const Quantity written(Rational(between(-1000000, 1000000), denominators.at(pick)), unit);
      const Quantity read = parse_quantity(written.text());
      if (read == written && read.unit() == unit) continue;
      FAIL_CHECK(written.text() << " reads back as " << read.text());
    }
  }
}

TEST_CASE("quantity text: the shorter of an exact decimal and a mixed number") {
  CHECK(q("3/2 cup_us").text() == "1.5 cup_us");
  CHECK(q("7/3 cup_us").text() == "2 1/3 cup_us");
  CHECK(q("1/3 1/kg").text() == "1/3 1/kg");
  CHECK(q("12345.6789 g").text() == "12345.6789 g");
  CHECK(q("0.00001 g").text() == "0.00001 g");
  CHECK(q("40").text() == "40");
}

}  // namespace
}  // namespace scalepan
