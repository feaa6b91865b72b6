#include "recipe/bakers_percent.hpp"

#include <algorithm>

#include "exact/number_text.hpp"
#include "measure/amount.hpp"
#include "recipe/base_line.hpp"
#include "recipe/cursor.hpp"

namespace scalepan {

namespace {

struct Percent {
  Rational share;
  std::size_t end;  // behind the sign
};

std::optional<Percent> read_percent(std::string_view text, DecimalMark mark) {
  Cursor cursor(text);
  cursor.skip_spaces();
  std::size_t at = cursor.at();
  const auto number = read_amount_number(text, at, mark);
  if (!number) return std::nullopt;
  cursor.move_to(at);
  if (!cursor.take_sign("%")) return std::nullopt;
  return Percent{*number / Rational(100), cursor.at()};
}

/// In g, at the recipe's size.
Rational weight_of(const Recipe& recipe, const Line& line) {
  const UnitWeight unit = weight_in_batch(line, recipe.bases(), recipe.catalog());
  if (!unit) {
    fail("batch.unknown", "no fact gives the weight of " + line.id,
         "write it by weight, or add a fact of your own", line.place);
  }
  return *unit * line.amount.coherent();
}

}  // namespace

std::optional<Line> read_percent_line(const LineInput& input, Reading reading,
                                      const Quantity& flour, const Catalog& catalog) {
  const auto percent = read_percent(input.line.text, reading.decimal);
  if (!percent) return std::nullopt;
  // The line is read as if it were one of grams, as long as it is, so that places hold.
  LineInput by_weight = input;
  by_weight.line.text.replace(0, percent->end,
                              std::string("1g") + std::string(percent->end - 2, ' '));
  Line line = line_from(read_written_line(by_weight.line.text, reading, catalog), by_weight,
                        reading, catalog);
  line.text = input.line.text;
  const Unit unit = flour.unit().at(line.written.stage());
  line.written = line.written_low = line.exact = line.amount = line.amount_low =
      Quantity::of_coherent(flour.coherent() * percent->share, unit);
  return line;
}

void expect_whole_is_told(const Line& base_line, Reading reading, const Quantity& flour) {
  const auto percent = read_percent(base_line.text, reading.decimal);
  if (!percent || Cursor(base_line.text, percent->end).take_word("of")) return;
  const std::string share = exact_text(percent->share * Rational(100)) + " %";
  fail_at(0, "base.percent", share + " could be of the flour or of the " + base_line.food,
          "write \"" + share + " of the " + base_line.food +
              "\", or its weight: " + (flour * percent->share).text() + " " + base_line.food);
}

Quantity parse_flour(std::string_view text, Measures measures) {
  const Quantity flour = parse_quantity(trimmed(text), measures);
  if (flour.dimension() == dimension::mass() && flour.coherent().sign() > 0) return flour;
  fail_at(0, "recipe.flour", "\"" + excerpt(text) + "\" is no weight of flour",
          "write the weight of all flours together: flour = \"10 kg\"");
}

std::vector<BakersPercent> bakers_percents(const Recipe& recipe,
                                           const std::vector<std::string>& flours) {
  for (const std::string& id : flours) {
    if (std::ranges::find(recipe.lines(), id, &Line::id) != recipe.lines().end()) continue;
    fail("recipe.flour", "no line of the recipe is " + excerpt(id));
  }
  if (flours.empty()) {
    fail("recipe.flour", "it is not said which lines are flour",
         "name them: flours=[\"bread_flour\"]");
  }
  std::vector<BakersPercent> percents;
  Rational flour;
  for (const Line& line : recipe.lines()) {
    if (!line.measured) continue;
    percents.push_back({line.id, weight_of(recipe, line)});
    if (std::ranges::find(flours, line.id) != flours.end()) flour += percents.back().percent;
  }
  if (flour.is_zero()) {
    fail("recipe.flour", "the lines named as flour weigh nothing", "name lines with a weight");
  }
  for (BakersPercent& line : percents) line.percent = line.percent * Rational(100) / flour;
  return percents;
}

}  // namespace scalepan
