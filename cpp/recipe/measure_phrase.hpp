// The amount of a recipe line: numbers, units, containers, sums.
//
//   amount    = phrase [ fill ] [ unit ] { [ "+" | "plus" | "and" ] number unit }
//             | count ( "x" | "-" ) size container     2 x 400 g tins, one 14-oz can
//             | count "(" size ")" container           1 (14.5-ounce) can
//             | [ count ] "#" number container         2 #10 cans
//             | size container                         200 g can, quart box
//   size      = number unit
//   fill      = "heaping" | "scant" | "level" | ...
//
// Units of a sum measure one thing and grow smaller; the sum is given in the first.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "food/catalog.hpp"
#include "measure/quantity.hpp"
#include "recipe/number_phrase.hpp"
#include "recipe/unit_words.hpp"

namespace scalepan {

/// How the texts of a file are to be read.
struct Reading {
  Measures measures = Measures::unstated;
  DecimalMark decimal = DecimalMark::point;
};

/// `400 g` of a tin. `unit` is nothing where it is not known which measures are meant.
struct WrittenSize {
  Rational number;
  std::string_view name;
  std::optional<Unit> unit;
  std::string_view text;
};

/// Whether two figures for one amount lie more than a fifth of the larger apart: no rounding of a
/// kitchen's does that.
[[nodiscard]] bool lie_apart(const Rational& a, const Rational& b);

struct MeasurePhrase {
  NumberPhrase number;  // of `unit`
  UnitKind kind = UnitKind::none;
  std::string_view unit;            // label of a unit, or a noun in the singular; empty for a count
  std::size_t unit_at = 0;          // where it is written
  std::optional<Unit> measure;      // of a weight or volume whose measures are known
  std::string_view fill;            // `heaping`
  std::string_view size;            // of what is counted: `1 inch`, `#10`
  std::optional<WrittenSize> each;  // what a container holds

  /// Takes the unit written at that offset.
  void count_in(const UnitWord& word, std::size_t at, Measures measures);
};

/// Whether a food follows the amount, so that a lone noun is the food: `12 cloves`.
enum class AmountPlace : std::uint8_t { front, behind };

/// Reads an amount and moves past it; nothing where none starts here. A unit word is taken for
/// one only where the rest of the text is not itself a food the catalogue knows.
/// Throws the errors of the number reader, `amount.doubtful`, `line.vague`, `line.no_measure`,
/// `line.two_numbers`, `line.two_units`, `line.time`, `line.price` and `unit.which_measures`,
/// each with an offset.
[[nodiscard]] std::optional<MeasurePhrase> read_measure_phrase(Cursor& cursor, Reading reading,
                                                               const Catalog& catalog,
                                                               AmountPlace place);

}  // namespace scalepan
