// Recipe lines: what a written line (written_line.hpp) means for a recipe. Its food is looked up,
// its stage told, its unit made known, its amount scaled.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exact/error.hpp"
#include "food/catalog.hpp"
#include "measure/quantity.hpp"
#include "recipe/rule.hpp"
#include "recipe/written_line.hpp"

namespace scalepan {

/// A line as the file has it: a text, and what a table may add. Empty texts add nothing.
struct LineInput {
  PlacedText line;
  PlacedText id;
  PlacedText stage;
  PlacedText state;
  PlacedText rule;
  std::string note;
  bool optional = false;
};

/// The written facts of a line never change; `exact` and `amount` follow the size of the recipe.
struct Line {
  std::string id;
  std::string text;
  Place place;
  std::string heading;  // the heading above it, or its own label

  bool measured = true;   // false: no amount is stated (`to taste`), and the quantities are zero
  Quantity written;       // with its stage; of a range, the high end
  Quantity written_low;   // equals `written` but for a range
  Rational containers;    // of `2 x 400 g tins`: 2; else 0
  std::string container;  // `tin`
  std::string noun;       // of `3 cloves garlic`: `clove`
  std::string size;       // `large`
  std::string fill;       // of a measure: `heaping`
  std::string vague;      // `a few sprigs`, where no amount is stated
  std::string hedge;      // `about`, `at least`, `at most`

  std::string food;                     // as written
  std::string food_id;                  // in the catalogue; empty where unknown
  std::string item_key;                 // lines and price rows of one key are one item
  bool near = false;                    // found by the name of a close relative
  bool several = false;                 // the one amount is of several foods
  std::string part;                     // what of it is wanted: `juice`
  std::optional<Quantity> part_of_one;  // what one piece yields of that part: 48 g EP a lemon
  std::string state;  // of a measured volume: `chopped`; empty for the food's default
  std::string preparation;
  std::vector<std::string> preparations;  // its known words
  std::string note;
  std::vector<std::string> doubts;  // for the list of what to check
  bool optional = false;
  Rule rule;

  std::optional<std::size_t> base;  // which of the recipe's bases it takes from, not a food
  bool takes_share = false;         // of one batch of the base as it is written
  std::optional<Rational> share;    // nothing: the rest, until it is settled
  std::string made_in;              // the base it belongs to; empty for a line of the dish

  Quantity exact;   // before rounding to whole pieces
  Quantity amount;  // what is needed at the recipe's size
  Quantity amount_low;

  [[nodiscard]] bool is_range() const { return !(amount_low == amount); }
  /// Measured with what it stands in, of which it is drained before use: `2 x 400 g tins chickpeas,
  /// drained`.
  [[nodiscard]] bool drained_later() const;
  /// The detail of its amount for conversions: the state of a volume, the size of a count.
  [[nodiscard]] std::string detail() const;
  /// What the part comes to at the recipe's size, where a fact tells: 96 g EP of two lemons.
  [[nodiscard]] std::optional<Quantity> part_amount() const;
  /// What a count counts, where that is not the food itself: `clove`, `tin`.
  [[nodiscard]] const std::string& counted_noun() const;
};

/// The written line as a line of a recipe; its amounts are those of the written size. Not for
/// headings and separators. Throws the errors of the rule reader, `line.no_amount`,
/// `line.second_amount`, `line.second_measure`, `line.stage`, `line.rule`, `food.ambiguous` and
/// `unit.which_measures`, each with its place.
[[nodiscard]] Line line_from(const WrittenLine& written, const LineInput& input, Reading reading,
                             const Catalog& catalog);

/// The line told to a cook, at its amount: `5 kg leeks, trimmed`, `≈ 2.333 kg flour`, `salt, to
/// taste (10 tsp allowed for)`.
[[nodiscard]] std::string told(const Line& line, const Catalog& catalog);

/// A name as an id: lower case, `_` between words.
[[nodiscard]] std::string id_of_name(std::string_view name);

}  // namespace scalepan
