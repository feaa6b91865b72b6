// The amount grammar of number_text.hpp, production by production.
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "check.hpp"

namespace scalepan {
namespace {

struct Read {
  std::string text;
  Rational value;
};

void check_all(const std::vector<Read>& cases) {
  for (const auto& [text, value] : cases) {
    CAPTURE(text);
    CHECK(parse_amount_number(text) == value);
    CHECK(parse_amount_number("-" + text) == -value);
    CHECK(parse_amount_number("  " + text + " ") == value);
  }
}

TEST_CASE("amounts: wholes") {
  check_all({{"0", 0},
             {"3", 3},
             {"007", 7},
             {"999999999999999999", 999999999999999999},
             {"9223372036854775807", word_max},
             {"9223372036854775808", Rational(word_max) + 1},
             {"1267650600228229401496703205376", power(2, 100)},
             {std::string(900, '0') + "5", 5},
             {std::string(30, '0'), 0}});
}

TEST_CASE("amounts: decimals") {
  check_all({{"2.5", Rational(5, 2)},
             {".35", Rational(7, 20)},
             {"0.1", Rational(1, 10)},
             {"1.250", Rational(5, 4)},
             {"0.000", 0},
             {"3.14159265358979323846", make_rational(big_integer("314159265358979323846"),
                                                      big_integer("100000000000000000000"))}});
}

TEST_CASE("amounts: fractions with each slash") {
  check_all({{"1/3", Rational(1, 3)},
             {"6/4", Rational(3, 2)},
             {"0/5", 0},
             {"1⁄3", Rational(1, 3)},
             {"1∕3", Rational(1, 3)},
             {"010/012", Rational(5, 6)},
             {"1/9223372036854775808", reciprocal(whole("9223372036854775808"))}});
}

TEST_CASE("amounts: mixed numbers") {
  check_all({{"1 1/2", Rational(3, 2)},
             {"1  1/2", Rational(3, 2)},
             {"1-1/2", Rational(3, 2)},
             {"1½", Rational(3, 2)},
             {"1 ½", Rational(3, 2)},
             {"1-½", Rational(3, 2)},
             {"2 1⁄3", Rational(7, 3)},
             {"0 1/2", Rational(1, 2)},
             {"12 3/16", Rational(195, 16)},
             {"3 0/4", 3}});
}

TEST_CASE("amounts: the vulgar fractions of Unicode") {
  // By their names in the Unicode character database (ONE QUARTER ... ZERO THIRDS).
  const std::vector<Read> vulgar{{"¼", Rational(1, 4)},
                                 {"½", Rational(1, 2)},
                                 {"¾", Rational(3, 4)},
                                 {"⅐", Rational(1, 7)},
                                 {"⅑", Rational(1, 9)},
                                 {"⅒", Rational(1, 10)},
                                 {"⅓", Rational(1, 3)},
                                 {"⅔", Rational(2, 3)},
                                 {"⅕", Rational(1, 5)},
                                 {"⅖", Rational(2, 5)},
                                 {"⅗", Rational(3, 5)},
                                 {"⅘", Rational(4, 5)},
                                 {"⅙", Rational(1, 6)},
                                 {"⅚", Rational(5, 6)},
                                 {"⅛", Rational(1, 8)},
                                 {"⅜", Rational(3, 8)},
                                 {"⅝", Rational(5, 8)},
                                 {"⅞", Rational(7, 8)},
                                 {"↉", 0}};
  CHECK(vulgar.size() == 19);
  check_all(vulgar);
  for (const auto& [sign, value] : vulgar) {
    CAPTURE(sign);
    CHECK(parse_amount_number("7" + sign) == 7 + value);
    CHECK(parse_amount_number("7 " + sign) == 7 + value);
  }
}

struct Stop {
  std::string text;
  Rational value;
  std::size_t end;
};

TEST_CASE("reading an amount stops where its number ends") {
  const std::vector<Stop> cases{{"1 lb 4 oz", 1, 1},
                                {"1 1/2 cup", Rational(3, 2), 5},
                                {"2 x 400 g", 2, 1},
                                {"2 to 3", 2, 1},
                                {"2-3", 2, 1},
                                {"1 - 1/2", 1, 1},
                                {"1½cups", Rational(3, 2), 3},
                                {"2.5kg", Rational(5, 2), 3},
                                {"5.", 5, 1},
                                {"5. then", 5, 1},
                                {"1, 2", 1, 1},
                                {"1/x", 1, 1},
                                {"2 1", 2, 1},
                                {"½½", Rational(1, 2), 2},
                                {"-3 g", -3, 2}};
  for (const auto& [text, value, end] : cases) {
    CAPTURE(text);
    std::size_t position = 0;
    const std::optional<Rational> number = read_amount_number(text, position);
    REQUIRE(number.has_value());
    CHECK(*number == value);
    CHECK(position == end);
  }
}

TEST_CASE("reading goes on from a position inside the text") {
  const std::string text = "1 lb 4 1/2 oz";
  std::size_t position = 5;
  CHECK(read_amount_number(text, position) == Rational(9, 2));
  CHECK(position == 10);
}

TEST_CASE("where no amount starts nothing is read and the position stays") {
  for (const std::string text : {"", "x", "-", "- 1", ".", "-.", ".x", "/2", "+1", " 1", "--1"}) {
    CAPTURE(text);
    std::size_t position = 0;
    CHECK_FALSE(read_amount_number(text, position).has_value());
    CHECK(position == 0);
  }
}

}  // namespace
}  // namespace scalepan
