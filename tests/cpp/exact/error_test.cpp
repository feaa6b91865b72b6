#include "exact/error.hpp"

#include <string>

#include "check.hpp"

namespace scalepan {
namespace {

TEST_CASE("a place is told by cell, or by file, line and column") {
  CHECK(Place{}.text().empty());
  CHECK(Place{"pot.toml", 4, 10, {}}.text() == "pot.toml:4:10");
  CHECK(Place{"pot.toml", 4, 0, {}}.text() == "pot.toml:4");
  CHECK(Place{"pot.toml", 0, 10, {}}.text() == "pot.toml");
  CHECK(Place{{}, 4, 10, {}}.text() == "line 4:10");
  CHECK(Place{"pot.toml", 4, 10, "leeks.buy"}.text() == "leeks.buy");
}

TEST_CASE("an error tells place, message and hint in one line") {
  const Error bare("unit.unknown", "no unit is called \"cupp\"");
  CHECK(std::string(bare.what()) == "no unit is called \"cupp\"");
  const Error full("unit.unknown", "no unit is called \"cupp\"", "did you mean cup?",
                   Place{"pot.toml", 4, 10, {}});
  CHECK(std::string(full.what()) ==
        "pot.toml:4:10: no unit is called \"cupp\" (did you mean cup?)");
}

TEST_CASE("an error moved to another place keeps the rest") {
  const Error inner("unit.unknown", "no unit is called \"cupp\"", "did you mean cup?");
  const Error outer = inner.at(Place{{}, 0, 0, "leeks.buy"});
  CHECK(outer.code() == "unit.unknown");
  CHECK(outer.message() == "no unit is called \"cupp\"");
  CHECK(outer.hint() == "did you mean cup?");
  CHECK(std::string(outer.what()) == "leeks.buy: no unit is called \"cupp\" (did you mean cup?)");
  CHECK(std::string(inner.what()) == "no unit is called \"cupp\" (did you mean cup?)");
}

TEST_CASE("fail and fail_at throw what they are given") {
  CHECK(thrown_by([]() -> int { fail("a.b", "wrong", "do this"); }) ==
        Thrown{"a.b", "wrong", "do this"});
  CHECK(thrown_by([]() -> int { fail_at(7, "a.b", "wrong"); }) == Thrown{"a.b", "wrong", "", 7});
}

TEST_CASE("a place inside a text counts characters, not bytes") {
  const Place start{"pot.toml", 4, 10, {}};
  const auto at_offset = [](std::size_t offset) {
    return Error("a.b", "wrong", "", Place{{}, 0, 0, {}, offset});
  };
  CHECK(place_within(start, "1½ 1/0", at_offset(0)).text() == "pot.toml:4:10");
  CHECK(place_within(start, "1½ 1/0", at_offset(6)).text() == "pot.toml:4:15");
  CHECK(place_within(start, "1½ 1/0", at_offset(99)).text() == "pot.toml:4:16");
  CHECK(place_within(start, "1½ 1/0", Error("a.b", "wrong")).text() == "pot.toml:4:10");
  CHECK(place_within(Place{"pot.toml", 4, 0, {}}, "1/0", at_offset(2)).text() == "pot.toml:4");
}

TEST_CASE("an error met while reading a text leaves with its full place") {
  const Place start{"pot.toml", 4, 10, {}};
  const auto told = [&](std::string_view text, auto read) {
    try {
      located(start, text, read);
    } catch (const Error& error) {
      return std::string(error.what());
    }
    return std::string("nothing was thrown");
  };
  CHECK(told("1 1/0", [] { return parse_amount_number("1 1/0"); }) ==
        "pot.toml:4:14: the denominator of a fraction is zero");
  CHECK(told("x", []() -> int { fail("a.b", "wrong"); }) == "pot.toml:4:10: wrong");
  CHECK(told("x", []() -> int { fail("a.b", "wrong", "", Place{"other.toml", 2, 3, {}}); }) ==
        "other.toml:2:3: wrong");
  CHECK(located(start, "3/4", [] { return parse_amount_number("3/4"); }) == Rational(3, 4));
}

TEST_CASE("an excerpt is cut between characters and carries no control character") {
  CHECK(excerpt("leek") == "leek");
  CHECK(excerpt("leeks", 4) == "leek...");
  CHECK(excerpt("leek", 4) == "leek");
  CHECK(excerpt("a\tb\nc\x7f") == "a?b?c?");
  CHECK(excerpt("1½ cup", 3) == "1½...");
  CHECK(excerpt("1½ cup", 2) == "1...");
  CHECK(excerpt("½", 1) == "...");
  CHECK(excerpt(std::string(41, 'x')) == std::string(40, 'x') + "...");
}

}  // namespace
}  // namespace scalepan
