// Conversions of one food's amounts. Figures of food/pantry.hpp, worked out beside each check.
#include "food/convert.hpp"

#include "food/pantry.hpp"

namespace scalepan {
namespace {

class Kitchen {
 public:
  Quantity operator()(std::string_view amount, const char* food, std::string_view unit,
                      const std::string& detail = {}, std::vector<std::string> words = {}) const {
    return convert(catalog_, *catalog_.food(food), q(amount), u(unit), {detail, detail}, words)
        .amount;
  }

 private:
  Catalog catalog_ = pantry();
};

const Rational us_cup(473176473, 2000000);  // mL

TEST_CASE("convert: a weight EP is a weight AP times the edible share") {
  const Kitchen kitchen;
  CHECK(kitchen("5 kg EP", "leek", "g AP") == q("125000/11 g AP"));
  CHECK(kitchen("1 kg AP", "leek", "g EP") == q("440 g EP"));
  CHECK(kitchen("1 kg AP", "leek", "g cooked") == q("352 g cooked"));  // 1000 * 0.44 * 0.8
  CHECK(kitchen("800 g cooked", "leek", "kg EP") == q("1 kg EP"));
  CHECK(kitchen("400 g AP", "chickpea", "g drained") == q("260 g drained"));
}

TEST_CASE("convert: a piece weight crosses from pieces as purchased to weight EP") {
  const Kitchen kitchen;
  CHECK(kitchen("1 kg EP", "onion", "piece").value() == Rational(100, 11));  // 1000 / 110
  CHECK(kitchen("3 piece", "onion", "g EP") == q("330 g EP"));
  CHECK(kitchen("3 piece AP", "onion", "g AP") == q("1100/3 g AP"));  // 330 / 0.90
  CHECK(kitchen("2 piece", "garlic", "g EP") == q("6 g EP"));
  CHECK(kitchen("1 dozen", "egg", "g EP") == q("600 g EP"));
}

TEST_CASE("convert: a density at any stage holds at AP and at EP, and keeps the stage") {
  const Kitchen kitchen;
  CHECK(kitchen("2 cup_us", "flour", "g") == q("250 g"));
  CHECK(kitchen("2 cup_us AP", "flour", "g") == q("250 g AP"));
  CHECK(kitchen("2 cup_us EP", "flour", "g") == q("250 g EP"));
  CHECK(kitchen("1 L", "milk", "kg").value() == Rational(103, 100));
}

TEST_CASE("convert: a density EP holds at EP only") {
  const Kitchen kitchen;
  CHECK(kitchen("1 cup_us EP", "onion", "g EP") == q("160 g EP"));
  CHECK(kitchen("1 cup_us EP", "onion", "g AP") == q("1600/9 g AP"));  // 160 / 0.90
  CHECK(kitchen("1 cup_us", "onion", "g") == q("160 g"));
  CHECK(kitchen("1 cup_us EP", "onion", "piece").value() == Rational(160, 110));
}

TEST_CASE("convert: the state of a volume is the food's default or the one stated") {
  const Kitchen kitchen;
  CHECK(kitchen("1 cup_us", "flour", "g", "spooned") == q("125 g"));
  CHECK(kitchen("1 cup_us", "flour", "g", "sifted") == q("100 g"));
  CHECK(kitchen("100 g", "flour", "mL", "sifted").coherent() == us_cup);
}

TEST_CASE("convert: there and back is the same amount exactly") {
  const Kitchen kitchen;
  for (const auto& [amount, food, unit] : {std::tuple{"7/3 kg EP", "leek", "oz AP"},
                                           {"1 1/7 kg AP", "leek", "lb cooked"},
                                           {"13/9 cup_us EP", "onion", "g AP"},
                                           {"5/11 kg EP", "onion", "cup_us EP"},
                                           {"22/7 piece AP", "egg", "kg AP"},
                                           {"2/3 L", "milk", "lb"},
                                           {"99 g AP", "chickpea", "oz drained"}}) {
    INFO(amount << " of " << food);
    const Quantity there = kitchen(amount, food, unit);
    CHECK_FALSE(there == q(amount));
    CHECK(kitchen(there.text(), food, q(amount).unit().symbol()) == q(amount));
  }
}

TEST_CASE("convert: one kind at one stage needs no fact") {
  const Kitchen kitchen;
  CHECK(kitchen("5 kg", "courgette", "g") == q("5000 g"));
  CHECK(kitchen("5 kg EP", "courgette", "g EP") == q("5000 g EP"));
  CHECK(kitchen("5 kg EP", "courgette", "g") == q("5000 g EP"));
  CHECK(kitchen("2 dozen", "courgette", "piece") == q("24 piece"));
}

TEST_CASE("convert: a preparation chooses the share made for it") {
  const Kitchen kitchen;
  CHECK(kitchen("300 g EP", "apple", "g AP") == q("1000/3 g AP"));               // / 0.90
  CHECK(kitchen("300 g EP", "apple", "g AP", "", {"peeled"}) == q("400 g AP"));  // / 0.75
  CHECK(kitchen("300 g EP", "apple", "g AP", "", {"sliced", "peeled"}) == q("400 g AP"));
  CHECK(kitchen("300 g EP", "apple", "g AP", "", {"sliced"}) == q("1000/3 g AP"));
}

TEST_CASE("convert: a share for two words of preparation needs both") {
  Catalog catalog = pantry();
  catalog.add(fact("leek.fried", "leek", FactKind::cooked, "0.5 cooked/EP", "sliced fried"));
  const auto cooked = [&](std::vector<std::string> words) {
    return convert(catalog, *catalog.food("leek"), q("1 kg EP"), u("g cooked"), {}, words).amount;
  };
  CHECK(cooked({"fried"}) == q("800 g cooked"));
  CHECK(cooked({"fried", "sliced"}) == q("500 g cooked"));
}

TEST_CASE("convert: the way tells the facts it used and how") {
  const Catalog catalog = pantry();
  const Converted buy = convert(catalog, *catalog.food("onion"), q("1 cup_us EP"), u("g AP"));
  REQUIRE(buy.how.steps.size() == 2);
  CHECK(buy.how.steps[0].fact->id == "onion.cup");
  CHECK_FALSE(buy.how.steps[0].divides);
  CHECK(buy.how.steps[1].fact->id == "onion.edible");
  CHECK(buy.how.steps[1].divides);
  CHECK(buy.how.factor == 160 / us_cup / Rational(9, 10));
  const Converted same = convert(catalog, *catalog.food("onion"), q("1 kg"), u("lb"));
  CHECK(same.how.steps.empty());
}

TEST_CASE("convert: the spread is each fact at its worst") {
  Catalog catalog = pantry();
  Fact piece = fact("courgette.piece", "courgette", FactKind::piece, "200 g EP/(piece AP)");
  piece.low = q("150 g EP/(piece AP)");
  piece.high = q("250 g EP/(piece AP)");
  Fact edible = fact("courgette.edible", "courgette", FactKind::edible, "0.8 EP/AP");
  edible.low = q("0.75 EP/AP");
  catalog.add(piece);
  catalog.add(edible);
  const Food& courgette = *catalog.food("courgette");
  // Weight AP of a piece: 200 / 0.8, from 150 / 0.8 (no high is stated) to 250 / 0.75.
  const Conversion up = convert(catalog, courgette, q("1 piece"), u("g AP")).how;
  CHECK(up.factor == Rational(250));
  CHECK(up.low == Rational(375, 2));
  CHECK(up.high == Rational(1000, 3));
  // The other way round they change places.
  const Conversion down = convert(catalog, courgette, q("1 g AP"), u("piece")).how;
  CHECK(down.factor == Rational(1, 250));
  CHECK(down.low == Rational(3, 1000));
  CHECK(down.high == Rational(2, 375));
  const Conversion none = convert(catalog, *catalog.food("leek"), q("1 g AP"), u("g EP")).how;
  CHECK(none.low == none.factor);
  CHECK(none.high == none.factor);
}

}  // namespace
}  // namespace scalepan
