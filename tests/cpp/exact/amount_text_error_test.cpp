// What the amount grammar refuses, with the whole error.
#include <string>
#include <string_view>

#include "check.hpp"

namespace scalepan {
namespace {

Thrown amount_error(std::string_view text) {
  return thrown_by([&] { return parse_amount_number(text); });
}

Thrown comma(std::size_t offset) {
  return {"number.comma", "a comma stands inside a number",
          "write 1000 for a thousand and 1.5 for one and a half", offset};
}

Thrown more_than_one(const std::string& shown, std::size_t offset) {
  return {"number.doubtful", "\"" + shown + "\" can be read as more than one number",
          "write one number, such as 1.5, 3/2 or 1 1/2", offset};
}

Thrown not_below_one(const std::string& shown, std::size_t offset) {
  return {"number.doubtful", "the fraction of a mixed number is not below one: \"" + shown + "\"",
          "write one number, or put the unit between the two", offset};
}

Thrown too_many_digits(const std::string& count, std::size_t offset) {
  return {"number.too_many_digits", "a number of " + count + " digits is too long",
          "at most 1000 digits are read", offset};
}

Thrown unreadable(const std::string& message, std::size_t offset) {
  return {"number.unreadable", message, "", offset};
}

TEST_CASE("amounts: a zero denominator is refused where it stands") {
  const auto zero = [](std::size_t offset) {
    return Thrown{"number.zero_denominator", "the denominator of a fraction is zero", "", offset};
  };
  CHECK(amount_error("1/0") == zero(2));
  CHECK(amount_error("-1/000") == zero(3));
  CHECK(amount_error("1 1/0") == zero(4));
  CHECK(amount_error("1⁄0") == zero(4));
}

TEST_CASE("amounts: a comma inside a number is refused") {
  CHECK(amount_error("1,5") == comma(1));
  CHECK(amount_error("1,000.5") == comma(1));
  CHECK(amount_error("-1.5,2") == comma(4));
  CHECK(amount_error("1/2,5") == comma(3));
  CHECK(amount_error("1½,5") == comma(3));
  CHECK(amount_error("1 1/2,5") == comma(5));
}

TEST_CASE("amounts: what reads as two numbers is refused whole") {
  CHECK(amount_error("1/2/3") == more_than_one("1/2/3", 0));
  CHECK(amount_error("1.5.2") == more_than_one("1.5.2", 0));
  CHECK(amount_error("1.5/2") == more_than_one("1.5/2", 0));
  CHECK(amount_error(" -1 1/2/4") == more_than_one("1 1/2/4", 2));
  CHECK(amount_error("½/2") == more_than_one("½/2", 0));
}

TEST_CASE("amounts: the number in doubt is shown to its end") {
  CHECK(amount_error("1/2/128 cup") == more_than_one("1/2/128", 0));
  CHECK(amount_error("1.5.125") == more_than_one("1.5.125", 0));
  CHECK(amount_error("1/2⁄3") == more_than_one("1/2⁄3", 0));
  CHECK(amount_error("1.5/2½") == more_than_one("1.5/2½", 0));
}

TEST_CASE("amounts: the fraction of a mixed number must be below one") {
  CHECK(amount_error("1 3/2") == not_below_one("3/2", 2));
  CHECK(amount_error("1-4/4") == not_below_one("4/4", 2));
  CHECK(amount_error("2 400/1 g") == not_below_one("400/1", 2));
  CHECK(amount_error("2  5⁄4") == not_below_one("5⁄4", 3));
}

TEST_CASE("amounts: digits are read up to their limit") {
  const std::string most(1000, '9');
  const std::string more(1001, '9');
  CHECK(parse_amount_number(most) == power(10, 1000) - 1);
  CHECK(parse_amount_number("0." + most) == 1 - power(10, -1000));
  CHECK(parse_amount_number("1/" + most) == 1 / (power(10, 1000) - 1));
  CHECK(amount_error(more) == too_many_digits("1001", 0));
  CHECK(amount_error("-" + more) == too_many_digits("1001", 1));
  CHECK(amount_error("0." + more) == too_many_digits("1001", 2));
  CHECK(amount_error("1/" + more) == too_many_digits("1001", 2));
  CHECK(amount_error("1 1/" + more) == too_many_digits("1001", 4));
  CHECK(amount_error(std::string(2500, '0')) == too_many_digits("2500", 0));
}

TEST_CASE("amounts: no number at all") {
  CHECK(amount_error("") == unreadable("no number is written in \"\"", 0));
  CHECK(amount_error("   ") == unreadable("no number is written in \"\"", 3));
  CHECK(amount_error("some") == unreadable("no number is written in \"some\"", 0));
  CHECK(amount_error(" - 1") == unreadable("no number is written in \"- 1\"", 1));
  CHECK(amount_error("a\tb") == unreadable("no number is written in \"a?b\"", 0));
  CHECK(amount_error(std::string(50, 'x')) ==
        unreadable("no number is written in \"" + std::string(40, 'x') + "...\"", 0));
}

TEST_CASE("amounts: something after the number") {
  CHECK(amount_error("3 g") == unreadable("\"g\" follows the number 3", 2));
  CHECK(amount_error("5.") == unreadable("\".\" follows the number 5", 1));
  CHECK(amount_error("1 - 1/2") == unreadable("\"- 1/2\" follows the number 1", 2));
  CHECK(amount_error("1-2") == unreadable("\"-2\" follows the number 1", 1));
  CHECK(amount_error("½½") == unreadable("\"½\" follows the number ½", 2));
  CHECK(amount_error("1e3") == unreadable("\"e3\" follows the number 1", 1));
}

}  // namespace
}  // namespace scalepan
