#include "recipe/sizing.hpp"

#include "recipe/dishes.hpp"

namespace scalepan {
namespace {

/// 100 g a portion and 50 g for each started four.
std::shared_ptr<const Recipe> stepped() {
  return dish({"400 g broth", "50 g zest | 50 g per 4 portions"}, 4);
}

Size batch(const Recipe& recipe, const char* target, bool before = false) {
  return size_for_batch(recipe, q(target), before);
}

std::string refusal(const Recipe& recipe, const char* target, bool before = false) {
  return told_by([&] { return batch(recipe, target, before).factor; });
}

LineStock stock(std::string line, const char* amount) { return {{std::move(line), {}}, q(amount)}; }

TEST_CASE("sizes by batch: steps jump over 940 g, and both neighbours are told") {
  CHECK(refusal(*stepped(), "940 g") ==
        "size.unreachable @ a batch of 940 g cannot be made: 8 portions come to 900 g, and any "
        "more to more than 950 g (a line that goes in steps jumps over it: take one of the two "
        "sizes)");
  CHECK(refusal(*stepped(), "950 g")
            .starts_with("size.unreachable @ a batch of 950 g cannot be made: 8 portions come to "
                         "900 g, and any more "
                         "to more than 950 g"));
  CHECK(batch(*stepped(), "900 g").portions == Rational(8));
  CHECK(batch(*stepped(), "951 g").portions == Rational(801, 100));
  CHECK(refusal(*stepped(), "50 g") ==
        "size.unreachable @ a batch of 50 g cannot be made: the smallest one comes to more than 50 "
        "g (lines that are fixed or go in steps are in every batch)");
}

TEST_CASE("sizes by batch: where all goes in steps, the next one is met exactly") {
  const auto eggs = dish({"4 eggs | one per portion"}, 4);
  CHECK(batch(*eggs, "100 g").portions == Rational(2));
  CHECK(refusal(*eggs, "75 g") ==
        "size.unreachable @ a batch of 75 g cannot be made: 1 portion comes to 50 g, and any more "
        "to 100 g or more (a line that goes in steps jumps over it: take one of the two sizes)");
  CHECK(refusal(*eggs, "20 g") ==
        "size.unreachable @ a batch of 20 g cannot be made: the smallest one comes to 50 g (lines "
        "that are fixed or go in steps are in every batch)");
}

TEST_CASE("sizes by batch: a taper that ends") {
  const auto pot = dish({"100 g broth", "20 g zest | tapered (2, 1.5)"}, 4);
  CHECK(batch(*pot, "230 g").factor == Rational(2));
  CHECK(refusal(*pot, "1 kg") ==
        "size.unreachable @ a batch of 1 kg cannot be made: 8 portions come to 230 g, and a taper "
        "ends there (give the taper a further point)");
}

TEST_CASE("sizes by batch: before and after cooking, volumes and pieces") {
  const auto soup = dish({"1 kg broth"}, 4, {.loss = "20 % of the raw batch"});
  CHECK(batch(*soup, "4 kg").factor == Rational(5));
  CHECK(batch(*soup, "4 kg", true).factor == Rational(4));
  const auto litres = dish({"600 g broth", "400 g zest | fixed"}, 4, {.makes = "2 L"});
  CHECK(batch(*litres, "3.2 L").factor == Rational(2));
  CHECK(batch(*dish({"960 g dough"}, 8, {.makes = "16"}), "20 piece").portions == Rational(10));
  CHECK(batch(*dish({"3 stars"}, 4, {.makes = "1.2 kg"}), "3 kg").portions == Rational(10));
}

TEST_CASE("sizes by batch: what is not known, and what never grows") {
  CHECK(refusal(*dish({"1 kg broth", "3 stars"}, 4), "2 kg") ==
        "batch.unknown @ the weight of the batch is not known, since no fact gives the weight of: "
        "stars (state it: makes = \"...\", or add facts of your own)");
  CHECK(refusal(*dish({"1 kg broth"}, 4), "2 L") ==
        "batch.unknown @ the recipe does not say how much it makes in volume (state it: makes = "
        "\"...\")");
  CHECK(refusal(*dish({"1 kg broth | fixed"}, 4), "2 kg") ==
        "size.target @ no size comes to 2 kg: the amounts do not grow with it, and make 1 kg "
        "(every line is fixed)");
  CHECK(refusal(*dish({"1 kg broth"}, 4), "0 kg") ==
        "size.target @ a batch of 0 kg is asked for, but must be above zero");
}

TEST_CASE("sizes by batch: lines by the load are part of it") {
  const auto pot = dish({"1980 g dough", "20 g oil | 10 g per load"}, 4, {.load = "1 kg"});
  CHECK(batch(*pot, "3 kg").factor == Rational(3, 2));
  CHECK(refusal(*pot, "3005 g")
            .starts_with("size.unreachable @ a batch of 3.005 kg cannot be made: 6 portions come "
                         "to 3 kg, and any more "
                         "to more than 3.01 kg"));
}

TEST_CASE("sizes by portions: spare ones and what serving loses") {
  const auto pot = dish({"1 kg broth"}, 4);
  const Size size = size_for_serving(*pot, {38, 2, Rational(1, 5)});
  CHECK(size == Size{38, 50, Rational(25, 2), 1});
  const auto refused = [&](const Rational& portions, const Rational& spare, const Rational& loss) {
    return told_by([&] { return size_for_serving(*pot, {portions, spare, loss}).factor; });
  };
  CHECK(refused(0, 0, 0) ==
        "recipe.portions @ a recipe cannot be made for 0 portions (the number of portions must be "
        "above zero)");
  CHECK(refused(4, -1, 0) == "size.spare @ there cannot be -1 spare portions");
  CHECK(refused(4, 0, 1) ==
        "size.loss @ a serving loss of 100 % leaves no portion (write a percentage from 0 and "
        "below 100, of the batch that is made)");
  CHECK(refused(4, 0, Rational(-1, 10)).starts_with("size.loss @ a serving loss of -10 %"));
}

TEST_CASE("sizes by portion size: lines by the portion keep to their number") {
  const auto pot = dish({"400 g broth", "4 eggs | one per portion"}, 4);
  // 10 portions of 200 g less ten eggs of 50 g: 1500 g of broth.
  const Size size = size_for_portions_of(*pot, {10, 0, 0}, q("200 g"));
  CHECK(size == Size{10, 10, Rational(15, 4), 1});
  const Recipe ten = pot->sized(size);
  CHECK(ten.lines()[0].amount == q("1500 g AP"));
  CHECK(ten.lines()[1].amount == q("10 piece AP"));
  CHECK(ten.batch().weight(ten.size()) == q("2 kg"));
  CHECK(told_by([&] { return size_for_portions_of(*pot, {10, 0, 0}, q("50 g")).factor; }) ==
        "size.unreachable @ a batch of 500 g cannot be made: the smallest one comes to more than "
        "500 g (lines that are fixed or go in steps are in every batch)");
}

TEST_CASE("sizes by stock: the scarcest line decides, in whole portions") {
  const auto pot =
      dish({"500 g leeks, trimmed", "4 eggs | one per portion", "220 g pearl barley"}, 4);
  const LimitedSize limited =
      size_for_stock(*pot, {stock("leeks", "2 kg AP"), stock("eggs", "30 piece")});
  CHECK(limited.line == "leeks");
  // 2 kg AP are 880 g EP at SR28's 44 %.
  CHECK(limited.exact == Rational(176, 25));
  CHECK(limited.size.portions == Rational(7));
  CHECK(size_for_stock(*pot, {stock("eggs", "9 piece"), stock("leeks", "20 kg AP")}).line ==
        "eggs");
  CHECK(size_for_stock(*pot, {stock("pearl barley", "1 kg")}).exact == Rational(200, 11));
}

TEST_CASE("sizes by stock: all lines of one food draw on it") {
  RecipeInput input = dish_input({"3 eggs", "1 egg, beaten"}, 4);
  input.lines[1].id = placed("wash");
  const Recipe pot(input, shared_pantry());
  CHECK(size_for_stock(pot, {stock("eggs", "30 piece")}).exact == Rational(30));
  CHECK(size_for_stock(pot, {stock("egg", "30 piece")}).exact == Rational(30));
  // An id means one line.
  CHECK(size_for_stock(pot, {stock("wash", "30 piece")}).exact == Rational(120));
}

TEST_CASE("sizes by stock: lines by the load") {
  const auto pot = dish({"1980 g dough", "20 g oil | 10 g per load"}, 4, {.load = "1 kg"});
  CHECK(size_for_stock(*pot, {stock("oil", "35 g")}).exact == Rational(6));
}

TEST_CASE("size errors: stock") {
  const auto pot = dish({"500 g leeks, trimmed", "4 eggs", "10 g zest | fixed"}, 4);
  const auto refused = [&](const std::vector<LineStock>& all) {
    return told_by([&] { return size_for_stock(*pot, all).exact; });
  };
  CHECK(refused({stock("leaks", "1 kg")}) ==
        "size.stock @ no line of the recipe is leaks (nearest: leeks)");
  CHECK(refused({stock("beef", "1 kg")}) ==
        "size.stock @ no line of the recipe is beef (lines: leeks, eggs, zest)");
  CHECK(
      refused({stock("zest", "1 L")}) ==
      "size.stock @ the stock of zest is 1 L, but the recipe measures it in g AP (state the stock "
      "as the recipe measures it)");
  CHECK(refused({stock("zest", "1 kg")}) ==
        "size.stock @ the stock limits nothing: no line of it grows with the size");
  CHECK(refused({}) == "size.stock @ the stock limits nothing: no line of it grows with the size");
  CHECK(refused({stock("eggs", "1/2 piece")}) ==
        "size.stock @ the stock of eggs is enough for 1/2 portions only (one whole portion needs "
        "more)");
}

}  // namespace
}  // namespace scalepan
