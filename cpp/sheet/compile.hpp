// The grammar of formulas.
//
//   formula    = choice
//   choice     = "if" choice "then" choice "else" choice | either
//   either     = both { "or" both }
//   both       = denied { "and" denied }
//   denied     = [ "not" ] compared
//   compared   = sum [ ( "<" | "<=" | ">" | ">=" | "=" | "<>" ) sum ]
//   sum        = product { ( "+" | "-" ) product }
//   product    = signed { ( "*" | "/" ) signed }
//   signed     = [ "-" ] raised
//   raised     = atom [ "^" [ "-" ] digits ]
//   atom       = literal | name | name "(" choice { "," choice } ")" | "(" choice ")" | "yes" |
//   "no"
//
// token.hpp has the words. `≤ ≥ ≠ × ÷ −` stand for `<= >= <> * / -`.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/formula.hpp"

namespace scalepan {

/// What names in formulas mean.
class Names {
 public:
  struct Found {
    std::uint32_t cell = 0;
    ValueType type;
  };

  virtual ~Names() = default;
  [[nodiscard]] virtual std::optional<Found> find(std::string_view name) const = 0;
  [[nodiscard]] virtual std::vector<std::string> nearest(std::string_view name) const = 0;
};

inline constexpr std::size_t longest_formula = 100'000;
inline constexpr std::size_t deepest_formula = 200;

/// Reads, checks dimensions and stages, and compiles. It takes time in proportion to the text and
/// never recurses.
///
/// Throws, with the offset of the culprit: `formula.unreadable`, `formula.doubtful`,
/// `formula.name`, `formula.function`, `formula.arguments`, `formula.type`, `formula.dimension`,
/// `formula.power`, `formula.deep`, `formula.long`, and the errors of numbers and units.
[[nodiscard]] Formula compile(std::string_view text, const Names& names);

}  // namespace scalepan
