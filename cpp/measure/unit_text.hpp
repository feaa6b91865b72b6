// Units as text.
//
//   unit    = product [ "/" factor ] | "1/" factor
//   product = factor { ( " " | "*" | "·" ) factor }
//   factor  = name [ "^" [ "-" ] digits | "²" | "³" ] | "(" product ")"
//   name    = letters and "_" (two words where the table has them: "fl oz") | "%" | "[" code "]"
//
// One "/" at most, and nothing after its factor: `GBP/kg AP` could mean two things and is refused
// with the way to write it, `GBP/(kg AP)`.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "measure/unit.hpp"

namespace scalepan {

/// Reads a unit at `position` and moves past it; nothing where none starts there.
/// Throws `unit.unknown`, `unit.doubtful`, `unit.which_measures`, `unit.unreadable` or
/// `unit.power`, with the offset of the culprit.
[[nodiscard]] std::optional<Unit> read_unit(std::string_view text, std::size_t& position,
                                            Measures measures);

/// The whole text as a unit.
[[nodiscard]] Unit parse_unit(std::string_view text, Measures measures = Measures::unstated);

/// Reads one named unit as a recipe line has it (`tbsp`, `fl. oz`, `lb.`) and moves past it and
/// its full stop; nothing, and no error, where the word is no unit.
[[nodiscard]] std::optional<Unit> read_kitchen_unit(std::string_view text, std::size_t& position,
                                                    Measures measures);

}  // namespace scalepan
