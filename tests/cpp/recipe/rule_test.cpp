#include "recipe/rule.hpp"

#include "measure/measuring.hpp"

namespace scalepan {
namespace {

Rule rule(std::string_view text, std::string_view unit = "piece AP") {
  return parse_rule(text, u(unit), Measures::metric);
}

Thrown refusal(std::string_view text, std::string_view unit = "piece AP") {
  return thrown_by([&] { return rule(text, unit).each; });
}

Rule per(const Rational& each, const Rational& portions) {
  return {.kind = RuleKind::per_portions, .each = each, .portions = portions};
}

TEST_CASE("rules: the words there are") {
  CHECK(rule("in proportion") == Rule{});
  CHECK(rule(" fixed ").kind == RuleKind::fixed);
  CHECK(rule("whole").kind == RuleKind::whole);
  CHECK(rule("one per portion") == per(1, 1));
  CHECK(rule("one per 4 portions") == per(1, 4));
  CHECK(rule("one per four portions") == per(1, 4));
  CHECK(rule("two per twelve portions") == per(2, 12));
  CHECK(rule("1/2 per portion") == per(Rational(1, 2), 1));
  CHECK(rule("3 per 1.5 portions") == per(3, Rational(3, 2)));
}

TEST_CASE("rules: an amount before per takes its own unit, or the line's") {
  CHECK(rule("25 g per portion", "kg AP") == per(25, 1));
  CHECK(rule("2 per portion", "kg AP") == per(2000, 1));
  CHECK(rule("one per portion", "kg EP") == per(1000, 1));
  // Of a count, `one` is one piece.
  CHECK(rule("one per portion", "dozen AP") == per(1, 1));
  CHECK(rule("1 tbsp per 2 portions", "L AP") == per(15, 2));
}

TEST_CASE("rules: text that is no rule") {
  for (const char* text : {"twice", "", "one per", "one per person", "per portion", "0 per portion",
                           "-1 per portion", "1-2 per portion", "one per 0 portions",
                           "one per some portions", "one each per portion", "Fixed"}) {
    std::string shown = text;
    CHECK(refusal(text) ==
          Thrown{"rule.unreadable", "\"" + shown + "\" is no rule",
                 "the rules: in proportion, fixed, whole, one per portion, one per 4 portions, "
                 "25 g per portion, one per load, tapered (2, 1.5), (4, 2), to taste, 15 % taken "
                 "up, taken out",
                 0});
  }
}

TEST_CASE("rules: an amount of another kind than the line's") {
  CHECK(refusal("25 g per portion", "piece AP") ==
        Thrown{"rule.unit", "the rule counts in g, the line in piece", "", 0});
  CHECK(refusal("25 mL per portion", "kg EP") ==
        Thrown{"rule.unit", "the rule counts in mL, the line in kg", "", 0});
}

TEST_CASE("rules: told as they are written") {
  CHECK(text_of(rule("in proportion"), u("piece AP")) == "in proportion");
  CHECK(text_of(rule("fixed"), u("g")) == "fixed");
  CHECK(text_of(rule("whole"), u("piece AP")) == "whole");
  CHECK(text_of(rule("one per portion"), u("piece AP")) == "1 per portion");
  CHECK(text_of(rule("one per four portions"), u("piece AP")) == "1 per 4 portions");
  CHECK(text_of(rule("25 g per portion", "kg AP"), u("g AP")) == "25 g per portion");
  CHECK(text_of(rule("25 g per portion", "kg AP"), u("kg AP")) == "0.025 kg per portion");
}

TEST_CASE("rules: what each gives at a size") {
  const auto at = [](const Rule& rule, const Rational& written, const Rational& portions) {
    return amount_by_rule(rule, written, {portions, portions, portions / Rational(4), 1});
  };
  CHECK(at(rule("in proportion"), 6, 10).amount == Rational(15));
  CHECK(at(rule("in proportion"), 1, 3).amount == Rational(3, 4));
  CHECK(at(rule("fixed"), 6, 10).amount == Rational(6));
  CHECK(at(rule("whole"), 1, 9).amount == Rational(3));
  CHECK(at(rule("whole"), 1, 9).exact == Rational(9, 4));
  CHECK(at(rule("whole"), 1, 8).amount == Rational(2));
  CHECK(at(rule("one per portion"), 4, 7).amount == Rational(7));
  CHECK(at(rule("one per portion"), 4, Rational(13, 2)).amount == Rational(7));
  CHECK(at(rule("one per portion"), 4, Rational(13, 2)).exact == Rational(13, 2));
  CHECK(at(rule("2 per 3 portions"), 4, 7).amount == Rational(6));
  CHECK(at(rule("2 per 3 portions"), 4, 6).amount == Rational(4));
  CHECK(at(rule("2 per 3 portions"), 4, 7).exact == Rational(14, 3));
}

}  // namespace
}  // namespace scalepan
