// Every unit against its definition. Sources: NIST Handbook 44, appendix C (US gallon 231 cubic
// inches, bushel 2150.42 cubic inches, cup 8 fl oz), UK Weights and Measures Act 1985 (gallon
// 4.54609 L, pound 0.45359237 kg), UCUM essence 2.2 for the codes, 21 CFR 101.9(b)(5)(viii) for
// the label measures, NSW Health "Conversion chart" for Australia.
#include "measure/unit_table.hpp"

#include <set>
#include <vector>

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

constexpr Measures any = Measures::unstated;
constexpr Measures us = Measures::us;
constexpr Measures imperial = Measures::imperial;
constexpr Measures metric = Measures::metric;
constexpr Measures au = Measures::au;

// An inch is 2.54 cm, so a cubic inch is 2.54 * 2.54 * 2.54 mL.
const Rational cubic_inch = Rational(254, 100) * Rational(254, 100) * Rational(254, 100);
const Rational us_gallon = 231 * cubic_inch;
const Rational us_bushel = Rational(215042, 100) * cubic_inch;
const Rational imperial_gallon = Rational(454609, 100);
const Rational pound = Rational(45359237, 100000);

struct Row {
  const char* names;  // one name in singular and one in plural, or empty
  Measures measures;
  const char* symbol;
  const char* ucum;
  Rational by_definition;
  Rational as_printed;  // the fraction of mL or g as the sources print it
};

const std::vector<Row>& rows() {
  static const std::vector<Row> all{
      {"gallon|gallons", us, "gal_us", "[gal_us]", us_gallon, {473176473, 125000}},
      {"quart|quarts", us, "qt_us", "[qt_us]", us_gallon / 4, {473176473, 500000}},
      {"pint|pints", us, "pt_us", "[pt_us]", us_gallon / 8, {473176473, 1000000}},
      {"cup|cups", us, "cup_us", "[cup_us]", us_gallon / 16, {473176473, 2000000}},
      {"gill|gills", us, "gill_us", "[gil_us]", us_gallon / 32, {473176473, 4000000}},
      {"fl oz|fluid ounces", us, "fl_oz_us", "[foz_us]", us_gallon / 128, {473176473, 16000000}},
      {"tbsp|tablespoons", us, "tbsp_us", "[tbs_us]", us_gallon / 256, {473176473, 32000000}},
      {"tsp|teaspoons", us, "tsp_us", "[tsp_us]", us_gallon / 768, {157725491, 32000000}},
      {"fluid dram|fl dr", us, "fl_dr_us", "[fdr_us]", us_gallon / 1024, {473176473, 128000000}},
      {"bushel|bushels", us, "bu_us", "[bu_us]", us_bushel, {3523907016688, 100000000}},
      {"peck|pecks", us, "pk_us", "[pk_us]", us_bushel / 4, {880976754172, 100000000}},
      {"dry quart|dry quarts",
       us,
       "dry_qt_us",
       "[dqt_us]",
       us_bushel / 32,
       {1101220942715, 1000000000}},
      {"dry pint|dry pints",
       us,
       "dry_pt_us",
       "[dpt_us]",
       us_bushel / 64,
       {5506104713575, 10000000000}},
      {"gallon|gal", imperial, "gal_imperial", "[gal_br]", imperial_gallon, {454609, 100}},
      {"quart|qts", imperial, "qt_imperial", "[qt_br]", imperial_gallon / 4, {454609, 400}},
      {"pint|pts", imperial, "pt_imperial", "[pt_br]", imperial_gallon / 8, {454609, 800}},
      {"gill|gills", imperial, "gill_imperial", "[gil_br]", imperial_gallon / 32, {454609, 3200}},
      {"fl oz|fluid ounce",
       imperial,
       "fl_oz_imperial",
       "[foz_br]",
       imperial_gallon / 160,
       {454609, 16000}},
      {"", any, "cup_label", "[cup_m]", 240, 240},
      {"", any, "fl_oz_label", "[foz_m]", 30, 30},
      {"", any, "tbsp_label", "[tbs_m]", 15, 15},
      {"", any, "tsp_label", "[tsp_m]", 5, 5},
      {"", any, "oz_label", "[oz_m]", 28, 28},
      {"cup|cups", metric, "cup_metric", "", 250, 250},
      {"pint|pints", metric, "pt_metric", "", 500, 500},
      {"cup|cups", au, "cup_au", "", 250, 250},
      {"tbsp|tablespoons", au, "tbsp_au", "", 20, 20},
      {"tsp|teaspoon", au, "tsp_au", "", 5, 5},
      {"pound|lbs", any, "lb", "[lb_av]", 7000 * Rational(6479891, 100000000), {45359237, 100000}},
      {"ounce|oz", any, "oz", "[oz_av]", pound / 16, {45359237, 1600000}},
      {"stone|stones", any, "stone", "[stone_av]", 14 * pound, {635029318, 100000}},
      {"", any, "drop", "[drp]", {1, 20}, {1, 20}},
  };
  return all;
}

TEST_CASE("units: the printed fraction is the definition worked out") {
  for (const Row& row : rows()) {
    INFO(row.symbol);
    CHECK(row.as_printed == row.by_definition);
  }
}

TEST_CASE("units: each is found by its symbol and by its UCUM code whatever the measures") {
  for (const Row& row : rows()) {
    INFO(row.symbol);
    for (const Measures measures : {any, us, imperial, metric, au}) {
      CHECK(u(row.symbol, measures).ratio() == row.as_printed);
      if (*row.ucum != '\0') CHECK(u(row.ucum, measures) == u(row.symbol));
    }
  }
}

TEST_CASE("units: each is found by its names where its measures are stated") {
  for (const Row& row : rows()) {
    const std::string names = row.names;
    if (names.empty()) continue;
    const std::size_t bar = names.find('|');
    INFO(names);
    CHECK(u(names.substr(0, bar), row.measures) == u(row.symbol));
    CHECK(u(names.substr(bar + 1), row.measures) == u(row.symbol));
  }
}

// GNU units 2.22: brtablespoon 15 mL, brteaspoon 5 mL, brdessertspoon 10 mL, brcup half a pint.
TEST_CASE("units: British kitchen spoons and cup") {
  CHECK(u("tbsp", imperial).ratio() == Rational(15));
  CHECK(u("tsp", imperial).ratio() == Rational(5));
  CHECK(u("dessertspoon", imperial).ratio() == Rational(10));
  CHECK(u("cup", imperial).ratio() == Rational(284130625, 1000000));
}

// NIST SP 430, "Equivalents of the common capacity units used in the kitchen".
TEST_CASE("units: the US kitchen table of NIST holds exactly") {
  const auto is = [](const char* one, const char* other) { return q(one, us) == q(other, us); };
  CHECK(is("1 tsp", "1 1/3 fl dr"));
  CHECK(is("1 tsp", "1/6 fl oz"));
  CHECK(is("1 tsp", "1/48 cup"));
  CHECK(is("1 tbsp", "3 tsp"));
  CHECK(is("1 cup", "16 tbsp"));
  CHECK(is("1 gill", "1/2 cup"));
  CHECK(is("1 quart", "256 fl dr"));
  CHECK(is("1 quart", "8 gill"));
  CHECK(is("1 quart", "2 pint"));
}

TEST_CASE("units: metric, length, time and counts") {
  CHECK(q("1 kg") == q("1000 g"));
  CHECK(q("1 g") == q("1000 mg"));
  CHECK(q("1 L") == q("10 dL"));
  CHECK(q("1 dL") == q("10 cL"));
  CHECK(q("1 cL") == q("10 mL"));
  CHECK(q("1 inch") == q("25.4 mm"));
  CHECK(q("1 m") == q("100 cm"));
  CHECK(q("1 day") == q("24 h"));
  CHECK(q("1 h") == q("60 min"));
  CHECK(q("1 min") == q("60 s"));
  CHECK(q("1 dozen") == q("12 pieces"));
  CHECK(q("44 %") == q("0.44"));
  CHECK(q("44 per cent") == q("44 %"));
  CHECK(q("1 mL").to(u("cm^3")).value() == Rational(1));
}

TEST_CASE("units: symbols are unique and read back, as do the UCUM codes") {
  std::set<std::string> symbols;
  for (const NamedUnit* unit : all_units()) {
    INFO(unit->symbol);
    CHECK(symbols.insert(unit->symbol).second);
    CHECK(find_unit(unit->symbol, unit->measures) == unit);
    if (!unit->ucum.empty()) {
      const bool bracketed = unit->ucum.front() == '[';
      CHECK(find_unit(bracketed ? unit->ucum : "[" + unit->ucum + "]", any) == unit);
    }
  }
}

}  // namespace
}  // namespace scalepan
