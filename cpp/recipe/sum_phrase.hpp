// Amounts of two units: sums (`1 lb 4 oz`, `1 cup plus 2 tbsp`) and ranges (`1 tsp to 1 tbsp`).
#pragma once

#include "recipe/measure_phrase.hpp"

namespace scalepan {

/// Adds the further parts that follow the phrase's first unit, and moves past them. `phrase` is
/// of a weight or volume. Throws `amount.doubtful` for a part that does not go on with a smaller
/// unit of the same kind, and `unit.which_measures` where it depends on the measures how many go
/// into one, with the offset.
void read_sum(Cursor& cursor, MeasurePhrase& phrase, Reading reading);

/// Takes `to 1 c.` of `2/3 c. to 1 c.` as the phrase's high bound. Throws `amount.doubtful` where
/// the range does not rise in one kind of measure, with the offset.
bool read_second_bound(Cursor& cursor, MeasurePhrase& phrase, Reading reading,
                       std::size_t start_of_amount);

}  // namespace scalepan
