// Targets on a costing's sheet: packs followed along one input, against the sheet itself worked out
// anew at single values.
#include "costing/packs_along.hpp"

#include <random>

#include "costing/costing_sheet.hpp"
#include "costing/pot.hpp"
#include "measure/amount.hpp"

namespace scalepan {
namespace {

const SweepPulse no_pulse = [](std::size_t /*done*/) {};

Override given(const Quantity& quantity) {
  return {{quantity_type(quantity.unit()), quantity.coherent()}, "own trim, 3 cases", "", ""};
}

/// One input of a costing's sheet, from a value to another.
struct Study {
  Costing costing;
  std::string input;
  Quantity low;
  Quantity high;

  [[nodiscard]] Meetings meet(const std::string& output, const Quantity& target) const {
    return costing.sheet()->meetings(input, output, target, low, high, no_pulse);
  }
  [[nodiscard]] Quantity at(const Rational& share) const {
    return low + (high - low) * Quantity(share);
  }
  /// None where the cell has no single figure at that value.
  [[nodiscard]] std::optional<Quantity> figure(const std::string& output,
                                               const Quantity& value) const {
    const std::vector<Outcome> outcomes =
        costing.sheet()->values_with({PutOverride{input, given(value)}}, {output});
    const auto* cell = std::get_if<CellValue>(&outcomes.front());
    if (cell == nullptr || !std::holds_alternative<Rational>(cell->value)) return std::nullopt;
    return Quantity::of_coherent(std::get<Rational>(cell->value), cell->type.shown);
  }
};

bool meets_at(const Meetings& meetings, const Rational& x) {
  for (const Meeting& meeting : meetings.found) {
    const bool from = meeting.from < x || (meeting.from == x && meeting.from_meets);
    const bool to = x < meeting.to || (meeting.to == x && meeting.to_meets);
    if (from && to) return true;
  }
  return false;
}

/// At even points, and below, at and above the ends of what was found. How many points met it.
int check_points(const Study& study, const std::string& output, const Quantity& target) {
  const Meetings meetings = study.meet(output, target);
  const Rational near(1, 1'000'003);
  std::vector<Quantity> points;
  for (int k = 0; k <= 48; ++k) points.push_back(study.at(Rational(k, 48)));
  for (const Meeting& meeting : meetings.found) {
    for (const Rational& end : {meeting.from, meeting.to}) {
      for (const Rational& beside : {-near, Rational(), near}) {
        points.push_back(Quantity::of_coherent(end * (Rational(1) + beside), study.low.unit()));
      }
    }
    points.push_back(
        Quantity::of_coherent((meeting.from + meeting.to) / Rational(2), study.low.unit()));
  }
  int met = 0;
  for (const Quantity& point : points) {
    if (point < study.low || point > study.high) continue;
    const bool meets = study.figure(output, point) == target;
    INFO(output << " " << target.text() << " at " << point.text());
    CHECK(meets == meets_at(meetings, point.coherent()));
    met += static_cast<int>(meets);
  }
  return met;
}

Study shares_of(const Costing& costing, const std::string& cell) {
  costing.override_figure(cell, given(parse_quantity("0.5 EP/AP")));
  return {costing, cell, parse_quantity("0.2 EP/AP"), parse_quantity("1 EP/AP")};
}

Study portions_of(const Costing& costing, int high) {
  return {costing, "portions", Quantity(Rational(1, 2)), Quantity(Rational(high))};
}

Costing pooled_leeks() {
  RecipeInput input = recipe_input({"600 g leeks", "300 g leeks, trimmed | fixed"});
  input.lines[1].id = placed("tops");
  return {
      {input, shared_pantry()},
      prices_of({{"leeks", "AP", "1 kg", "2", "no"}, {"leeks", "AP", "300 g", "0.8", "3 days"}}),
      {}};
}

// The till of forty is 19.95 beside the leeks. 40.95 leaves 21.00 for ten packs of 1 kg, which do
// where 5 kg EP take 10 kg, at a half; from 5 / 9.5 on nine and a half do, for 20.10.
TEST_CASE("costing/packs along: a till is met by all shares that take the same packs") {
  const Study study = shares_of(pot_costing(40), "leeks.edible");
  const Meetings meetings = study.meet("till", parse_quantity("40.95 XXX"));
  REQUIRE(meetings.found.size() == 1);
  CHECK(meetings.found[0].from == Rational(1, 2));
  CHECK(meetings.found[0].from_meets);
  CHECK(meetings.found[0].to == Rational(10, 19));
  CHECK_FALSE(meetings.found[0].to_meets);
}

// What is left is what the packs hold less 5 kg / share: 300 g where that is 9.7 kg of ten packs.
TEST_CASE("costing/packs along: what is left is met at single shares, one a choice of packs") {
  const Study study = shares_of(pot_costing(40), "leeks.edible");
  const Meetings meetings = study.meet("leeks.leftover", parse_quantity("300 g AP"));
  // 5 kg / share + 300 g is a multiple of half a kilogram, from 5.5 to 25 kg.
  REQUIRE(meetings.found.size() == 40);
  for (std::size_t i = 0; i < meetings.found.size(); ++i) {
    CHECK(meetings.found[i].is_one());
    CHECK(meetings.found[i].from == Rational(5000) / Rational(25'000 - 500 * i - 300));
  }
}

TEST_CASE("costing/packs along: what is found is met, and nothing else is") {
  std::mt19937 random(11);
  const auto share = [&] {
    return Rational(std::uniform_int_distribution<int>(0, 97)(random), 97);
  };
  const std::vector<Study> studies{
      shares_of(pot_costing(40), "leeks.edible"),
      shares_of(pot_costing(7), "leeks.edible"),
      portions_of(pot_costing(4), 60),
      // In kinds: by weight, by the piece, and peeled.
      portions_of(costing_of({"600 g onions, chopped"}, {{"onions", "AP", "1 kg", "1.00", "no"},
                                                         {"onions", "AP", "3", "0.41", "no"},
                                                         {"onions", "EP", "500 g", "0.77", "yes"}}),
                  30),
  };
  int met = 0;
  for (const Study& study : studies) {
    for (const char* output : {"till", "used", "thrown", "borne", "per_portion.till"}) {
      for (int i = 0; i < 6; ++i) {
        const auto target = study.figure(output, study.at(share()));
        REQUIRE(target);
        met += check_points(study, output, *target);
      }
    }
  }
  CHECK(met > 400);
}

// Each line pays its share of the packs, and the shares move with the portions.
TEST_CASE("costing/packs along: lines that share packs meet a till together and by themselves") {
  const Study study = portions_of(pooled_leeks(), 30);
  int met = 0;
  for (const char* output : {"till", "leeks.till", "tops.till", "leeks.share", "leeks.leftover"}) {
    for (int i = 1; i < 12; ++i) {
      const auto target = study.figure(output, study.at(Rational(i, 12)));
      REQUIRE(target);
      met += check_points(study, output, *target);
    }
  }
  CHECK(met > 100);
  CHECK_THROWS_WITH(study.meet("thrown", parse_quantity("1 XXX")),
                    "how thrown follows from portions cannot be turned round: figures that both "
                    "follow from it are multiplied (sweep portions over the values that come into "
                    "question)");
}

TEST_CASE("costing/packs along: where a need is below zero nothing is bought, and nothing met") {
  const Costing costing = pot_costing(40);
  costing.sheet()->apply({Define{"more", "leeks.buy - 9 kg AP"},
                          Define{"more_packs", "cheapest_packs(leeks.offers, more)"},
                          Define{"more_till", "price_of(more_packs)"}});
  const Study study = shares_of(costing, "leeks.edible");
  CHECK(check_points(study, "more_till", parse_quantity("2.10 XXX")) > 0);
  CHECK(check_points(study, "more_till", parse_quantity("0 XXX")) > 0);
  CHECK_FALSE(study.figure("more_till", parse_quantity("0.9 EP/AP")));
}

TEST_CASE("costing/packs along: a need without bounds is refused") {
  const Costing costing = pot_costing(40);
  costing.sheet()->apply({Set{"trim", given(parse_quantity("0.5 EP/AP")).value},
                          Define{"leeks.buy", "leeks.need / trim"}});
  CHECK_THROWS_WITH(
      costing.sheet()->meetings("trim", "till", parse_quantity("40.95 XXX"),
                                parse_quantity("0 EP/AP"), parse_quantity("1 EP/AP"), no_pulse),
      "how till follows from trim cannot be turned round: a need grows beyond all bounds "
      "(sweep trim over the values that come into question)");
}

TEST_CASE("costing/packs along: what a figure cannot be is not swept either") {
  const Costing costing = pot_costing(40);
  costing.override_figure("leeks.edible", given(parse_quantity("0.5 EP/AP")));
  const auto sweep = [&](const char* input, const char* value) {
    return costing.sheet()->sweep(input, {parse_quantity(value)}, {"till"}, no_pulse);
  };
  CHECK_THROWS_WITH(
      sweep("leeks.edible", "1.2 EP/AP"),
      "leeks.edible cannot be 1.2 EP/AP: a share of the whole is above 0 and at most 1");
  CHECK_THROWS_WITH(sweep("portions", "0"), "portions cannot be 0: it is above 0");
  CHECK_THROWS_WITH(
      costing.sheet()->meetings("leeks.edible", "till", parse_quantity("40.95 XXX"),
                                parse_quantity("0.5 EP/AP"), parse_quantity("2 EP/AP"), no_pulse),
      "leeks.edible cannot be 2 EP/AP: a share of the whole is above 0 and at most 1 (write 2 % "
      "for "
      "a percentage)");
}

}  // namespace
}  // namespace scalepan
