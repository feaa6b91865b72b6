#include "catch.hpp"
#include "sheet/sheets.hpp"

using namespace scalepan;

namespace {

std::unique_ptr<Sheet> pantry() {
  return sheet_of({AddBlock{"lines",
                            {{"need", quantity_type(Unit::named("g"))},
                             {"rate", amount("1 GBP/kg").type},
                             {"cost", std::nullopt, "need * rate"}}},
                   AddRow{"lines", "rye", {{"need", amount("2 kg")}, {"rate", amount("3 GBP/kg")}}},
                   AddRow{"lines", "oats", {{"need", number(500)}, {"rate", amount("2 GBP/kg")}}},
                   Define{"till", "sum(lines.cost)"}});
}

std::string message_of(Sheet& sheet, const Change& change) {
  try {
    sheet.apply({change});
  } catch (const Error& error) {
    return error.what();
  }
  return "accepted";
}

}  // namespace

TEST_CASE("sheet/rows: a column's formula reads the cells of its own row, and totals add up") {
  const auto sheet = pantry();
  CHECK(sheet->told("rye.cost") == "6 GBP");
  CHECK(sheet->told("oats.cost") == "1 GBP");
  CHECK(sheet->told("till") == "7 GBP");
  CHECK(sheet->formula("rye.cost") == "rye.need * rye.rate");
}

TEST_CASE("sheet/rows: values stay in the unit they are given in, a bare number in the column's") {
  const auto sheet = pantry();
  CHECK(sheet->told("rye.need") == "2 kg");
  CHECK(sheet->told("oats.need") == "500 g");
  const auto again = empty_sheet();
  again->restore(sheet->changes());
  CHECK(again->told("rye.need") == "2 kg");
}

TEST_CASE("sheet/rows: one edit runs one row and the total, by the difference alone") {
  const auto sheet = pantry();
  sheet->apply({Set{"oats.need", amount("1 kg")}});
  CHECK(sheet->ran() == std::vector<std::string>{"oats.cost", "sum(lines.cost)", "till"});
  CHECK(sheet->told("till") == "8 GBP");
  sheet->apply({MoveRow{"lines", "oats", "rye"}});
  CHECK(sheet->ran().empty());
  CHECK(sheet->rows("lines") == std::vector<std::string>{"oats", "rye"});
}

TEST_CASE("sheet/rows: a column that nothing reads can be taken away, and comes back by undo") {
  const auto sheet = pantry();
  sheet->apply({Define{"lines.in_ounces", "need / 1 oz"}, Define{"lines.double", "2 * cost"},
                Define{"doubled", "sum(lines.double)"}});
  sheet->apply({Remove{"lines.in_ounces"}});
  CHECK_FALSE(sheet->has("rye.in_ounces"));
  CHECK(sheet->told("doubled") == "14 GBP");  // a later column, whose total goes on
  CHECK(sheet->formula("rye.double") == "2 * rye.cost");
  sheet->apply({Set{"rye.need", amount("1 kg")}});
  CHECK(sheet->told("doubled") == "8 GBP");
  CHECK(sheet->undo());
  CHECK(sheet->undo());
  CHECK(sheet->told("rye.in_ounces") == "70 24853410/45359237");  // 2000 g / 28.349523125 g
  CHECK(sheet->redo());
  CHECK_FALSE(sheet->has("rye.in_ounces"));
}

TEST_CASE("sheet/rows: a column that is read stays, and the reader is named") {
  const auto sheet = pantry();
  CHECK(message_of(*sheet, Remove{"lines.rate"}) ==
        "lines.rate is read by the column lines.cost (remove or change what reads it first)");
  CHECK(message_of(*sheet, Remove{"lines.cost"}) ==
        "sum(lines.cost) is read by till (remove or change what reads it first)");
  sheet->apply({RemoveRow{"lines", "rye"}, RemoveRow{"lines", "oats"},
                Define{"lines.share", "cost / sum(lines.cost)"}, Define{"till", "1 GBP"}});
  CHECK(message_of(*sheet, Remove{"lines.cost"}) ==
        "lines.cost is read by the column lines.share (remove or change what reads it first)");
  sheet->apply({Define{"lines.share", "need / sum(lines.need)"}});
  sheet->apply({Remove{"lines.cost"}});
  CHECK(sheet->rows("lines").empty());
}

TEST_CASE("sheet/rows: a total over rows without a value says at least, until they are mended") {
  const auto sheet = pantry();
  sheet->apply({Define{"lines.cost", "need * rate / (need / 500 g - 1)"},
                Define{"per_portion", "till / 4 portion"}});
  CHECK(sheet->told("till") == "at least 2 GBP");
  CHECK(sheet->told("per_portion") == "at least 0.5 GBP/portion");
  sheet->apply({Set{"rye.need", amount("1.5 kg")}});
  CHECK(sheet->told("till") == "at least 2.25 GBP");  // 4.50 / 2
  sheet->apply({Set{"oats.need", amount("1 kg")}});
  CHECK(sheet->told("till") == "4.25 GBP");
  sheet->apply({Set{"rye.need", amount("250 g")}, Set{"oats.need", amount("500 g")}});
  CHECK_THROWS_WITH(sheet->told("till"),
                    "sum(lines.cost): there is no sum: 1 row has no value and 1 is below zero "
                    "(mend the rows without a value)");
}

TEST_CASE("sheet/rows: what does not fit is refused, and names both sides") {
  const auto sheet = pantry();
  CHECK(
      message_of(*sheet, AddRow{"lines", "spelt", {{"need", amount("1 L")}}}) ==
      "spelt.need is weight, but the value is volume (give the same kind, or redeclare the cell)");
  CHECK(message_of(*sheet, AddRow{"lines", "spelt", {{"need", amount("1 kg")}}}) ==
        "spelt.rate is given no value (it is GBP/g)");
  CHECK(message_of(*sheet, AddRow{"lines", "rye", {{"need", amount("1 kg")}}}) ==
        "rye.need is a cell already (take another name)");
  CHECK(message_of(*sheet, AddRow{"line", "spelt", {}}) ==
        "no rows are called \"line\" (nearest: lines)");
  CHECK(message_of(*sheet, RemoveRow{"lines", "ry"}) ==
        "no row of lines is called \"ry\" (nearest: rye)");
  CHECK(message_of(*sheet, Set{"rye.cost", amount("1 GBP")}) ==
        "rye.cost has the formula rye.need * rye.rate (override it to put a measured value in its "
        "place)");
  CHECK(message_of(*sheet, Remove{"rye.need"}) ==
        "rye.need belongs to the rows lines (remove its row or its column)");
  CHECK(message_of(*sheet, Define{"rye.cost", "1 GBP"}) ==
        "rye.cost belongs to the rows lines (define lines.cost)");
  CHECK(message_of(*sheet, Define{"lines.need", "cost"}) ==
        "lines.need is given row by row (add a column with another name)");
  CHECK(message_of(*sheet, Define{"lines.cost", "need * rate + sum(lines.cost)"}) ==
        "a cell cannot depend on itself: rye.cost reads sum(lines.cost) reads rye.cost");
  CHECK(sheet->told("till") == "7 GBP");
}
