// Loads: both splits, counts kept whole, texts and errors.
#include "measure/loads.hpp"

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

Loads full_and_short(std::string_view total, std::string_view capacity) {
  return loads_of(q(total), q(capacity), LoadSplit::full_and_short);
}
Loads equal(std::string_view total, std::string_view capacity) {
  return loads_of(q(total), q(capacity), LoadSplit::equal);
}

Quantity sum_of(const Loads& loads) {
  Quantity sum = loads.capacity * Rational(0);
  for (const auto& [count, each] : loads.parts) sum = sum + each * count;
  return sum;
}

TEST_CASE("loads: full ones and one short") {
  const Loads loads = full_and_short("13 kg", "4 kg");
  CHECK(loads.count() == 4);
  CHECK(loads.full() == 3);
  CHECK(loads.each() == q("4 kg"));
  CHECK(loads.short_one() == q("1 kg"));
  CHECK(loads.text() == "3 loads of 4 kg and one of 1 kg");
  CHECK(full_and_short("7 L", "4 L").text() == "one load of 4 L and one of 3 L");
}

TEST_CASE("loads: none is short where the total is a multiple") {
  const Loads loads = full_and_short("12 kg", "4 kg");
  CHECK(loads.count() == 3);
  CHECK(loads.full() == 3);
  CHECK(loads.short_one() == q("0 kg"));
  CHECK(loads.text() == "3 loads of 4 kg");
}

TEST_CASE("loads: a total below one load is one load, and nothing is none") {
  for (const LoadSplit split : {LoadSplit::full_and_short, LoadSplit::equal}) {
    const Loads one = loads_of(q("1 kg"), q("4 kg"), split);
    CHECK(one.count() == 1);
    CHECK(one.full() == 0);
    CHECK(one.each() == q("1 kg"));
    CHECK(one.short_one() == q("1 kg"));
    CHECK(one.text() == "one load of 1 kg");
    const Loads none = loads_of(q("0 kg"), q("4 kg"), split);
    CHECK(none.count() == 0);
    CHECK(none.full() == 0);
    CHECK(none.each() == q("0 kg"));
    CHECK(none.short_one() == q("0 kg"));
    CHECK(none.text() == "no load");
  }
}

TEST_CASE("loads: equal ones are exact fractions of a weight") {
  const Loads loads = equal("10 kg", "3.4 kg");
  CHECK(loads.count() == 3);
  CHECK(loads.each().value() == Rational(10, 3));
  CHECK(loads.full() == 0);
  CHECK(loads.short_one() == loads.each());
  CHECK(loads.text() == "3 loads of 3 1/3 kg");
  CHECK(equal("10 kg", "1.5 kg").text() == "7 loads of ≈ 1.429 kg");
}

TEST_CASE("loads: counts are shared out whole") {
  // 52 = 11 + 11 + 10 + 10 + 10.
  const Loads loads = equal("52 pieces", "12 pieces");
  REQUIRE(loads.parts.size() == 2);
  CHECK(loads.parts[0].count == 2);
  CHECK(loads.parts[0].each == q("11 pieces"));
  CHECK(loads.parts[1].count == 3);
  CHECK(loads.parts[1].each == q("10 pieces"));
  CHECK(loads.text() == "2 loads of 11 pieces and 3 of 10 pieces");
  CHECK(equal("52", "12").text() == "2 loads of 11 and 3 of 10");
  CHECK(equal("50 portions", "12 portions").text() == "5 loads of 10 portions");
  CHECK(full_and_short("52 pieces", "12.5 pieces").text() ==
        "4 loads of 12 pieces and one of 4 pieces");
  CHECK(full_and_short("52 pieces", "12.5 pieces").full() == 4);
}

TEST_CASE("loads: told in the unit of the capacity, counts in the smaller one") {
  CHECK(full_and_short("100 oz", "2 lb").text() == "3 loads of 2 lb and one of 0.25 lb");
  CHECK(equal("52 pieces", "1 dozen").text() == "2 loads of 11 pieces and 3 of 10 pieces");
  CHECK(equal("5 dozen", "16 pieces").text() == "4 loads of 15 pieces");
}

TEST_CASE("loads: a stage and an area are kept") {
  CHECK(full_and_short("13 kg EP", "4 kg EP").short_one() == q("1 kg EP"));
  CHECK(full_and_short("3000 cm^2", "1000 cm^2").count() == 3);
}

TEST_CASE("loads: the sum is the total, however large") {
  const Loads loads = full_and_short("1000000000000000000000000000001 pieces", "7 pieces");
  CHECK(sum_of(loads) == q("1000000000000000000000000000001 pieces"));
  CHECK(sum_of(equal("1000000000000000000000000000001 pieces", "7 pieces")) ==
        q("1000000000000000000000000000001 pieces"));
}

TEST_CASE("loads: in turn they take so many times as long as one") {
  CHECK(full_and_short("13 kg", "4 kg").in_turn(q("30 min")) == q("2 h"));
  CHECK(full_and_short("0 kg", "4 kg").in_turn(q("30 min")) == q("0 h"));
  CHECK(thrown_by([] { return full_and_short("13 kg", "4 kg").in_turn(q("30 g")); }) ==
        Thrown{"load.time", "a load takes a time, and 30 g is of the kind weight",
               "write it as 30 min"});
  CHECK(thrown_by([] { return full_and_short("13 kg", "4 kg").in_turn(q("-1 min")); }) ==
        Thrown{"load.time", "no load takes less than no time, and -1 min is"});
}

TEST_CASE("loads: totals and capacities that cannot be") {
  CHECK(thrown_by([] { return full_and_short("13 kg", "4 L"); }) ==
        Thrown{"load.kind", "no loads can be made of 13 kg and 4 L: weight and volume"});
  CHECK(thrown_by([] { return full_and_short("13 kg EP", "4 kg AP"); }) ==
        Thrown{"load.kind",
               "no loads can be made of 13 kg EP and 4 kg AP: weight EP and weight AP; stages EP "
               "(edible portion) and AP (as purchased)",
               "a share links the stages: multiply by it one way, divide by it the other"});
  CHECK(thrown_by([] { return full_and_short("13 kg", "0 kg"); }) ==
        Thrown{"load.capacity", "a load of 0 kg holds nothing", "give what a load holds at most"});
  CHECK(thrown_by([] { return full_and_short("13 kg", "-4 kg"); }) ==
        Thrown{"load.capacity", "a load of -4 kg holds nothing", "give what a load holds at most"});
  CHECK(thrown_by([] { return equal("13 pieces", "1/2 piece"); }) ==
        Thrown{"load.capacity", "a load of 0.5 piece does not hold a whole one",
               "give what a load holds at most"});
  CHECK(thrown_by([] { return equal("-13 kg", "4 kg"); }) ==
        Thrown{"load.negative", "a total below zero has no loads, and -13 kg is"});
  CHECK(thrown_by([] { return equal("12.5 portions", "4 portions"); }) ==
        Thrown{"load.whole", "12.5 portion is no whole number, and counts are shared out whole",
               "round it to a whole number, or share out its weight"});
}

}  // namespace
}  // namespace scalepan
