// Sums of units in an amount: `1 lb 4 oz`, `1 cup plus 2 tbsp`, `1 quart(s) + 1 cup(s)`.
#pragma once

#include "recipe/measure_phrase.hpp"

namespace scalepan {

/// Adds the further parts that follow the phrase's first unit, and moves past them. `phrase` is
/// of a weight or volume. Throws `amount.doubtful` for a part that does not go on with a smaller
/// unit of the same kind, and `unit.which_measures` where it depends on the measures how many go
/// into one, with the offset.
void read_sum(Cursor& cursor, MeasurePhrase& phrase, Reading reading);

}  // namespace scalepan
