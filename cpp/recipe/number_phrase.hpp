// The number of a recipe line: in digits or words, one or a range, with what hedges it.
//
//   phrase = [ hedge ] number [ to number ] | vague
//   number = digits | words [ "and" fraction ]      3, 1 1/2, two, half a, one and a half
//   to     = "to" | "or" | "-" | "–" | "—"
//   hedge  = "about" | "at least" | "up to" | ...
//   vague  = "few" | "a few" | "some" | "a little" | ...
#pragma once

#include <optional>

#include "exact/number_text.hpp"
#include "recipe/cursor.hpp"

namespace scalepan {

/// `low` and `high` are the same for one number. Only one is there for a bound (`at least 2`),
/// none for a vague phrase (`a few`).
struct NumberPhrase {
  std::optional<Rational> low;
  std::optional<Rational> high;
  bool about = false;
  bool article = false;   // `a`, `an`
  bool hyphened = false;  // `1-3`: a range of whole numbers without spaces
  bool mixed = false;     // `1 1/2`: two numbers but for how they stand
  bool few = false;       // of a vague phrase that counts: `a few`

  [[nodiscard]] bool vague() const { return !low && !high; }
};

/// Takes `or more`, `or less` and `or so` behind a number or its unit.
void take_bound(Cursor& cursor, NumberPhrase& phrase);

/// Reads a phrase and moves past it; nothing where none starts. Throws the errors of the number
/// reader, `amount.doubtful` and `line.vague`, with an offset.
[[nodiscard]] std::optional<NumberPhrase> read_number_phrase(Cursor& cursor, DecimalMark mark);

}  // namespace scalepan
