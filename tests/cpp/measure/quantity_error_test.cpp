// Clashes of dimensions: both sides are named, and both stages where these differ.
#include "measure/measuring.hpp"

namespace scalepan {
namespace {

constexpr const char* link =
    "a share links the stages: multiply by it one way, divide by it the other";

TEST_CASE("quantities: sums and differences of unlike kinds") {
  CHECK(thrown_by([] { return q("5 kg") + q("2 L"); }) ==
        Thrown{"quantity.add", "cannot add 5 kg and 2 L: weight and volume"});
  CHECK(thrown_by([] { return q("5 kg") - q("3"); }) ==
        Thrown{"quantity.add", "cannot subtract 5 kg and 3: weight and plain number"});
  CHECK(thrown_by([] { return q("1 GBP") + q("1 EUR"); }) ==
        Thrown{"quantity.add", "cannot add 1 GBP and 1 EUR: money in GBP and money in EUR"});
}

TEST_CASE("quantities: a clash of stages names both stages") {
  CHECK(thrown_by([] { return q("5 kg EP") + q("3 kg AP"); }) ==
        Thrown{"quantity.add",
               "cannot add 5 kg EP and 3 kg AP: weight EP and weight AP; stages EP (edible "
               "portion) and AP (as purchased)",
               link});
  CHECK(thrown_by([] { return q("240 g drained") < q("1 kg"); }) ==
        Thrown{"quantity.compare",
               "cannot compare 240 g drained and 1 kg: weight drained and weight; stages drained "
               "(drained) and no stage",
               "state the stage of both"});
  CHECK(thrown_by([] { return q("5 kg EP").to(u("g AP")); }) ==
        Thrown{"quantity.convert",
               "cannot turn 5 kg EP into g AP: weight EP and weight AP; stages EP (edible portion) "
               "and AP (as purchased)",
               link});
  CHECK(
      thrown_by([] { return q("2 GBP/(kg AP)").to(u("GBP/kg")); }) ==
      Thrown{"quantity.convert",
             "cannot turn 2 GBP/(kg AP) into GBP/kg: GBP/(g AP) and GBP/g; stages no stage and no "
             "stage",
             "state the stage of both"});
}

TEST_CASE("quantities: no way from one kind to another") {
  CHECK(thrown_by([] { return q("2 cup_us").to(u("g")); }) ==
        Thrown{"quantity.convert", "cannot turn 2 cup_us into g: volume and weight"});
  CHECK(thrown_by([] { return q("2 kg EP").to(u("mL")); }) ==
        Thrown{"quantity.convert",
               "cannot turn 2 kg EP into mL: weight EP and volume; stages EP (edible portion) and "
               "no stage"});
  CHECK(
      thrown_by([] { return q("5 kg").to(Unit()); }) ==
      Thrown{"quantity.convert", "cannot turn 5 kg into a plain number: weight and plain number"});
}

TEST_CASE("quantities: division by zero is refused") {
  CHECK(thrown_by([] { return q("5 kg") / q("0 g"); }).code == "number.division_by_zero");
  CHECK(thrown_by([] { return q("5 kg") / q("0"); }).code == "number.division_by_zero");
}

}  // namespace
}  // namespace scalepan
