// The sheet of a costing: every figure a cell, and the same figures as the plan's.
#include "costing/costing_sheet.hpp"

#include <algorithm>

#include "costing/cell_ids.hpp"
#include "costing/costing_why.hpp"
#include "costing/curve.hpp"
#include "costing/pot.hpp"
#include "costing/shopping.hpp"
#include "measure/amount.hpp"

namespace scalepan {
namespace {

Override measured(const std::string& value, const std::string& why = "own trim, 3 cases") {
  const Quantity quantity = parse_quantity(value);
  return {{quantity_type(quantity.unit()), quantity.coherent()}, why, "", ""};
}

/// All four costs of the sheet, of the dish and of every line, against the plan's.
void check_agreement(const Costing& costing) {
  const CostingSheet& cells = costing.cells();
  for (const std::string_view which : cost_names) {
    INFO(std::string(which));
    CHECK(cells.figure(which) == costing.cost(which));
    CHECK(cells.figure("per_portion." + std::string(which)) == costing.per_portion(which));
    for (const ItemCost& item : costing.items()) {
      for (const LineCost& line : item.lines) {
        const std::string& id = costing.recipe().food_lines()[line.line].id;
        INFO(id);
        CHECK(cells.figure(id + "." + std::string(which)).value() == cost_named(line.costs, which));
        CHECK(cells.figure(id + ".need") == costing.recipe().food_lines()[line.line].amount);
        CHECK(cells.figure(id + ".buy") == line.bought_as);
        CHECK(cells.figure(id + ".leftover") == item.leftover);
      }
    }
  }
}

TEST_CASE("costing/sheet: the figures of the pot are those of its plan") {
  check_agreement(pot_costing(4));
  check_agreement(pot_costing(40));
}

// 5 kg EP at half is 10 kg AP: ten packs of 1 kg at 2.10, and nothing left of them to throw away.
TEST_CASE("costing/sheet: an override runs what depends on it, and no more") {
  const Costing costing = pot_costing(40);
  costing.override_figure("leeks.edible", measured("0.50"));
  CHECK(costing.sheet()->told("leeks.buy") == "10000 g AP");
  CHECK(costing.sheet()->told("leeks.packs") == "10 x 1 kg");
  CHECK(costing.cost("till").value() == Rational(4095, 100));
  CHECK(costing.cost("thrown").value().is_zero());
  std::vector<std::string> ran = costing.sheet()->ran();
  std::ranges::sort(ran);
  CHECK(ran == std::vector<std::string>{"borne", "leeks.borne", "leeks.buy", "leeks.leftover",
                                        "leeks.packs", "leeks.thrown", "leeks.till", "leeks.used",
                                        "per_portion.borne", "per_portion.thrown",
                                        "per_portion.till", "per_portion.used", "sum(lines.borne)",
                                        "sum(lines.thrown)", "sum(lines.till)", "sum(lines.used)",
                                        "thrown", "till", "used"});
}

struct Refused {
  std::string code;
  std::string message;
  std::string hint;

  friend bool operator==(const Refused&, const Refused&) = default;
};

template <typename Action>
Refused refused(Action action) {
  try {
    action();
  } catch (const Error& error) {
    return {error.code(), error.message(), error.hint()};
  }
  return {};
}

TEST_CASE("costing/sheet: functions refuse what they cannot take when a formula is entered") {
  const Costing costing = pot_costing(40);
  const auto refusal = [&](const std::string& formula) {
    return refused([&] { costing.sheet()->apply({Define{"x", formula}}); });
  };
  CHECK(refusal("price_of(leeks.buy)") ==
        Refused{"formula.type", "\"price_of\" needs packs, not weight AP", ""});
  CHECK(
      refusal("edible_share(leeks.packs)") ==
      Refused{"formula.type", "\"edible_share\" needs a food, not packs of weight AP in XXX", ""});
  CHECK(refusal("cheapest_packs(leeks.offers, leeks.need)") ==
        Refused{"formula.dimension",
                "\"cheapest_packs\" meets offers of weight AP in XXX and a need of weight EP",
                "bring the need to what the packs hold"});
  CHECK(refusal("cheapest_packs(leeks.offers, leeks.buy, eggs.offers)") ==
        Refused{"formula.arguments", "\"cheapest_packs\" needs a need for each offers", ""});
  CHECK(refusal("cheapest_packs(leeks.buy, leeks.buy)") ==
        Refused{"formula.type", "\"cheapest_packs\" needs offers, not weight AP", ""});
}

TEST_CASE("costing/sheet: what cannot be worked out stays in its cell as an error") {
  const Costing costing = pot_costing(40);
  const auto held = [&](const std::string& formula) {
    costing.sheet()->apply({Define{"x", formula}});
    return refused([&] { static_cast<void>(costing.sheet()->value("x")); });
  };
  CHECK(held("cheapest_packs(leeks.offers, 1 kg AP - leeks.buy)") ==
        Refused{"cost.need", "of leeks less than nothing is needed", ""});
  CHECK(held("density(leeks.food) * 1 mL") ==
        Refused{"convert.no_fact", "no density of leek is among its facts", ""});
}

TEST_CASE("costing/sheet: a need within bounds chooses no packs") {
  const Costing costing = pot_costing(40);
  const CellValue some{quantity_type(Unit()), Interval{Rational(38), Rational(42)}};
  costing.sheet()->apply({Set{"portions", some}});
  CHECK(costing.sheet()->told("leeks.need") == "4750 to 5250 g EP");
  CHECK(refused([&] { static_cast<void>(costing.sheet()->value("leeks.packs")); }) ==
        Refused{"formula.undecided",
                "\"cheapest_packs\" cannot be decided for more than one figure",
                "give one figure"});
}

TEST_CASE("costing/sheet: portions on the sheet go where a costing of so many goes") {
  const Costing four = pot_costing(4);
  for (const int portions : {1, 7, 40, 100}) {
    const CellValue value{quantity_type(Unit()), Rational(portions)};
    four.sheet()->apply({Set{"portions", value}});
    const Costing other = pot_costing(portions);
    for (const std::string_view which : cost_names) {
      CHECK(four.cost(which) == other.cost(which));
      CHECK(four.per_portion(which) == other.per_portion(which));
    }
  }
}

TEST_CASE("costing/sheet: ids that no cell can have get names of their own") {
  CellIds ids({"till"});
  CHECK(ids.name("leeks") == "leeks");
  CHECK(ids.name("crème_fraîche") == "creme_fraiche");
  CHECK(ids.name("creme_fraiche") == "creme_fraiche_2");
  CHECK(ids.name("00_flour") == "_00_flour");
  CHECK(ids.name("till") == "till_2");
  CHECK(ids.name("sum") == "sum_");
  CHECK(ids.name("cup") == "cup_");
  CHECK(ids.name("sauce.Butter") == "sauce.butter");
  CHECK(ids.name("大根") == "__");
  CHECK(ids.name("leeks") == "leeks");
}

}  // namespace
}  // namespace scalepan
