// Units as text: what the grammar of measure/unit_text.hpp reads.
#include <string>
#include <utility>

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

TEST_CASE("unit text: a name, a product, a quotient, or only a divisor") {
  CHECK(u("kg").symbol() == "kg");
  CHECK(u("kg EP").symbol() == "kg EP");
  CHECK(u("kg*m").symbol() == "kg m");
  CHECK(u("kg * m").symbol() == "kg m");
  CHECK(u("kg·m").symbol() == "kg m");
  CHECK(u("kg · m").symbol() == "kg m");
  CHECK(u("EP/AP").symbol() == "EP/AP");
  CHECK(u("EP / AP").symbol() == "EP/AP");
  CHECK(u("1/kg").symbol() == "1/kg");
  CHECK(u("1/(kg AP)").symbol() == "1/(kg AP)");
  CHECK(u("%").symbol() == "%");
  CHECK(u("% EP/AP").symbol() == "% EP/AP");
}

TEST_CASE("unit text: what is divided by more than one unit stands in brackets") {
  CHECK(u("GBP/(kg AP)").symbol() == "GBP/(kg AP)");
  CHECK(u("GBP/( kg AP )").symbol() == "GBP/(kg AP)");
  CHECK(u("GBP/(kg*AP)").symbol() == "GBP/(kg AP)");
  CHECK(u("g EP/(piece AP)").symbol() == "g EP/(piece AP)");
  CHECK(u("kg*(m s)").symbol() == "kg m s");
}

TEST_CASE("unit text: powers") {
  CHECK(u("cm^2").symbol() == "cm^2");
  CHECK(u("cm²") == u("cm^2"));
  CHECK(u("cm³") == u("cm^3"));
  CHECK(u("s^-1") == u("1/s"));
  CHECK(u("g cm^-3") == u("g/cm^3"));
  CHECK(u("g/cm^-3") == u("g cm^3"));
  CHECK(u("kg kg") == u("kg^2"));
  CHECK(u("kg/kg").symbol().empty());
  CHECK(u("kg^0").symbol().empty());
  CHECK(u("cm^9").symbol() == "cm^9");
}

TEST_CASE("unit text: the ratio is the product of the parts' ratios") {
  CHECK(u("kg/L").ratio() == Rational(1));
  CHECK(u("g/[cup_us]").ratio() == 1 / Rational(473176473, 2000000));
  CHECK(u("GBP/(kg AP)").ratio() == Rational(1, 1000));
  CHECK(u("% EP/AP").ratio() == Rational(1, 100));
  CHECK(u("m^2").ratio() == Rational(10000));
  CHECK(u("1/dozen").ratio() == Rational(1, 12));
}

TEST_CASE("unit text: names of two words, in products too") {
  CHECK(u("fl oz", Measures::us) == u("fl_oz_us"));
  CHECK(u("fl. oz", Measures::us) == u("fl_oz_us"));
  CHECK(u("fl  oz", Measures::us) == u("fl_oz_us"));
  CHECK(u("fl oz EP", Measures::us).symbol() == "fl_oz_us EP");
  CHECK(u("g/fl oz", Measures::us).symbol() == "g/fl_oz_us");
}

TEST_CASE("unit text: symbols read back to the same unit") {
  for (const char* text : {"kg", "1/kg", "GBP/(kg AP)", "g EP/(piece AP)", "cup_us cooked", "cm^2",
                           "kg m^2/s^3", "1/(m^2 s)", "% EP/AP", "JPY/portion", "oz_label"}) {
    INFO(text);
    CHECK(u(text).symbol() == text);
    CHECK(u(u(text).symbol()) == u(text));
  }
}

TEST_CASE("unit text: twelve factors are read") {
  const std::string twelve = "g g g g g g s s s s s s";
  CHECK(u(twelve) == u("g^6 s^6"));
  CHECK(u("g g g g g g/(s s s s s s)") == u("g^6/s^6"));
}

TEST_CASE("unit text: reading stops where no unit goes on") {
  std::size_t position = 2;
  const auto unit = read_unit("5 kg, sliced", position, Measures::unstated);
  REQUIRE(unit);
  CHECK(*unit == u("kg"));
  CHECK(position == 4);
  position = 2;
  CHECK_FALSE(read_unit("5 , sliced", position, Measures::unstated));
  CHECK(position == 2);
}

TEST_CASE("unit text: a kitchen unit is one name and its full stop") {
  const auto kitchen = [](std::string_view text, Measures measures = Measures::unstated) {
    std::size_t position = 0;
    const auto unit = read_kitchen_unit(text, position, measures);
    return std::pair(unit ? unit->symbol() : "none", position);
  };
  CHECK(kitchen("lb. leeks") == std::pair<std::string, std::size_t>("lb", 3));
  CHECK(kitchen(" g leeks") == std::pair<std::string, std::size_t>("g", 2));
  CHECK(kitchen("fl. oz. milk", Measures::us) ==
        std::pair<std::string, std::size_t>("fl_oz_us", 7));
  CHECK(kitchen("leeks") == std::pair<std::string, std::size_t>("none", 0));
  CHECK(kitchen("AP leeks") == std::pair<std::string, std::size_t>("none", 0));
  CHECK(kitchen("") == std::pair<std::string, std::size_t>("none", 0));
}

TEST_CASE("unit text: the letter in front of an accent or a hyphen is no kitchen unit") {
  for (const char* text : {"gâteaux", "lééks", "sèches", "day-old loaf", "pint-sized jars"}) {
    INFO(text);
    std::size_t position = 0;
    CHECK_FALSE(read_kitchen_unit(text, position, Measures::us));
    CHECK(position == 0);
  }
}

}  // namespace
}  // namespace scalepan
