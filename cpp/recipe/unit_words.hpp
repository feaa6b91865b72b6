// Words behind a number in a recipe line: units in all their spellings, what is counted, and
// vessels of no agreed size.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "measure/measures.hpp"
#include "measure/unit.hpp"
#include "recipe/cursor.hpp"

namespace scalepan {

enum class UnitKind : std::uint8_t {
  none,       // a bare number counts pieces
  measure,    // of weight or volume, or a dozen
  length,     // of a piece: `2 cm`
  time,       // no amount of food
  noun,       // what is counted: `clove`
  container,  // `tin`
  unsized,    // a vessel of no agreed size: `glass`
};

struct UnitWord {
  UnitKind kind = UnitKind::none;
  std::string_view name;          // the unit's label or the singular: `cup`, `clove`
  bool in_full_singular = false;  // `cup`, `teaspoon`: written out, and of one
  bool plural = false;
};

/// Reads a unit word, a full stop or `(s)` behind it, and moves past them: `tbsp.`, `cup(s)`,
/// `tablespoonfuls`, `fl. oz`, `tea-cup`. Nothing where the word is none. `c` is a cup, `T` a
/// tablespoon and `t` a teaspoon, as lines have them (common practice, no published source).
[[nodiscard]] std::optional<UnitWord> read_unit_word(Cursor& cursor);

/// Whether a word that looks like a unit begins a food of two words: `pound cake`.
[[nodiscard]] bool begins_compound(std::string_view word, std::string_view next);

/// The unit of a label under these measures; nothing where several differ and none is stated, or
/// where the stated measures lack it.
[[nodiscard]] std::optional<Unit> resolved_unit(std::string_view label, Measures measures);

/// How many of the smaller unit go into the larger one: under the stated measures, or where all
/// measures that have both agree. Nothing where that is open or the two measure unlike things.
[[nodiscard]] std::optional<Rational> ratio_of_units(std::string_view larger,
                                                     std::string_view smaller, Measures measures);

}  // namespace scalepan
