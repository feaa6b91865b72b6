// Measuring out: texts, errors of the amounts told, and sets that cannot be.
#include "measure/measuring_out.hpp"

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

KitchenMeasure measure(const std::string& name, const std::string& plural, const Quantity& size) {
  return {name, plural, size, {}, {}, "test"};
}

KitchenMeasure graduated(const std::string& name, std::string_view size,
                         const std::vector<Graduation>& graduations) {
  return {name, name, q(size), {}, graduations, "test"};
}

MeasureSet cups() {
  return {"cups",
          {measure("cup", "cups", q("1 cup_us")), measure("1/2 cup", "1/2 cup", q("1/2 cup_us")),
           measure("tbsp", "tbsp", q("1 tbsp_us")), measure("tsp", "tsp", q("1 tsp_us"))}};
}

MeasureSet scale(std::string_view size, std::string_view step) {
  return {"scale", {graduated("scale", size, {{q(step), q(step) * Rational(0), q(size)}})}};
}

std::string text(const MeasureSet& set, std::string_view amount, const MeasuringWish& wish = {}) {
  return set.nearest(q(amount), wish).text;
}

TEST_CASE("measuring out: fills are told by count and name") {
  CHECK(text(cups(), "7 tsp_us") == "2 tbsp + 1 tsp");
  CHECK(text(cups(), "2.5 cup_us") == "2 cups + 1/2 cup");
  CHECK(text({"half", {measure("1/2 cup", "1/2 cups", q("1/2 cup_us"))}}, "3 cup_us") ==
        "6 x 1/2 cups");
}

TEST_CASE("measuring out: amount and error keep the unit and stage asked about") {
  const MeasuredOut out = cups().nearest(q("7.3 tsp_us EP"));
  CHECK(out.amount == q("7 tsp_us EP"));
  CHECK(out.error == q("-0.3 tsp_us EP"));
  CHECK(out.error.unit() == u("tsp_us EP"));
  REQUIRE(out.pieces.size() == 2);
  CHECK(out.pieces[0].count == 2);
  CHECK(out.pieces[0].name == "tbsp");
}

TEST_CASE("measuring out: marks are told in the unit of their step") {
  CHECK(text(scale("5 kg", "5 g"), "172.3 g") == "170 g");
  CHECK(text(scale("5 kg", "5 g"), "1.2349 kg") == "1.235 kg");
  CHECK(text(scale("5 kg", "0.5 g"), "2000.4 g") == "2.0005 kg");
  CHECK(text(scale("5 kg", "5 g"), "10.43 kg") == "2 x 5 kg + 430 g");
  CHECK(text(scale("5 kg", "5 g"), "5 kg") == "5 kg");
  CHECK(text(scale("50 lb", "1/4 oz"), "4.35 lb") == "4 lb 5 1/2 oz");
  CHECK(text(scale("50 lb", "1/4 oz"), "3 lb") == "3 lb");
  CHECK(text(scale("50 lb", "1/8 lb"), "2.1 lb") == "2 1/8 lb");
  CHECK(text(scale("50 lb", "0.01 lb"), "2.252 lb") == "2.25 lb");
  CHECK(text(scale("1 pt_imperial", "1 fl_oz_imperial"), "39 fl_oz_imperial") == "1 pt + 19 fl oz");
}

TEST_CASE("measuring out: a scale with a coarser range is read once") {
  const MeasureSet two_ranges{
      "scale",
      {graduated("scale", "15 kg",
                 {{q("1 g"), q("0 g"), q("1 kg")}, {q("5 g"), q("1 kg"), q("15 kg")}})}};
  CHECK(text(two_ranges, "998 g") == "998 g");
  CHECK(text(two_ranges, "3003 g") == "3.005 kg");
}

TEST_CASE("measuring out: what is below half of the smallest measure is said to be") {
  CHECK(text(cups(), "0.49 tsp_us") == "less than half of the smallest measure (1 tsp)");
  CHECK(text(cups(), "1/2 tsp_us") == "1 tsp");
  CHECK(text(scale("5 kg", "5 g"), "2 g") == "less than half of the smallest measure (5 g)");
  CHECK(text(cups(), "0 tsp_us") == "nothing");
  CHECK(cups().nearest(q("0.49 tsp_us")).pieces.empty());
}

TEST_CASE("measuring out: few pieces, or only the large measures that come near enough") {
  CHECK(text(cups(), "7 tsp_us", {1, {}}) == "1 tbsp");
  CHECK(text(cups(), "7 tsp_us", {power(10, 40), {}}) == "2 tbsp + 1 tsp");
  CHECK(text(cups(), "80.4 cup_us", {20, q("1 %")}) == "20 cups");
  CHECK(text(cups(), "80.4 cup_us", {{}, q("1 %")}) == "80 cups");
  CHECK(text(cups(), "80.4 cup_us", {{}, q("0.2 %")}) == "80 cups + 1/2 cup");
  CHECK(text(cups(), "80.4 cup_us", {{}, q("0")}) == "80 cups + 6 tbsp + 1 tsp");
  CHECK(text(cups(), "0.2 tsp_us", {{}, q("1 %")}) ==
        "less than half of the smallest measure (1 tsp)");
}

TEST_CASE("measuring out: amounts that cannot be measured") {
  CHECK(thrown_by([] { return cups().nearest(q("172.3 g EP")); }) ==
        Thrown{"measure.kind", "\"cups\" measures volume, and 172.3 g EP is weight EP",
               "choose a set of measures of that kind, or name the food"});
  CHECK(thrown_by([] { return cups().nearest(q("3")); }) ==
        Thrown{"measure.kind", "\"cups\" measures volume, and 3 is a plain number",
               "choose a set of measures of that kind, or name the food"});
  CHECK(thrown_by([] { return cups().nearest(q("-1 mL")); }) ==
        Thrown{"measure.negative", "nothing below zero can be measured out, and -1 mL is"});
  CHECK(thrown_by([] { return cups().nearest(q("1 mL"), {0, {}}); }) ==
        Thrown{"measure.pieces", "at most 0 pieces cannot be asked for",
               "the most pieces are a whole number above zero"});
  CHECK(thrown_by([] { return cups().nearest(q("1 mL"), {{}, q("1 g")}); }) ==
        Thrown{"measure.within", "within 1 g is no share of an amount", "write it as 1 %"});
}

Thrown refusal(const std::vector<KitchenMeasure>& measures) {
  return thrown_by([&] { return MeasureSet("mine", measures); });
}

TEST_CASE("measuring out: sets that cannot be") {
  KitchenMeasure cup = measure("cup", "cups", q("1 cup_us"));
  CHECK(refusal({}) == Thrown{"measure.none", "the set \"mine\" has no measure"});
  CHECK(refusal({measure("", "", q("1 mL"))}) ==
        Thrown{"measure.name", "a measure of \"mine\" has no name"});
  CHECK(refusal({measure("cup", "cups", q("0 cup_us"))}) ==
        Thrown{"measure.size", "the size of \"cup\" must be above zero, and is 0 cup_us"});
  CHECK(refusal({cup, measure("scoop", "scoops", q("30 g"))}) ==
        Thrown{"measure.kind", "the set \"mine\" has volume with \"cup\" and weight with \"scoop\"",
               "make a set of each"});
  CHECK(refusal({measure("egg", "eggs", q("1 piece"))}) ==
        Thrown{"measure.kind",
               "a measure gives a weight or a volume, and \"egg\" of the set \"mine\" is of count",
               "write its size as 15 mL or 1/2 cup_us"});
  cup.most = Rational(3, 2);
  CHECK(refusal({cup}) == Thrown{"measure.most",
                                 "the most of \"cup\" must be a whole number above zero, and is "
                                 "1.5"});
  KitchenMeasure jug = graduated("jug", "1 L", {{q("50 mL"), q("0 mL"), q("1 L")}});
  jug.most = 2;
  CHECK(refusal({jug}) == Thrown{"measure.most", "\"jug\" is graduated, and has no most"});
  jug = graduated("jug", "1 L", {{q("50 g"), q("0 g"), q("1 kg")}});
  CHECK(refusal({jug}) ==
        Thrown{"measure.step", "the measure \"jug\" has marks of 50 g and 1 L: weight and volume"});
  jug = graduated("jug", "1 L", {{q("0 mL"), q("0 mL"), q("1 L")}});
  CHECK(refusal({jug}) ==
        Thrown{"measure.step", "\"jug\" cannot be read at every 0 mL from 0 mL to 1 L",
               "the step lies above zero, and the range is as long as a step at least"});
}

}  // namespace
}  // namespace scalepan
