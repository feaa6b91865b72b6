// Units as text: what is refused, with the whole error.
#include <string>

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

Thrown unit_error(std::string_view text) {
  return thrown_by([&] { return parse_unit(text); });
}

Thrown two_ways(std::size_t offset) {
  return {"unit.doubtful", "what follows \"/\" can be read in two ways",
          "put all that is divided by in brackets: GBP/(kg AP)", offset};
}

Thrown unreadable(const std::string& message, std::size_t offset) {
  return {"unit.unreadable", message, "", offset};
}

TEST_CASE("unit text: more than one unit after the stroke is refused") {
  CHECK(unit_error("GBP/kg AP") == two_ways(7));
  CHECK(unit_error("GBP/kg*AP") == two_ways(6));
  CHECK(unit_error("GBP/kg·AP") == two_ways(6));
  CHECK(unit_error("GBP/kg/AP") == two_ways(6));
  CHECK(unit_error("GBP/(kg AP)/s") == two_ways(11));
  CHECK(unit_error("1/kg AP") == two_ways(5));
  CHECK(unit_error("GBP/kg %") == two_ways(7));
}

TEST_CASE("unit text: a missing unit is told where it is missing") {
  CHECK(unit_error("GBP/") == unreadable("a unit is missing after \"/\"", 4));
  CHECK(unit_error("GBP/ 3") == unreadable("a unit is missing after \"/\"", 5));
  CHECK(unit_error("1/") == unreadable("a unit is missing after \"/\"", 2));
  CHECK(unit_error("GBP/()") == unreadable("a unit is missing after \"(\"", 5));
  CHECK(unit_error("GBP/((kg))") == unreadable("a unit is missing after \"(\"", 5));
  CHECK(unit_error("kg*") == unreadable("a unit is missing after the sign of multiplication", 3));
  CHECK(unit_error("kg · ") == unreadable("a unit is missing after the sign of multiplication", 6));
}

TEST_CASE("unit text: an open bracket is told where it opens") {
  CHECK(unit_error("GBP/(kg AP") == unreadable("a bracket is not closed", 4));
  CHECK(unit_error("GBP/(kg/AP)") == unreadable("a bracket is not closed", 4));
  CHECK(unit_error("g/[cup_us") == unreadable("a bracket is not closed", 2));
}

TEST_CASE("unit text: powers have one digit") {
  CHECK(unit_error("cm^") == unreadable("a whole number is missing after \"^\"", 3));
  CHECK(unit_error("cm^-") == unreadable("a whole number is missing after \"^\"", 4));
  CHECK(unit_error("cm^x") == unreadable("a whole number is missing after \"^\"", 3));
  CHECK(unit_error("cm^10") == Thrown{"unit.power", "a power of a unit has one digit", "", 4});
}

TEST_CASE("unit text: a thirteenth factor is refused where it ends") {
  CHECK(unit_error("g g g g g g s s s s s s m") ==
        unreadable("a unit of more than 12 factors", 25));
  CHECK(unit_error("g g g g g g/(s s s s s s m)") ==
        unreadable("a unit of more than 12 factors", 27));
}

TEST_CASE("unit text: no unit, or something after it") {
  CHECK(unit_error("") == unreadable("no unit is written in \"\"", 0));
  CHECK(unit_error("3 kg") == unreadable("no unit is written in \"3 kg\"", 0));
  CHECK(unit_error("kg 3") == unreadable("no unit is written in \"3\"", 3));
  CHECK(unit_error("(kg)^2") == unreadable("no unit is written in \"(kg)^2\"", 0));
  CHECK(unit_error("kg)") == unreadable("no unit is written in \")\"", 2));
}

TEST_CASE("unit text: a power too high in all is refused where the unit begins") {
  CHECK(unit_error("kg^9 kg") ==
        Thrown{"unit.power", "a power of 10 of g is too high", "at most 9", 0});
  CHECK(unit_error("L^4") ==
        Thrown{"unit.power", "a power of 12 of cm is too high", "at most 9", 0});
  CHECK(unit_error("1/(L^3 cm)") ==
        Thrown{"unit.power", "a power of -10 of cm is too high", "at most 9", 0});
}

}  // namespace
}  // namespace scalepan
