// The published layout of the USDA releases. Rows of SR28 as published where the food is named;
// foods 90001 and up are made up.
#include "food/usda_release.hpp"

#include "food/pantry.hpp"

namespace scalepan {
namespace {

constexpr const char* foods_text =
    "~01077~^~0100~^~Milk, whole, 3.25% "
    "milkfat~^~MILK,WHL~^~~^~~^~Y~^~~^0^~~^6.38^4.27^8.79^3.87\r\n"
    "~11246~^~1100~^~Leeks, (bulb), raw~^~LEEKS~^~~^~~^~Y~^~Tops, root end and "
    "skin~^56^~Allium~^6.25^2.44^8.37^3.57\r\n"
    "~90001~^~1100~^~leek~^~L~^~~^~~^~~^~~^^~~^^^^\r\n";

constexpr const char* weights_text =
    "~01077~^1^1^~cup~^244^^\r\n"
    "~01077~^2^1^~fl oz~^30.5^^\r\n"
    "~01077~^4^1^~quart~^976^^\r\n"
    "~11246~^1^1^~cup~^89^^\r\n"
    "~11246~^2^1^~leek~^89^^\r\n"
    "~11246~^3^2^~tbsp, chopped~^12^^\r\n"
    "~11246~^4^1^~oz~^28.35^^\r\n"
    "~11246~^5^1^~large (10\" long)~^200^^\r\n"
    "~90001~^1^1^~medium (a)~^10^^\r\n"
    "~90001~^2^1^~medium (b)~^12^^\r\n"
    "~90001~^3^1^~cup (raw)~^80^^\r\n";

Catalog loaded() {
  Catalog catalog = pantry();
  add_release(catalog, {"SR28", {foods_text, "FOOD_DES.txt"}, {weights_text, "WEIGHT.txt"}});
  return catalog;
}

std::string facts_of(const Catalog& catalog, std::string_view food) {
  std::string all;
  for (const Fact* one : catalog.facts(food)) {
    const std::string detail = one->state + one->size;
    all += one->id.substr(food.size() + 1) + (detail.empty() ? "" : " (" + detail + ")") + " " +
           one->value.text() + "; ";
    CHECK(one->layer == FactLayer::dataset);
  }
  return all;
}

TEST_CASE("usda release: foods by number and by description") {
  const Catalog catalog = loaded();
  for (const char* name : {"sr28 11246", "SR28_11246", "Leeks, (bulb), raw"}) {
    INFO(name);
    REQUIRE(catalog.find(name));
    CHECK(catalog.find(name)->food->id == "sr28_11246");
  }
  // A name that stood before keeps its food.
  CHECK(catalog.find("leek")->food->id == "leek");
  CHECK(catalog.food("sr28_90001") != nullptr);
}

TEST_CASE("usda release: densities, piece weights and edible shares") {
  const Catalog catalog = loaded();
  CHECK(facts_of(catalog, "sr28_11246") ==
        "density.1 89 g/cup_us; density.3 (chopped) 6 g/tbsp_us; edible 0.44 EP/AP; "
        "piece.2 (leek) 89 g EP/(piece AP); piece.5 (large) 200 g EP/(piece AP); ");
  CHECK(catalog.facts("sr28_11246")[2]->source ==
        "USDA SR28 11246, refuse 56 % (Tops, root end and skin)");
  CHECK(catalog.facts("sr28_11246")[1]->source == "USDA SR28 11246, 2 tbsp, chopped 12 g");
  CHECK(catalog.facts("sr28_11246")[0]->from == Stage::edible);
}

TEST_CASE("usda release: the largest of sibling volumes is the density, the others its spread") {
  const Catalog catalog = loaded();
  CHECK(facts_of(catalog, "sr28_01077") == "density.3 976 g/qt_us; edible 1 EP/AP; ");
  const Fact& milk = *catalog.facts("sr28_01077").front();
  CHECK(milk.from == Stage::none);
  CHECK(*milk.low == q("30.5 g/fl_oz_us"));  // 976 for 32 fl oz is 30.5 too
  CHECK(*milk.high == q("244 g/cup_us"));
  CHECK(milk.source == "USDA SR28 01077, quart 976 g; spread: cup 244 g; spread: fl oz 30.5 g");
}

TEST_CASE("usda release: brackets stay where they tell measures apart, blank refuse says nothing") {
  const Catalog catalog = loaded();
  CHECK(facts_of(catalog, "sr28_90001") ==
        "density.3 (raw) 80 g/cup_us; piece.1 (medium (a)) 10 g EP/(piece AP); "
        "piece.2 (medium (b)) 12 g EP/(piece AP); ");
  CHECK(catalog.food("sr28_90001")->default_state == "raw");
  CHECK(catalog.food("sr28_90001")->default_size == "medium (a)");
  CHECK(catalog.food("sr28_11246")->default_state.empty());
}

std::string abbrev_row(const std::string& tail) {
  std::string row = "~11246~^~LEEKS~";
  for (int i = 0; i < 46; ++i) row += "^1.5";
  return row + "^" + tail;
}

TEST_CASE("usda release: the abbreviated file has two measures, each with its amount") {
  Catalog catalog = pantry();
  const std::string weights = abbrev_row("12^~2 tbsp, chopped~^89^~1 leek~^56");
  add_release(catalog, {"SR28", {foods_text, "F"}, {weights, "A"}, WeightsLayout::abbrev});
  CHECK(facts_of(catalog, "sr28_11246") ==
        "density.1 (chopped) 6 g/tbsp_us; edible 0.44 EP/AP; piece.2 (leek) 89 g EP/(piece AP); ");
}

Thrown refusal(const std::string& foods, const std::string& weights,
               WeightsLayout layout = WeightsLayout::weight) {
  return thrown_by([&] {
    Catalog catalog;
    add_release(catalog, {"SR28", {foods, "FOOD_DES.txt"}, {weights, "W.txt"}, layout});
    return 0;
  });
}

std::string place_of(const std::string& foods, const std::string& weights) {
  try {
    Catalog catalog;
    add_release(catalog, {"SR28", {foods, "FOOD_DES.txt"}, {weights, "W.txt"}});
  } catch (const Error& error) {
    return error.place().text();
  }
  return "none";
}

TEST_CASE("usda release: what is wrong with a row is said") {
  const auto says = [](const std::string& message) { return Thrown{"food.release", message, ""}; };
  CHECK(refusal("~1~^~2~\n", "") == says("the row has 2 fields, 14 belong there"));
  CHECK(refusal("1^^^^^^^^^^^^^\n", "") == says("a text stands between tildes, but 1 is written"));
  CHECK(refusal("~1~^~~^~a~^~~^~~^~~^~~^~~^x^~~^^^^\n", "") ==
        says("a number belongs here, but x is written"));
  CHECK(refusal("~1~^~~^~a~^~~^~~^~~^~~^~~^100^~~^^^^\n", "") ==
        says("refuse is a percentage from 0 to below 100, but 100 is written"));
  CHECK(refusal(foods_text, "~11246~^1^0^~cup~^89^^\n") ==
        says("a number above zero belongs here"));
  CHECK(refusal(foods_text, "~11246~^1^1^~cup~^^^\n") == says("a number above zero belongs here"));
  CHECK(refusal(foods_text, "~99999~^1^1^~cup~^89^^\n") == says("FOOD_DES.txt has no food 99999"));
  CHECK(refusal(foods_text, abbrev_row("12^~cup~^^~~^0"), WeightsLayout::abbrev) ==
        says("a measure begins with its amount, but cup is written"));
  CHECK(refusal(foods_text, abbrev_row("12^~1/0 cup~^^~~^0"), WeightsLayout::abbrev) ==
        says("the denominator of a fraction is zero"));
  const std::string one = "~1~^~~^~a~^~~^~~^~~^~~^~~^0^~~^^^^\n";
  CHECK(refusal(one + one, "") == says("the food 1 is there twice"));
}

TEST_CASE("usda release: an error stands at the field") {
  CHECK(place_of(foods_text, "~11246~^1^1^~cup~^89^^\n\n~11246~^1^1^~cup~^x^^\n") == "W.txt:3:19");
  CHECK(place_of(foods_text, "~11246~^1^1^~caf\u00E9~^x^^\n") == "W.txt:1:20");
  CHECK(place_of("~1~^~2~\n", "") == "FOOD_DES.txt:1:5");
}

TEST_CASE("usda release: a release laid twice is refused with its place") {
  CHECK(thrown_by([] {
          Catalog catalog = loaded();
          add_release(catalog, {"SR28", {foods_text, "FOOD_DES.txt"}, {"", "W.txt"}});
          return 0;
        }) == Thrown{"food.duplicate", "the food sr28_01077 is there twice", ""});
}

}  // namespace
}  // namespace scalepan
