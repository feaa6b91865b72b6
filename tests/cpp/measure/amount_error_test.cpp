// What amounts are refused, with the whole error.
#include <string>

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

Thrown amount_error(std::string_view text) {
  return thrown_by([&] { return parse_quantity(text, Measures::us); });
}

Thrown neither(const std::string& shown, std::size_t offset) {
  return {"amount.doubtful",
          "\"" + shown + "\" is neither the rest of a mixed number nor the end of a range",
          "write 1 1/2, or 1 to 2", offset};
}

Thrown unlike(const std::string& shown, const std::string& unit, std::size_t offset) {
  return {"amount.doubtful",
          "\"" + shown + "\" does not go on with a smaller unit of the same kind as " + unit, "",
          offset};
}

TEST_CASE("amounts: a smaller number after a dash is refused") {
  CHECK(amount_error("1 - 1/2") == neither(" - 1/2", 1));
  CHECK(amount_error("3-2 kg") == neither("-2", 1));
  CHECK(amount_error("1–1/2 cup") == neither("–1/2", 1));
}

TEST_CASE("amounts: the units of a sum must be of one kind and grow smaller") {
  CHECK(amount_error("1 lb 4 mL") == unlike("4 mL", "lb", 5));
  CHECK(amount_error("1 oz 4 lb") == unlike("4 lb", "oz", 5));
  CHECK(amount_error("1 kg 2 kg") == unlike("2 kg", "kg", 5));
  CHECK(amount_error("1 kg EP 200 g AP") == unlike("200 g AP", "kg EP", 8));
  CHECK(amount_error("1 lb 4 oz 3 oz") == unlike("3 oz", "oz", 10));
}

TEST_CASE("amounts: a range is one amount, in one unit") {
  CHECK(amount_error("1 to 2 lb 4 oz") == Thrown{"amount.doubtful",
                                                 "a range is followed by a second amount",
                                                 "write the range in one unit", 14});
  CHECK(amount_error("2-3 kg") == Thrown{"amount.range",
                                         "\"2-3 kg\" is a range, where one amount is needed",
                                         "write one amount", 0});
  CHECK(amount_error("2 to 3") == Thrown{"amount.range",
                                         "\"2 to 3\" is a range, where one amount is needed",
                                         "write one amount", 0});
}

TEST_CASE("amounts: what follows an amount is shown") {
  CHECK(amount_error("5 kg, sliced") ==
        Thrown{"amount.unreadable", "\", sliced\" cannot be read after \"5 kg\"", "", 4});
  CHECK(amount_error("1/kg") ==
        Thrown{"amount.unreadable", "\"/kg\" cannot be read after \"1\"", "", 1});
  CHECK(amount_error("3 kg 1/2") ==
        Thrown{"amount.unreadable", "\"1/2\" cannot be read after \"3 kg \"", "", 5});
}

TEST_CASE("amounts: no number to begin with") {
  CHECK(amount_error("kg") == Thrown{"amount.unreadable",
                                     "no number is written at the start of \"kg\"",
                                     "write a number and a unit: 1 1/2 kg", 0});
  CHECK(amount_error("  ") == Thrown{"amount.unreadable",
                                     "no number is written at the start of \"  \"",
                                     "write a number and a unit: 1 1/2 kg", 2});
}

TEST_CASE("amounts: errors of numbers and units carry their offsets") {
  CHECK(amount_error("1,5 kg").code == "number.comma");
  CHECK(amount_error("1,5 kg").offset == 1);
  CHECK(amount_error("2 x 1/0 kg").code == "number.zero_denominator");
  CHECK(amount_error("2 x 1/0 kg").offset == 6);
  CHECK(amount_error("3 T") ==
        Thrown{"unit.doubtful", "\"T\" can mean tbsp or tsp", "write the unit out", 2});
  CHECK(amount_error("1 lb 4 cupp") ==
        Thrown{"unit.unknown", "unknown unit \"cupp\"", "nearest: cup", 7});
}

}  // namespace
}  // namespace scalepan
