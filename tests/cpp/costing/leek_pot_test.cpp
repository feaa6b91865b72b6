// The leek and barley pot for forty, every figure worked out by hand beside it. Edible share of
// leeks 44 %: USDA SR28 11246, refuse 56 %. Prices invented.
#include "costing/pot.hpp"
#include "costing/shopping.hpp"

namespace scalepan {
namespace {

const Rational pence(1, 100);

// Leeks: 5000 g EP / 0.44 = 125000/11 g; 11 x 1 kg + 1 x 500 g hold 11500 g for 24.30; used is
// 24.30 * (125000/11) / 11500 = 607500/253 pence. Barley: 2200 g of 2500 g for 4.75 is 4.18.
// Eggs: 4 x 10 for 9.20. Chickpeas: 10 tins of 240 g for 6.00.
TEST_CASE("leek pot: the four costs of forty portions") {
  const Costing costing = pot_costing(40);
  const Rational leeks_used = Rational(607500, 253) * pence;
  const Rational leeks_paid = 2430 * pence;
  CHECK(costing.cost("till").value() == 4425 * pence);
  CHECK(costing.cost("used").value() == leeks_used + (418 + 920 + 600) * pence);
  CHECK(costing.cost("thrown").value() == leeks_paid - leeks_used);
  CHECK(costing.cost("borne").value() == 4368 * pence);
  CHECK(costing.costs().closing == 57 * pence);
  CHECK(costing.unpriced().empty());
}

TEST_CASE("leek pot: a portion bears a fortieth") {
  const Costing costing = pot_costing(40);
  CHECK(costing.per_portion("borne") == q("1.092 XXX/portion"));
  CHECK(costing.per_portion("till") == q("1.10625 XXX/portion"));
}

TEST_CASE("leek pot: the shopping list") {
  using Taken = std::vector<std::pair<Rational, std::string>>;
  const std::vector<ShoppingRow> rows = shopping_list(pot_costing(40).provisions());
  REQUIRE(rows.size() == 4);
  CHECK(rows[0].item == "leeks");
  CHECK(rows[0].lines == std::vector<std::string>{"leeks"});
  CHECK(rows[0].need == q("125000/11 g AP"));
  CHECK(rows[0].packs == Taken{{11, "1 kg"}, {1, "500 g"}});
  CHECK(rows[0].price.value() == 2430 * pence);
  CHECK(rows[0].leftover == q("1500/11 g AP"));  // 11500 - 125000/11
  CHECK_FALSE(rows[0].keeping.keeps);
  CHECK(rows[1].packs == Taken{{5, "500 g"}});
  CHECK(rows[1].leftover == q("300 g AP"));
  CHECK(rows[1].keeping.keeps);
  CHECK(rows[2].packs == Taken{{4, "10"}});
  CHECK(rows[2].need == q("40 piece AP"));
  CHECK(rows[3].packs == Taken{{10, "400 g tin (240 g drained)"}});
  CHECK(rows[3].need == q("2400 g drained"));
  CHECK(rows[3].leftover == q("0 g drained"));
}

TEST_CASE("leek pot: other sizes by hand") {
  // One portion: 3125/11 g of leeks take 500 g at 1.20; barley 0.95; six eggs 1.50; a tin 0.60.
  CHECK(pot_costing(1).cost("till").value() == 425 * pence);
  // Four: 12500/11 g of leeks take 1500 g at 3.30; barley 0.95; six eggs 1.50; a tin 0.60.
  CHECK(pot_costing(4).cost("till").value() == 635 * pence);
}

TEST_CASE("leek pot: what the reader must look at") {
  CHECK(pot_costing(40).to_check() == std::vector<std::string>{"the prices name no currency"});
}

TEST_CASE("leek pot: a cost by another name is refused") {
  CHECK(
      thrown_by([] { return pot_costing(4).cost("total").value(); }) ==
      Thrown{"cost.which", "no cost is called \"total\"", "there are: till, used, thrown, borne"});
  CHECK(thrown_by([] { return pot_costing(4).per_portion("").value(); }) ==
        Thrown{"cost.which", "no cost is called \"\"", "there are: till, used, thrown, borne"});
}

}  // namespace
}  // namespace scalepan
