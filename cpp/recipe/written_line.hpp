// A recipe line as it is written: what each of its words says, before anything is known of the
// recipe it stands in.
//
//   line    = [ label ":" ] [ part [ "of" ] ] amount [ "of" ] food { mark remark } [ "|" rule ]
//           | food { mark remark } gap amount                 food first, as in two columns
//           | food { mark remark }                            no amount
//           | heading | separator
//   remark  = state | second amount | part | alternative | note | "optional" | stage
//   mark    = "," | ";" | "--" | "(" ... ")"
//
// `juice of 2 lemons`, `2 x 400 g tins chickpeas, drained`, `1/2 oz. of butter or 2 small
// tablespoonfuls of chopped suet`, `Flour, unsifted      ½ cup`, `salt, to taste`.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "food/catalog.hpp"
#include "recipe/measure_phrase.hpp"

namespace scalepan {

enum class LineKind : std::uint8_t {
  ingredient,
  heading,    // `TOPPING`
  separator,  // `or` alone
};

/// A further measure of the same amount: `(8 oz)`. `measure` is nothing where it is open which
/// measures are meant.
struct SecondMeasure {
  std::string text;
  Rational low;
  Rational high;
  UnitKind kind = UnitKind::none;
  std::string unit;
  std::optional<Unit> measure;
  bool each = false;  // of one piece
};

struct WrittenLine {
  LineKind kind = LineKind::ingredient;
  std::string heading;  // its text, or the label of `To serve: lemon wedges`

  // The amount. Both bounds are the same but for a range; a bound that is open is nothing.
  std::optional<Rational> low;  // of `unit`
  std::optional<Rational> high;
  UnitKind unit_kind = UnitKind::none;
  std::string unit;  // `cup`, `clove`, `tin`, `piece`; empty where nothing is measured
  std::size_t unit_at = 0;
  std::optional<Unit> measure;  // of a weight or volume whose measures are known
  bool about = false;
  bool article = false;          // the number is `a`
  std::string vague;             // `a few sprigs`, in place of an amount
  std::string fill;              // `heaping`
  std::string size;              // `large`, `1 inch`, `#10`
  std::string each_text;         // of a container: `400 g`
  std::optional<Quantity> each;  // the same, where its measures are known
  std::vector<SecondMeasure> second_measures;

  std::vector<std::string> foods;  // as written; several share one amount
  std::size_t food_at = 0;
  std::string part;  // `juice`, `grated rind`
  std::vector<std::string> states;
  std::optional<Stage> stage;  // said outright: `AP`, `peeled weight`
  std::vector<std::string> alternatives;
  std::vector<std::string> beside;  // further foods, with amounts of their own
  std::vector<std::string> notes;
  bool to_taste = false;  // or as needed, as desired, a little
  bool optional = false;
  std::string rule;
  std::size_t rule_at = 0;

  [[nodiscard]] bool has_amount() const { return low.has_value() || high.has_value(); }
  /// `salt and pepper`: the foods as one text.
  [[nodiscard]] std::string food() const;
};

/// Reads a line. Nothing of it is dropped: what is neither amount nor food stands among its
/// states, alternatives, further foods and notes. Throws the errors of `read_measure_phrase`,
/// `expect_measurable` and `cut_segments`, and `line.empty`, `line.control_character`,
/// `line.no_food`, `line.no_amount`, `line.amount`, `line.second_measure` (two that contradict),
/// `line.vague`, `line.each` and `line.sum`. Each has its offset in the text and says what
/// was understood before it.
[[nodiscard]] WrittenLine read_written_line(std::string_view text, Reading reading,
                                            const Catalog& catalog);

}  // namespace scalepan
