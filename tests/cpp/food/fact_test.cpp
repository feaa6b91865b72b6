#include "food/fact.hpp"

#include "food/pantry.hpp"

namespace scalepan {
namespace {

Thrown refusal(const Fact& fact) {
  return thrown_by([&] {
    expect_valid(fact);
    return 0;
  });
}

Thrown wrong_value(const std::string& message, const std::string& hint = "") {
  return {"fact.value", "fact x: " + message, hint};
}

TEST_CASE("facts: values that fit their kind and stages are taken") {
  const Thrown nothing{"nothing", "no error was thrown"};
  CHECK(refusal(fact("x", "leek", FactKind::edible, "0.44 EP/AP")) == nothing);
  CHECK(refusal(fact("x", "leek", FactKind::edible, "44 % EP/AP")) == nothing);
  CHECK(refusal(fact("x", "rice", FactKind::cooked, "2.8 cooked/EP")) == nothing);
  CHECK(refusal(fact("x", "bean", FactKind::drained, "0.6 drained/AP")) == nothing);
  CHECK(refusal(fact("x", "milk", FactKind::density, "1.03 g/mL")) == nothing);
  CHECK(refusal(fact("x", "milk", FactKind::density, "2 lb EP/(L EP)")) == nothing);
  CHECK(refusal(fact("x", "egg", FactKind::piece, "600 g EP/(dozen AP)")) == nothing);
}

TEST_CASE("facts: a value of another dimension is refused with the one that is needed") {
  CHECK(refusal(fact("x", "milk", FactKind::density, "1.03 kg")) ==
        wrong_value("a density is in g/mL, but 1.03 kg is written"));
  CHECK(refusal(fact("x", "milk", FactKind::density, "1.03 mL/g")) ==
        wrong_value("a density is in g/mL, but 1.03 mL/g is written"));
  Fact egg = fact("x", "egg", FactKind::piece, "50 g EP/(piece AP)");
  egg.value = q("50 g/piece");
  CHECK(refusal(egg) ==
        wrong_value("a piece weight is in g EP/(piece AP), but 50 g/piece is written",
                    "for the weight of the whole piece put AP into from_stage and to_stage"));
  egg.value = q("50 g");
  CHECK(refusal(egg) == wrong_value("a piece weight is in g EP/(piece AP), but 50 g is written"));
}

TEST_CASE("facts: a share must go between the stages the fact states") {
  Fact turned = fact("x", "leek", FactKind::edible, "0.44 EP/AP");
  turned.value = q("0.44 AP/EP");
  CHECK(refusal(turned) == wrong_value("an edible share is in EP/AP, but 0.44 AP/EP is written"));
  turned.value = q("0.44");
  CHECK(refusal(turned) ==
        wrong_value("an edible share is in EP/AP, but 0.44 is written", "write 0.44 EP/AP"));
}

TEST_CASE("facts: the value must be above zero") {
  CHECK(refusal(fact("x", "leek", FactKind::edible, "0 EP/AP")) ==
        wrong_value("the value must be above zero"));
  CHECK(refusal(fact("x", "leek", FactKind::edible, "-0.1 EP/AP")) ==
        wrong_value("the value must be above zero"));
}

TEST_CASE("facts: low and high stand on their sides of the value") {
  Fact leek = fact("x", "leek", FactKind::edible, "0.44 EP/AP");
  leek.low = q("0.40 EP/AP");
  leek.high = q("0.44 EP/AP");
  CHECK(refusal(leek).code == "nothing");
  leek.low = q("0.45 EP/AP");
  CHECK(refusal(leek) == wrong_value("low, value and high are out of order"));
  leek.low.reset();
  leek.high = q("0.43 EP/AP");
  CHECK(refusal(leek) == wrong_value("low, value and high are out of order"));
}

TEST_CASE("facts: a low of zero or less is refused, for it divides on the way back") {
  Fact leek = fact("x", "leek", FactKind::edible, "0.44 EP/AP");
  leek.low = q("0 EP/AP");
  CHECK(refusal(leek) == wrong_value("low must be above zero"));
  leek.low = q("-1 EP/AP");
  CHECK(refusal(leek) == wrong_value("low must be above zero"));
}

TEST_CASE("facts: kinds and layers by name") {
  CHECK(fact_kind_named("density") == FactKind::density);
  CHECK(fact_kind_named("piece") == FactKind::piece);
  CHECK(fact_kind_named("edible") == FactKind::edible);
  CHECK(fact_kind_named("cooked") == FactKind::cooked);
  CHECK(fact_kind_named("drained") == FactKind::drained);
  CHECK(name_of(FactKind::piece) == "piece weight");
  CHECK(name_of(FactKind::edible) == "edible share");
  CHECK(name_of(FactLayer::own) == "own");
  CHECK(name_of(FactLayer::bundled) == "bundled");
  CHECK(name_of(FactLayer::dataset) == "dataset");
  CHECK(thrown_by([] { return fact_kind_named("weight"); }) ==
        Thrown{"fact.kind", "no kind of fact is called \"weight\"",
               "there are: density, piece, edible, cooked, drained, word"});
}

}  // namespace
}  // namespace scalepan
