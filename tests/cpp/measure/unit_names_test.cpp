// Which unit a name means: regions, doubtful letters, capitals, misspellings.
#include <string>
#include <utility>

#include "measure/measuring.hpp"
#include "measure/unit_table.hpp"

namespace scalepan {
namespace {

Thrown unit_error(std::string_view text, Measures measures = Measures::unstated) {
  return thrown_by([&] { return parse_unit(text, measures); });
}

// The choices are told in mL: 473176473/2000000 is 236.6, 454609/1600 is 284.1.
TEST_CASE("names: a regional name is refused where the measures are not stated") {
  const auto which = [](const std::string& name, const std::string& choices) {
    return Thrown{"unit.which_measures", "which " + name + " is meant is not stated",
                  "measures = one of: " + choices, 0};
  };
  CHECK(unit_error("cup") ==
        which("cup", "us 236.6 mL, imperial 284.1 mL, metric 250.0 mL, au 250.0 mL"));
  CHECK(unit_error("tbsp") ==
        which("tbsp", "us 14.8 mL, imperial 15.0 mL, metric 15.0 mL, au 20.0 mL"));
  CHECK(unit_error("pint") == which("pt", "us 473.2 mL, imperial 568.3 mL, metric 500.0 mL"));
  CHECK(unit_error("gallons") == which("gal", "us 3785.4 mL, imperial 4546.1 mL"));
  CHECK(unit_error("Cups") ==
        which("cup", "us 236.6 mL, imperial 284.1 mL, metric 250.0 mL, au 250.0 mL"));
  CHECK(unit_error("fl oz") == which("fl oz", "us 29.6 mL, imperial 28.4 mL, metric 30.0 mL"));
}

TEST_CASE("names: a region without the unit is told, with the regions that have it") {
  CHECK(unit_error("gallon", Measures::metric) ==
        Thrown{"unit.which_measures", "metric measures have no gal",
               "there are: us 3785.4 mL, imperial 4546.1 mL", 0});
  CHECK(unit_error("pint", Measures::au) ==
        Thrown{"unit.which_measures", "au measures have no pt",
               "there are: us 473.2 mL, imperial 568.3 mL, metric 500.0 mL", 0});
  CHECK(unit_error("g pint", Measures::au).offset == 2);
  CHECK(unit_error("bushel", Measures::imperial) == Thrown{"unit.which_measures",
                                                           "imperial measures have no bushel",
                                                           "there are: us 35239.1 mL", 0});
}

TEST_CASE("names: letters that two units share are refused") {
  const auto doubtful = [](const std::string& letter, const std::string& meanings) {
    return Thrown{"unit.doubtful", "\"" + letter + "\" can mean " + meanings, "write the unit out",
                  0};
  };
  CHECK(unit_error("T", Measures::us) == doubtful("T", "tbsp or tsp"));
  CHECK(unit_error("t", Measures::us) == doubtful("t", "tsp or tbsp"));
  CHECK(unit_error("Tb") == doubtful("Tb", "tbsp or tsp"));
  CHECK(unit_error("c", Measures::us) == doubtful("c", "cup or cL"));
  CHECK(unit_error("C") == doubtful("C", "cup or degrees Celsius"));
  CHECK(unit_error("G") == doubtful("G", "g or gal"));
}

TEST_CASE("names: capitals do not matter in names of two letters and more") {
  for (const auto& [written, symbol] : {std::pair{"KG", "kg"},
                                        {"Kg", "kg"},
                                        {"kG", "kg"},
                                        {"ML", "mL"},
                                        {"Ml", "mL"},
                                        {"LB", "lb"},
                                        {"Oz", "oz"},
                                        {"Litres", "L"},
                                        {"GRAMS", "g"},
                                        {"Min", "min"},
                                        {"PER CENT", "%"}}) {
    INFO(written);
    CHECK(u(written) == u(symbol));
  }
  CHECK(u("Tbsp", Measures::au) == u("tbsp_au"));
  CHECK(u("TBSP", Measures::us) == u("tbsp_us"));
  CHECK(u("Fl Oz", Measures::imperial) == u("fl_oz_imperial"));
}

TEST_CASE("names: capitals matter in single letters, symbols, stages and currencies") {
  CHECK(u("l") == u("L"));
  CHECK(u("m") == u("metre"));
  for (const char* written : {"M", "S", "H", "ap", "Ep", "Cooked", "gbp", "Gbp", "CUP_US"}) {
    INFO(written);
    CHECK(unit_error(written, Measures::us).code == "unit.unknown");
  }
}

TEST_CASE("names: an unknown one is told with the nearest") {
  CHECK(unit_error("cupp") == Thrown{"unit.unknown", "unknown unit \"cupp\"", "nearest: cup", 0});
  CHECK(unit_error("g teaspon") ==
        Thrown{"unit.unknown", "unknown unit \"teaspon\"", "nearest: tsp", 2});
  CHECK(unit_error("kilogrm") ==
        Thrown{"unit.unknown", "unknown unit \"kilogrm\"", "nearest: kg", 0});
  CHECK(unit_error("zzzzzzzz") == Thrown{"unit.unknown", "unknown unit \"zzzzzzzz\"", "", 0});
  CHECK(unit_error("g/[cup_uk]") == Thrown{"unit.unknown", "unknown UCUM code [cup_uk]", "", 2});
}

TEST_CASE("names: one slip of the pen is a misspelt unit and two are not") {
  CHECK(misspells_unit("tbps"));
  CHECK(misspells_unit("teaspon"));
  CHECK(misspells_unit("Grms"));
  CHECK_FALSE(misspells_unit("leeks"));
  CHECK_FALSE(misspells_unit("eggs"));
  CHECK_FALSE(misspells_unit("tbxxp"));
  CHECK_FALSE(misspells_unit("x"));
}

TEST_CASE("names: in a recipe line no currency and no stage is a unit") {
  for (const char* name : {"AP", "EP", "cooked", "drained", "served", "GBP", "ALL", "TOP"}) {
    INFO(name);
    CHECK(find_unit(name, Measures::us, UnitScope::kitchen) == nullptr);
    CHECK(find_unit(name, Measures::us) != nullptr);
  }
  CHECK(find_unit("cup", Measures::us, UnitScope::kitchen) == find_unit("cup_us", Measures::us));
}

TEST_CASE("names: measures by their own names") {
  CHECK(measures_named("") == Measures::unstated);
  CHECK(measures_named("metric") == Measures::metric);
  CHECK(measures_named("us") == Measures::us);
  CHECK(measures_named("imperial") == Measures::imperial);
  CHECK(measures_named("au") == Measures::au);
  CHECK(name_of(Measures::imperial) == "imperial");
  CHECK(name_of(Measures::unstated).empty());
  CHECK(measures_named("US") == Measures::us);
  CHECK(thrown_by([] { return measures_named("uk"); }) ==
        Thrown{"unit.measures", "no measures are called \"uk\"",
               "there are: metric, us, imperial, au"});
}

}  // namespace
}  // namespace scalepan
