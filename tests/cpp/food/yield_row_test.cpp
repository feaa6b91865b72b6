// Rows of yield tests: what each field may say.
#include "food/trials.hpp"

namespace scalepan {
namespace {

TEST_CASE("yield rows: a weight is at the stage of its word") {
  CHECK(row_of({"1", "bought", "3 lb 5 oz"}).weight == q("53 oz AP"));
  CHECK(row_of({"1", "into the pan", "2 kg"}).weight == q("2 kg EP"));
  CHECK(row_of({"1", "Cooked", "2 kg cooked"}).weight == q("2 kg cooked"));
  CHECK(row_of({"1", "taken off", "200 g"}).weight == q("200 g"));
}

TEST_CASE("yield rows: a loss may be the rest") {
  CHECK(row_of({"1", "loss", "rest"}).weight == std::nullopt);
  CHECK(row_of({"1", "carving loss", " Rest "}).weight == std::nullopt);
  CHECK(thrown_by([] { return row_of({"1", "by-product", "rest"}); }) ==
        Thrown{"yield.weight", "the weight of \"by-product\" cannot be the rest",
               "weigh it; only a loss is what the other weights leave over"});
}

TEST_CASE("yield rows: a value is money per unit or in all") {
  CHECK(row_of({"1", "bought", "12 lb", "", "6.65 USD/lb"}).value == q("79.80 USD"));
  CHECK(row_of({"1", "bought", "12 lb", "", "6.65 USD/(lb AP)"}).value == q("79.80 USD"));
  CHECK(row_of({"1", "bought", "12 lb", "", "79.80 USD"}).value == q("79.80 USD"));
  CHECK(row_of({"1", "by-product", "1 lb 8 oz", "flanks", "4.60 USD/lb"}).value == q("6.90 USD"));
  CHECK(row_of({"1", "by-product", "3 lb", "fat", "0"}).value == std::nullopt);
  CHECK(row_of({"1", "bought", "12 lb", "", "6.65 USD/lb"}).per == u("lb"));
  CHECK(row_of({"1", "bought", "12 lb", "", "79.80 USD"}).per == std::nullopt);
}

TEST_CASE("yield rows: a price of another stage is no price of what was bought") {
  CHECK(thrown_by([] { return row_of({"1", "bought", "1 kg", "", "5 EUR/(kg EP)"}); }) ==
        Thrown{"yield.value",
               "\"5 EUR/(kg EP)\" is no value of 1 kg AP: it is of the kind EUR/(g EP)",
               "write money per unit, such as 5.00 USD/lb, or in all, such as 150.00 USD"});
}

}  // namespace
}  // namespace scalepan
