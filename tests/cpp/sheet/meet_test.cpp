#include <random>

#include "catch.hpp"
#include "sheet/sheets.hpp"

using namespace scalepan;

namespace {

Meetings meet(const Sheet& sheet, std::string_view output, const Rational& target, int low,
              int high, Aim aim = Aim::equal) {
  return sheet.meetings("x", output, Quantity(target), Quantity(Rational(low)),
                        Quantity(Rational(high)), no_pulse, aim);
}

bool keeps_to(Aim aim, const Rational& figure, const Rational& target) {
  if (aim == Aim::at_most) return figure <= target;
  return aim == Aim::at_least ? figure >= target : figure == target;
}

bool meets_at(const Meetings& meetings, const Rational& x) {
  for (const Meeting& meeting : meetings.found) {
    const bool from = meeting.from < x || (meeting.from == x && meeting.from_meets);
    const bool to = x < meeting.to || (meeting.to == x && meeting.to_meets);
    if (from && to) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("sheet/meet: a straight way is turned round exactly") {
  const auto sheet = sheet_of({Set{"x", number(1)}, Define{"y", "(3 * x + 1) / 7 - 2"}});
  const Meetings meetings = meet(*sheet, "y", Rational(5, 3), -100, 100);
  REQUIRE(meetings.found.size() == 1);
  // 3 x + 1 = 7 (5/3 + 2) = 77/3
  CHECK(meetings.found[0].from == Rational(74, 9));
  CHECK(meetings.found[0].is_one());
}

TEST_CASE("sheet/meet: a quotient is turned round, and its pole is passed") {
  const auto sheet = sheet_of({Set{"x", number(1)}, Define{"buy", "5 / x"}});
  const Meetings meetings = meet(*sheet, "buy", Rational(125, 11), -1, 1);
  REQUIRE(meetings.found.size() == 1);
  CHECK(meetings.found[0].from == Rational(44, 100));
}

TEST_CASE("sheet/meet: a value at which the formula fails is left out of a stretch") {
  const auto sheet = sheet_of({Set{"x", number(1)}, Define{"y", "(x - 5) / (x - 5) + 1"}});
  const Meetings meetings = meet(*sheet, "y", 2, 0, 10);
  REQUIRE(meetings.found.size() == 2);
  CHECK(meets_at(meetings, Rational(49, 10)));
  CHECK_FALSE(meets_at(meetings, 5));
  CHECK(meets_at(meetings, Rational(51, 10)));
}

TEST_CASE("sheet/meet: a step is met by a whole stretch, told with its ends") {
  const auto sheet = sheet_of({Set{"x", number(1)}, Define{"packs", "up_to_multiple(x, 4)"}});
  const Meetings meetings = meet(*sheet, "packs", 8, 0, 100);
  REQUIRE(meetings.found.size() == 1);
  CHECK(meetings.found[0].from == Rational(4));
  CHECK_FALSE(meetings.found[0].from_meets);
  CHECK(meetings.found[0].to == Rational(8));
  CHECK(meetings.found[0].to_meets);
}

TEST_CASE("sheet/meet: where nothing meets it the nearest figures are told") {
  const auto sheet = sheet_of({Set{"x", number(1)}, Define{"packs", "up_to_multiple(x, 4)"}});
  const Meetings meetings = meet(*sheet, "packs", 9, 0, 100);
  CHECK(meetings.found.empty());
  CHECK(meetings.below->figure == Rational(8));
  CHECK(meetings.above->figure == Rational(12));
}

TEST_CASE("sheet/meet: several meetings are all found") {
  const auto sheet = sheet_of({Set{"x", number(1)}, Define{"y", "abs(abs(x) - 3)"}});
  const Meetings meetings = meet(*sheet, "y", 1, -10, 10);
  REQUIRE(meetings.found.size() == 4);
  CHECK(meetings.found[0].from == Rational(-4));
  CHECK(meetings.found[3].from == Rational(4));
}

TEST_CASE("sheet/meet: what is found is met, and nothing else is, at every point looked at") {
  std::mt19937 random(3);
  const auto draw = [&](int from, int to) {
    return std::to_string(std::uniform_int_distribution<int>(from, to)(random));
  };
  int met = 0;
  for (int i = 0; i < 200; ++i) {
    const std::string a =
        "up_to_multiple(x * " + draw(1, 9) + " / " + draw(1, 9) + ", " + draw(1, 4) + ")";
    const std::string b =
        "if x < " + draw(0, 12) + " then " + draw(0, 5) + " * x else max(x, " + draw(0, 15) + ")";
    const std::string c = "nearest_multiple(" + draw(1, 30) + " / (x + " + draw(1, 3) + "), 1/2)";
    const auto sheet = sheet_of({Set{"x", number(1)}, Define{"in_packs", a}, Define{"chosen", b},
                                 Define{"rounded", c},
                                 Define{"y", i % 3 == 0   ? "in_packs + chosen"
                                             : i % 3 == 1 ? "chosen - in_packs"
                                                          : "in_packs + rounded"}});
    const Rational target(std::uniform_int_distribution<int>(0, 40)(random), 2);
    const Aim aim = i % 2 == 0 ? Aim::equal : i % 4 == 1 ? Aim::at_most : Aim::at_least;
    const Meetings meetings = meet(*sheet, "y", target, 0, 20, aim);
    std::vector<Rational> points;
    for (int k = 0; k <= 240; ++k) points.emplace_back(k, 12);
    for (const Meeting& meeting : meetings.found) {
      points.push_back(meeting.from);
      points.push_back((meeting.from + meeting.to) / Rational(2));
      points.push_back(meeting.to);
    }
    for (const Rational& point : points) {
      sheet->apply({Set{"x", number(point)}});
      const bool meets = keeps_to(aim, number_in(*sheet, "y"), target);
      met += static_cast<int>(meets);
      CHECK(meets == meets_at(meetings, point));
    }
  }
  CHECK(met > 200);
}

TEST_CASE("sheet/meet: at most and at least are met by stretches with their ends") {
  const auto sheet = sheet_of({Set{"x", number(1)}, Define{"y", "6 / x"}});
  const Meetings most = meet(*sheet, "y", 4, -3, 6, Aim::at_most);
  REQUIRE(most.found.size() == 2);
  CHECK(most.found[0].from == Rational(-3));
  CHECK(most.found[0].from_meets);
  CHECK(most.found[0].to == Rational(0));
  CHECK_FALSE(most.found[0].to_meets);
  CHECK(most.found[1].from == Rational(3, 2));
  CHECK(most.found[1].from_meets);
  CHECK(most.found[1].to == Rational(6));
  CHECK(most.found[1].to_meets);
  const Meetings least = meet(*sheet, "y", 4, -3, 6, Aim::at_least);
  REQUIRE(least.found.size() == 1);
  CHECK(least.found[0].from == Rational(0));
  CHECK_FALSE(least.found[0].from_meets);
  CHECK(least.found[0].to == Rational(3, 2));
  CHECK(least.found[0].to_meets);
}

TEST_CASE("sheet/meet: a way that cannot be turned round is refused with the reason") {
  const auto sheet = sheet_of({Set{"x", number(1)}, Define{"y", "x * x"}});
  CHECK_THROWS_WITH(meet(*sheet, "y", 4, 0, 10),
                    "how y follows from x cannot be turned round: figures that both follow from it "
                    "are multiplied (sweep x over the values that come into question)");
}

namespace {

ValueType plain(std::string_view /*unused*/, std::span<const ValueType> /*unused*/) {
  return quantity_type(Unit());
}

/// `doubled(a)`: what it gives along a stretch is known only to `followed`.
Value doubled(std::span<const Value> arguments) {
  return std::get<Rational>(arguments[0]) * Rational(2);
}
Along doubled_along(const Function& /*unused*/, std::span<const Along> arguments,
                    Reach& /*unused*/) {
  return std::get<RatioForm>(arguments[0]) * RatioForm::constant(2);
}
/// `from_three(a)`: 1 from 3 on; fails before.
Value from_three(std::span<const Value> arguments) {
  if (std::get<Rational>(arguments[0]) < Rational(3)) fail("test.early", "before 3");
  return Rational(1);
}
Along from_three_along(const Function& function, std::span<const Along> arguments, Reach& reach) {
  const auto& form = std::get<RatioForm>(arguments[0]);
  reach.sign_of(form - RatioForm::constant(3));
  return RatioForm::constant(
      std::get<Rational>(function.run(std::vector<Value>{*form.at(reach.inside())})));
}

std::unique_ptr<Sheet> sheet_with_functions(const std::vector<Change>& changes) {
  constexpr Operation call = Operation::call;
  auto sheet = std::make_unique<Sheet>(std::make_shared<const FunctionTable>(std::vector<Function>{
      {"unknown", "unknown(a)", "twice a", 1, 1, call, plain, doubled},
      {"followed", "followed(a)", "twice a", 1, 1, call, plain, doubled, nullptr, nullptr,
       doubled_along},
      {"from_three", "from_three(a)", "1 from 3 on", 1, 1, call, plain, from_three, nullptr,
       nullptr, from_three_along},
  }));
  sheet->apply(changes);
  return sheet;
}

}  // namespace

TEST_CASE("sheet/meet: a function is followed where it says how") {
  const auto sheet =
      sheet_with_functions({Set{"x", number(1)}, Define{"y", "followed(x + 1) - 1"},
                            Define{"z", "unknown(4) * x"}, Define{"not_known", "unknown(x)"}});
  const Meetings meetings = meet(*sheet, "y", 6, 0, 10);
  REQUIRE(meetings.found.size() == 1);
  CHECK(meetings.found[0].from == Rational(5, 2));
  REQUIRE(meet(*sheet, "z", 4, 0, 10).found.size() == 1);
  CHECK(meet(*sheet, "z", 4, 0, 10).found[0].from == Rational(1, 2));
  CHECK_THROWS_WITH(meet(*sheet, "not_known", 4, 0, 10),
                    "how not_known follows from x cannot be turned round: \"unknown\" is known at "
                    "single values only (sweep x over the values that come into question)");
}

TEST_CASE("sheet/meet: where a function fails nothing is met, and a total is \"at least\"") {
  const auto sheet = sheet_with_functions(
      {Set{"x", number(1)}, AddBlock{"lines", {{"part", quantity_type(Unit())}}},
       AddRow{"lines", "one", {{"part", std::nullopt, "", "from_three(x)"}}},
       AddRow{"lines", "two", {{"part", number(2), "", ""}}}, Define{"all", "sum(lines.part)"},
       Define{"each", "(all + 1) / (x - 2)"}, Define{"least", "min(all, 1)"}});
  const Meetings met = meet(*sheet, "all", 3, 0, 10);
  REQUIRE(met.found.size() == 1);
  CHECK(met.found[0].from == Rational(3));
  CHECK(met.found[0].from_meets);
  // 4 / (x - 2), from 3 on.
  REQUIRE(meet(*sheet, "each", 2, 0, 10).found.size() == 1);
  CHECK(meet(*sheet, "each", 2, 0, 10).found[0].from == Rational(4));
  CHECK(meet(*sheet, "each", 8, 0, 10).found.empty());
  CHECK_THROWS_WITH(
      meet(*sheet, "least", 1, 0, 10),
      "how least follows from x cannot be turned round: a figure that is \"at least\" "
      "beyond a value of it is no single number (sweep x over the values that come "
      "into question)");
}

TEST_CASE("sheet/meet: an overridden cell is varied in the place of its formula") {
  const auto sheet =
      sheet_of({Set{"x", number(1)}, Define{"half", "x / 2"}, Define{"y", "half * 10"}});
  const auto vary = [&] {
    return sheet->meetings("half", "y", Quantity(Rational(7)), Quantity(Rational(0)),
                           Quantity(Rational(5)), no_pulse);
  };
  CHECK_THROWS_WITH(vary(),
                    "half is no input: it has the formula x / 2 (choose a cell that is given or "
                    "overridden)");
  sheet->apply({PutOverride{"half", {number(2), "measured", "", ""}}});
  REQUIRE(vary().found.size() == 1);
  CHECK(vary().found[0].from == Rational(7, 10));
}
