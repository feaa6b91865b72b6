#include "measure/unit.hpp"

#include "measure/measuring.hpp"
#include "measure/unit_table.hpp"

namespace scalepan {
namespace {

TEST_CASE("a unit: the coherent one of a dimension has ratio one and that dimension") {
  for (const char* text : {"kg EP", "L", "cup_us", "GBP/(kg AP)", "g EP/(piece AP)", "m^2", "m^4",
                           "L^2", "kg/L", "h", "1/day", "dozen", "%", "JPY/portion", "1/L"}) {
    INFO(text);
    const Unit coherent = Unit::coherent(u(text).dimension());
    CHECK(coherent.ratio() == Rational(1));
    CHECK(coherent.dimension() == u(text).dimension());
    CHECK(coherent.symbol() == u(text).dimension().coherent_symbol());
  }
  CHECK(Unit::coherent(u("kg EP").dimension()) == u("g EP"));
  CHECK(Unit::coherent(u("GBP/(kg AP)").dimension()).dimension().name() == "GBP/(g AP)");
}

TEST_CASE("a unit: parts of one name are added up") {
  const NamedUnit* kg = &unit_with_symbol("kg");
  const NamedUnit* s = &unit_with_symbol("s");
  CHECK(Unit({{kg, 1}, {s, -1}, {kg, 1}}) == u("kg^2/s"));
  CHECK(Unit({{kg, 1}, {kg, -1}}) == Unit());
  CHECK(Unit().symbol().empty());
  CHECK(Unit().dimension().is_number());
  CHECK(Unit().ratio() == Rational(1));
}

TEST_CASE("a unit: labels leave the region and the stage out") {
  CHECK(u("cup_us EP").label() == "cup");
  CHECK(u("cup_us EP").plural() == "cups");
  CHECK(u("tbsp_au").label() == "tbsp");
  CHECK(u("kg AP").label() == "kg");
  CHECK(u("oz_label").label() == "oz");
  CHECK(u("cm^2").label() == "cm^2");
  CHECK(u("cm^2").plural() == "cm^2");
}

TEST_CASE("a unit: at a stage and without it") {
  CHECK(u("kg").at(Stage::edible) == u("kg EP"));
  CHECK(u("kg").at(Stage::none) == u("kg"));
  CHECK(u("kg EP").without_stages() == u("kg"));
  CHECK(u("g EP/(piece AP)").without_stages() == u("g/piece"));
  CHECK(u("kg").without_stages() == u("kg"));
}

}  // namespace
}  // namespace scalepan
