// Pieces and containers of a stated size: `400 g tin`, `#10 can`, `(14.5-ounce) can`, `4 x 150 g
// salmon fillets`, `2 cm piece`.
#pragma once

#include <cstddef>
#include <optional>

#include "recipe/measure_phrase.hpp"

namespace scalepan {

/// `400 g`, `14.5-ounce`: a number and a weight or volume. Moves past it.
[[nodiscard]] std::optional<WrittenSize> read_size(Cursor& cursor, Reading reading);

/// Moves past a unit of length, a full stop behind it, or the sign of inches.
bool take_length_unit(Cursor& cursor);

/// Moves past a hyphen that binds a number to its unit.
void take_hyphen(Cursor& cursor);

/// `#10 can`, `No. 2 can`: as many as the phrase counts, or one, of the size its maker calls so.
bool read_can_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading);

/// `quart box`, `pound package`: a container whose size lacks its number.
bool read_lone_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading);

/// A weight, a volume or a length, and the word of what has that size, if one follows.
struct SizedPiece {
  std::optional<WrittenSize> each;
  std::string_view length;
  std::optional<UnitWord> word;  // a container or a noun
  std::size_t word_at = 0;
};

/// `400 g tins`, `2-inch piece`, `5-lb.`. A word is taken only where the text from it on is not
/// itself a food the catalogue knows. Moves past it.
[[nodiscard]] std::optional<SizedPiece> read_sized_piece(Cursor& cursor, Reading reading,
                                                         const Catalog& catalog);

/// Makes the phrase count such pieces.
void count_pieces(MeasurePhrase& phrase, const SizedPiece& piece, Reading reading);

/// `(14.5-ounce) can`, `(6 ounce) salmon fillets` behind the count.
bool read_bracketed_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading,
                         const Catalog& catalog);

/// `(4 ounces)` behind the container.
void read_container_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading);

/// Whether a bracket further on repeats the size at `start`: `5 50 ounce cans (50 ounces each)`.
[[nodiscard]] bool settled_by_bracket(std::string_view text, std::size_t start, Reading reading);

}  // namespace scalepan
