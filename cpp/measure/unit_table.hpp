// The units there are, and their names.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "measure/unit.hpp"

namespace scalepan {

/// What may be named beside weights, measures, counts and times.
enum class UnitScope : std::uint8_t {
  kitchen,  // in a recipe line: no currency, no stage
  all,
};

/// The unit of that name: exact case first, then, for names of two letters and more, lower case.
/// A regional name (`cup`) needs `measures`; a symbol with its region (`cup_us`) or a UCUM code
/// in brackets (`[cup_us]`) does not. Null where the name is unknown.
/// Throws `unit.which_measures`, and `unit.doubtful` for letters that two units share.
[[nodiscard]] const NamedUnit* find_unit(std::string_view name, Measures measures,
                                         UnitScope scope = UnitScope::all);

/// The units a recipe line may mean by that name, one for each of the measures that have it; none
/// where the name is unknown. Case as in `find_unit`.
[[nodiscard]] std::span<const NamedUnit* const> units_called(std::string_view name);

/// Every name a recipe line may have for a unit.
[[nodiscard]] std::span<const std::string_view> unit_names();

/// Throws `unit.unknown` with the nearest three names.
[[noreturn]] void fail_unknown_unit(std::string_view name, std::size_t offset);

/// Units with a name within a small edit distance, nearest first, at most three: weights and
/// volumes, or times.
[[nodiscard]] std::vector<std::string> nearest_units(std::string_view name, bool times = false);

/// Whether one slip of the pen turns the name of a weight or volume, of at least so many letters,
/// into this word.
[[nodiscard]] bool misspells_unit(std::string_view word, std::size_t shortest = 2);

/// Every unit of the table, in its order, without currencies and stages.
[[nodiscard]] std::vector<const NamedUnit*> all_units();

/// The table's own unit of a symbol. For symbols known to be there.
[[nodiscard]] const NamedUnit& unit_with_symbol(std::string_view symbol);

}  // namespace scalepan
