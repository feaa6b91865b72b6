#include "measure/quantity.hpp"

#include <unordered_set>

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

// USDA SR28 11246: refuse of leeks 56 %, so 44 % is edible; 5000 g / (44/100) = 125000/11 g.
TEST_CASE("a quantity: need over edible share is the weight as purchased") {
  const Quantity buy = q("5 kg EP") / q("44/100 EP/AP");
  CHECK(buy.dimension() == u("kg AP").dimension());
  CHECK(buy.coherent() == Rational(125000, 11));
  CHECK(buy.text() == "11363 7/11 g AP");
  CHECK(buy * q("44 % EP/AP") == q("5 kg EP"));
  CHECK(buy.to(u("kg")).value() == Rational(125, 11));
}

TEST_CASE("a quantity: value is in the unit shown, coherent in the dimension's own") {
  CHECK(q("1 1/2 kg").value() == Rational(3, 2));
  CHECK(q("1 1/2 kg").coherent() == Rational(1500));
  CHECK(q("2 cup_us").to(u("mL")).value() == Rational(473176473, 1000000));
  CHECK(q("40").unit() == Unit());
  CHECK(Quantity(Rational(3, 4)) == q("0.75"));
  CHECK(Quantity().coherent() == Rational(0));
}

TEST_CASE("a quantity: the unit shown is outside equality and hash") {
  CHECK(q("1000 g") == q("1 kg"));
  CHECK(q("1000 g").hash() == q("1 kg").hash());
  CHECK(q("250 cup_metric") == q("62.5 L"));
  CHECK_FALSE(q("1 kg") == q("1 kg EP"));
  CHECK_FALSE(q("1 kg AP") == q("1 kg EP"));
  CHECK_FALSE(q("1 g") == q("1 mL"));
  CHECK_FALSE(q("0 g") == q("0"));
}

TEST_CASE("a quantity: hashes tell amounts and kinds apart") {
  std::unordered_set<std::size_t> hashes;
  for (const char* text : {"1 g", "2 g", "1 mL", "1", "1 g AP", "1 g EP", "1/3 g", "1 piece"}) {
    hashes.insert(q(text).hash());
  }
  CHECK(hashes.size() == 8);
}

TEST_CASE("a quantity: a sum is shown in the larger unit") {
  CHECK((q("1 kg") + q("250 g")).text() == "1.25 kg");
  CHECK((q("250 g") + q("1 kg")).text() == "1.25 kg");
  CHECK((q("1 kg EP") - q("250 g EP")).text() == "0.75 kg EP");
  CHECK((-q("250 g")).text() == "-250 g");
  CHECK(q("250 g") - q("1 kg") == q("-750 g"));
}

TEST_CASE("a quantity: a product with a plain number keeps its unit, others are coherent") {
  CHECK((q("1 1/2 cup_us") * q("4")).text() == "6 cup_us");
  CHECK((q("4") * q("1 1/2 cup_us")).text() == "6 cup_us");
  CHECK((q("2 kg") * q("44 %")).text() == "0.88 kg");
  CHECK((q("44 %") * q("2 kg")).text() == "0.88 kg");
  CHECK((q("2 kg") * Rational(1, 3)).text() == "2/3 kg");
  CHECK((q("3 kg") / q("4")).text() == "0.75 kg");
  CHECK((q("2 kg") * q("3 L")).text() == "6000000 g mL");
  CHECK((q("3 kg AP") * q("2 GBP/(kg AP)")).text() == "6 GBP");
  CHECK((q("44.25 GBP") / q("40 portion")).text() == "1.10625 GBP/portion");
  CHECK((q("1 kg") / q("250 g")).text() == "4");
}

TEST_CASE("a quantity: comparing") {
  CHECK(q("999 g") < q("1 kg"));
  CHECK(q("1 lb") > q("453 g"));
  CHECK(q("1 lb") < q("454 g"));
  CHECK(q("1 kg EP") >= q("1000 g EP"));
}

TEST_CASE("a quantity: another unit keeps the stage") {
  CHECK(q("5 kg EP").to(u("g")).text() == "5000 g EP");
  CHECK(q("5 kg EP").to(u("g EP")).text() == "5000 g EP");
  CHECK(q("5 kg").to(u("lb")).value() == Rational(5000) / Rational(45359237, 100000));
  CHECK(q("5 kg").at(Stage::drained).text() == "5 kg drained");
  CHECK(q("2.10 GBP/(kg AP)").to(u("GBP/(g AP)")).value() == Rational(21, 10000));
}

}  // namespace
}  // namespace scalepan
