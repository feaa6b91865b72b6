// Containers in an amount, and what they hold: `400 g tin`, `#10 can`, `(14.5-ounce) can`.
#pragma once

#include <cstddef>
#include <optional>

#include "recipe/measure_phrase.hpp"

namespace scalepan {

/// `400 g`, `14.5-ounce`: a number and a weight or volume. Moves past it.
[[nodiscard]] std::optional<WrittenSize> read_size(Cursor& cursor, Reading reading);

/// Moves past a hyphen that binds a number to its unit.
void take_hyphen(Cursor& cursor);

/// `#10 can`, `No. 2 can`: as many as the phrase counts, or one, of the size its maker calls so.
bool read_can_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading);

/// `quart box`, `pound package`: a container whose size lacks its number.
bool read_lone_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading);

/// `(14.5-ounce) can` behind the count.
bool read_bracketed_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading);

/// `(4 ounces)` behind the container.
void read_container_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading);

/// Whether a bracket further on repeats the size at `start`: `5 50 ounce cans (50 ounces each)`.
[[nodiscard]] bool settled_by_bracket(std::string_view text, std::size_t start, Reading reading);

}  // namespace scalepan
