// Rows of a yield test: one weight of one trial each, read from the fields of a file.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "exact/error.hpp"
#include "measure/quantity.hpp"

namespace scalepan {

/// What a weight of a trial is.
enum class YieldWord : std::uint8_t {
  bought,        // what was bought, with its price
  by_product,    // came off before cooking: sold, used or thrown
  loss,          // lost before cooking: in cutting, peeling, draining
  edible,        // what remains, ready to cook or to eat
  drained,       // what remains of a tin
  into_the_pan,  // what was cooked, where that is not all of the edible weight
  cooked,        // what came out
  taken_off,     // came off after cooking: bones, skin
  carving_loss,  // lost after cooking: crumbs, juice
  served,        // what was served or sold
};

/// As it is written: `bought`, `by-product`, `into the pan`, ...
[[nodiscard]] std::string_view text_of(YieldWord word);
/// The stage its weight is at: AP, EP, drained, cooked, served; none for parts and losses.
[[nodiscard]] Stage stage_of(YieldWord word);
/// Whether it is a part or a loss, of which a trial may have several.
[[nodiscard]] bool is_part(YieldWord word);

/// The same figure said to be of no stage: what is weighed on both sides of a cut.
[[nodiscard]] Quantity without_stage(const Quantity& amount);

/// A row as it stands in the file. Empty texts stand for fields that are not there.
struct YieldRow {
  PlacedText trial;
  PlacedText what;
  PlacedText part;
  PlacedText weight;
  PlacedText value;
  PlacedText use;
};

/// A row that was read.
struct WeighedRow {
  std::string trial;
  YieldWord what = YieldWord::bought;
  std::string part;                // the food, or what a part is called
  std::optional<Quantity> weight;  // at the stage of its word; nothing where it is the rest
  std::optional<Quantity> value;   // money, in all
  std::optional<Unit> per;         // the weight unit that the value was written for
  std::string use;
  Place place;
  Place value_place;
};

/// Reads one row. A weight is an amount (`3 lb 5 oz`, `750 mL`), or `rest` for a loss; a value is
/// money per unit (`5.00 USD/lb`) or in all (`150.00 USD`), and a bare `0` is none.
/// Throws the errors of the amount reader, `yield.missing`, `yield.what`, `yield.weight`,
/// `yield.stage` and `yield.value`, with their places.
[[nodiscard]] WeighedRow read_yield_row(const YieldRow& row, Measures measures);

}  // namespace scalepan
