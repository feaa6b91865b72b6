#include "recipe/taper.hpp"

#include <array>

#include "check.hpp"
#include "measure/measuring.hpp"
#include "recipe/rule.hpp"

namespace scalepan {
namespace {

constexpr const char* example = "write points: tapered (2, 1.5), (4, 2), then 1/4";

Thrown refusal(const char* text) {
  return thrown_by([&] { return parse_taper(text); });
}

TEST_CASE("tapers: points, and what comes behind them") {
  const Ramp ended = parse_taper("(2, 1.5), (4, 2)");
  CHECK(ended == Ramp({{1, 1}, {2, Rational(3, 2)}, {4, 2}}, std::nullopt));
  CHECK(parse_taper("(2, 2), then 1/2") == Ramp({{1, 1}, {2, 2}}, Rational(1, 2)));
  CHECK(parse_taper(" ( 2, 1 1/2 ) ,(4 , 2),then 0 ") ==
        Ramp({{1, 1}, {2, Rational(3, 2)}, {4, 2}}, Rational(0)));
  CHECK(parse_taper("(1, 1), then 1/2") == Ramp({{1, 1}}, Rational(1, 2)));
  CHECK(parse_taper("(1/2, 1/4), (2, 1.5)") ==
        Ramp({{Rational(1, 2), Rational(1, 4)}, {1, 1}, {2, Rational(3, 2)}}, std::nullopt));
  CHECK(parse_taper("(1/2, 1/2)") == Ramp({{Rational(1, 2), Rational(1, 2)}, {1, 1}}, {}));
}

TEST_CASE("tapers: text that is none") {
  for (const char* text :
       {"", "(2, 1.5", "2, 1.5", "(2 1.5)", "(2, 1.5) (4, 2)", "(2, 1.5),", "(x, 2)", "then 1/2",
        "(2, 1.5), then", "(2, 1.5), then 1/2, (8, 4)", "(2, 1.5) and so on"}) {
    CHECK(refusal(text) ==
          Thrown{"rule.taper", "\"" + std::string(text) + "\" is no taper", example, 0});
  }
}

TEST_CASE("tapers: a decimal comma is not taken for the comma of a point") {
  CHECK(refusal("(2, 1,5)") == Thrown{"number.comma", "a comma stands inside a number",
                                      "write 1000 for a thousand and 1.5 for one and a half", 5});
}

TEST_CASE("tapers: the written size has the written amount") {
  CHECK(refusal("(1, 2), (2, 3)") ==
        Thrown{"rule.taper",
               "the taper gives 2 times the amount at the written size, but that has the amount "
               "as it is written",
               "", 0});
  CHECK(refusal("(2, 1/2)").code == "ramp.order");
  CHECK(refusal("(4, 2), (2, 1.5)").code == "ramp.order");
}

TEST_CASE("tapers: told as they are read") {
  for (const char* text : {"(2, 1.5), (4, 2)", "(2, 2), then 0.5", "(0.5, 0.25), (2, 1.5)",
                           "(1, 1), then 0.5", "(2, 2), then 1/3", "(1, 1)"}) {
    const Ramp taper = parse_taper(text);
    CHECK(text_of(taper) == text);
    CHECK(parse_taper(text_of(taper)) == taper);
  }
}

// Baron Spices, Spice Handbook, "Scaling up recipes": double for the first doubling, then half
// (a quarter) of the original for each further multiple. Idaho State Department of Education, "How
// to Double a Recipe": all spices and herbs times 1.5 when doubling.
TEST_CASE("tapers: the published ones by name") {
  const Ramp herbs = taper_named("herbs");
  const Ramp pepper = taper_named("red pepper");
  constexpr std::array<int, 5> factors{2, 3, 4, 8, 10};
  const std::array<Rational, 5> of_herbs{2, Rational(5, 2), 3, 5, 6};
  const std::array<Rational, 5> of_pepper{2, Rational(9, 4), Rational(5, 2), Rational(7, 2), 4};
  for (std::size_t i = 0; i < factors.size(); ++i) {
    CHECK(herbs.at(factors.at(i)) == of_herbs.at(i));
    CHECK(pepper.at(factors.at(i)) == of_pepper.at(i));
  }
  const Ramp doubling = taper_named("when doubling");
  CHECK(doubling.at(2) == Rational(3, 2));
  CHECK(thrown_by([&] { return doubling.at(3); }) ==
        Thrown{"ramp.end", "the points end at 2; 3 is asked for"});
  for (const Ramp& taper : {herbs, pepper, doubling}) {
    CHECK(taper.at(1) == Rational(1));
    CHECK(taper.at(Rational(1, 3)) == Rational(1, 3));
  }
}

TEST_CASE("tapers: each names its source") {
  CHECK(source_of_taper("herbs") ==
        "Baron Spices, Spice Handbook, \"Scaling up recipes\": herbs, nutmeg, mace (a trade "
        "leaflet)");
  CHECK(source_of_taper("when doubling") ==
        "Idaho State Department of Education, \"How to Double a Recipe\": all spices and herbs "
        "times 1.5");
  CHECK(thrown_by([] { return taper_named("salt"); }) ==
        Thrown{"rule.taper", "no taper is called \"salt\"",
               "there are: herbs, red pepper, when doubling; or " + std::string(example), 0});
}

TEST_CASE("tapers: as rules of a line, with the share taken up behind them") {
  const auto rule = [](const char* text) {
    return parse_rule(text, Unit::named("g"), Measures::metric);
  };
  CHECK(rule("tapered as herbs").taper == taper_named("herbs"));
  CHECK(text_of(rule("tapered as red pepper"), u("g")) == "tapered as red pepper");
  CHECK(text_of(rule("tapered (2, 1 1/2)"), u("g")) == "tapered (2, 1.5)");
  CHECK(text_of(rule("tapered (2,1.5),(4,2),then 1/4"), u("g")) ==
        "tapered (2, 1.5), (4, 2), then 0.25");
  CHECK(thrown_by([&] { return rule("tapered (1,000, 2)"); }) ==
        Thrown{"rule.taper", "\"(1,000, 2)\" is no taper", std::string(example), 0});
  CHECK(thrown_by([&] { return rule("tapered (2, 1,5)"); }).code == "number.comma");
  const Rule oil = rule("tapered (2, 1.5), (4, 2), 15 % taken up");
  CHECK(oil.taken_up == Rational(15, 100));
  CHECK(oil.taper == parse_taper("(2, 1.5), (4, 2)"));
  CHECK(text_of(oil, u("g")) == "tapered (2, 1.5), (4, 2), 15 % taken up");
  CHECK(rule("12.5 % taken up").kind == RuleKind::in_proportion);
  CHECK(rule("12.5 % taken up").taken_up == Rational(1, 8));
  CHECK(text_of(rule("fixed, 1/3 % taken up"), u("g")) == "fixed, 1/3 % taken up");
  CHECK(thrown_by([&] { return rule("fixed, 101 % taken up"); }) ==
        Thrown{"rule.share", "\"101 %\" is no share of the amount",
               "write a percentage from 0 to 100", 0});
}

}  // namespace
}  // namespace scalepan
