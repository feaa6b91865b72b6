#include <random>

#include "catch.hpp"
#include "sheet/sheets.hpp"

using namespace scalepan;

namespace {

std::vector<Quantity> numbers(int first, int last) {
  std::vector<Quantity> values;
  for (int i = first; i <= last; ++i) values.emplace_back(Rational(i));
  return values;
}

/// Each point again by setting the input and reading the cell.
std::vector<Rational> one_by_one(Sheet& sheet, const std::string& input,
                                 const std::vector<Quantity>& values, const std::string& output) {
  std::vector<Rational> figures;
  for (const Quantity& value : values) {
    sheet.apply({Set{input, number(value.value())}});
    figures.push_back(number_in(sheet, output));
  }
  return figures;
}

std::vector<Rational> figures_of(const SweptCell& cell) {
  std::vector<Rational> figures;
  for (std::size_t i = 0; i < cell.size(); ++i) figures.push_back(cell.number(i));
  return figures;
}

std::string random_formula(std::mt19937& random) {
  const auto draw = [&](int from, int to) {
    return std::to_string(std::uniform_int_distribution<int>(from, to)(random));
  };
  switch (std::uniform_int_distribution<int>(0, 6)(random)) {
    case 0:
      return draw(-9, 9) + " * n + " + draw(-9, 9) + "/" + draw(1, 9);
    case 1:
      return "up_to_multiple(n * " + draw(-9, 9) + " / " + draw(1, 9) + " - " + draw(0, 20) + ", " +
             draw(1, 9) + ")";
    case 2:
      return "down_to_multiple(" + draw(0, 50) + " - n / " + draw(1, 9) + ", 1 / " + draw(1, 9) +
             ")";
    case 3:
      return "nearest_multiple(n * " + draw(1, 9) + " / 7, " + draw(1, 5) + ") * -" + draw(1, 9);
    case 4:
      return "3 * up_to_multiple(n / " + draw(1, 9) + ", 2) + down_to_multiple(n, " + draw(1, 9) +
             ") / 5";
    case 5:
      return "-(n - " + draw(0, 9) + ") / " + draw(1, 9);
    default:
      return "max(n, " + draw(0, 40) + ") + abs(n - " + draw(0, 40) + ")";
  }
}

}  // namespace

TEST_CASE("sheet/sweep: words and points agree with setting the input one by one") {
  std::mt19937 random(11);
  int in_words = 0;
  for (int i = 0; i < 300; ++i) {
    const auto sheet =
        sheet_of({Set{"n", number(1)}, Define{"first", random_formula(random)},
                  Define{"other", random_formula(random)}, Define{"both", "first - 2 * other"}});
    const std::vector<Quantity> values = numbers(-7, 60);
    const Sweep swept = sheet->sweep("n", values, {"first", "both"}, no_pulse);
    in_words += static_cast<int>(swept.kernel == "in machine words");
    CHECK(figures_of(swept.cells[0]) == one_by_one(*sheet, "n", values, "first"));
    CHECK(figures_of(swept.cells[1]) == one_by_one(*sheet, "n", values, "both"));
    const auto words = swept.cells[1].words();
    REQUIRE(words);
    for (std::size_t k = 0; k < words->size; ++k) {
      CHECK(words->counts[k] * words->step == swept.cells[1].number(k));
    }
  }
  CHECK(in_words > 100);
  CHECK(in_words < 300);
}

TEST_CASE("sheet/sweep: a failing point holds its error, and the sheet stays as it is") {
  const auto sheet = sheet_of({Set{"n", number(1)}, Define{"share", "12 / n"}});
  const Sweep swept = sheet->sweep("n", numbers(-1, 1), {"share"}, no_pulse);
  CHECK(swept.kernel == "point by point: what is divided by moves");
  REQUIRE(swept.cells[0].odd().size() == 1);
  CHECK(std::string(swept.cells[0].odd().at(1).error->what()) == "share:4: division by zero");
  CHECK(swept.cells[0].number(0) == Rational(-12));
  CHECK(swept.cells[0].number(2) == Rational(12));
  CHECK(swept.cells[0].words() == nullptr);
  CHECK(number_in(*sheet, "share") == Rational(12));
}

TEST_CASE("sheet/sweep: rows and their totals follow the input") {
  const ValueType plain = quantity_type(Unit());
  const auto sheet = sheet_of(
      {Set{"n", number(4)},
       AddBlock{"lines", {{"each", plain}, {"packs", std::nullopt, "up_to_multiple(each * n, 3)"}}},
       AddRow{"lines", "rye", {{"each", number(2)}}},
       AddRow{"lines", "oats", {{"each", number(5)}}}, Define{"all", "sum(lines.packs)"}});
  const Sweep swept = sheet->sweep("n", numbers(1, 4), {"all", "rye.packs"}, no_pulse);
  // ceil(2n/3)*3 + ceil(5n/3)*3 by hand
  CHECK(figures_of(swept.cells[0]) == std::vector<Rational>{9, 18, 21, 30});
  CHECK(figures_of(swept.cells[1]) == std::vector<Rational>{3, 6, 6, 9});
}

TEST_CASE("sheet/sweep: figures beyond machine words are worked out point by point") {
  const auto sheet =
      sheet_of({Set{"n", number(1)}, Define{"large", "n * 9000000000000000000 * 9"}});
  const Sweep swept = sheet->sweep("n", numbers(1, 3), {"large"}, no_pulse);
  CHECK(swept.kernel == "in machine words");  // of a step that large
  const auto mixed = sheet_of(
      {Set{"n", number(1)}, Define{"large", "n * 9000000000000000000 * 9 + up_to_multiple(n, 7)"}});
  CHECK(mixed->sweep("n", numbers(1, 3), {"large"}, no_pulse).kernel ==
        "point by point: its figures do not fit 64-bit words");
}
