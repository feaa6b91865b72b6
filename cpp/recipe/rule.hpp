// Rules: how a line's amount follows the number of portions.
#pragma once

#include <string>
#include <string_view>

#include "measure/quantity.hpp"

namespace scalepan {

enum class RuleKind : std::uint8_t {
  in_proportion,  // the written amount times portions over serves
  fixed,          // the written amount, whatever the size
  whole,          // in proportion, rounded up to whole pieces
  per_portions,   // `each` for every `portions` portions, a started one counting whole
  taken_up,       // all in proportion is bought; the share `each` stays in the food
};

struct Rule {
  RuleKind kind = RuleKind::in_proportion;
  Rational each = 1;      // coherent, of a per_portions rule; a share, of a taken_up rule
  Rational portions = 1;  // of a per_portions rule

  friend bool operator==(const Rule&, const Rule&) = default;
};

/// Reads `in proportion`, `fixed`, `whole`, `one per portion`, `one per 4 portions`,
/// `25 g per portion`, `15 % taken up`. A bare number before `per` takes the line's own unit.
/// Throws `rule.unreadable` with the rules there are, and the errors of the amount reader.
[[nodiscard]] Rule parse_rule(std::string_view text, Unit unit, Measures measures);

/// As it is written.
[[nodiscard]] std::string text_of(const Rule& rule, Unit unit);

struct RuledAmount {
  Rational exact;   // before any rounding to whole pieces
  Rational amount;  // what the rule gives
};

/// The coherent amount at a size.
[[nodiscard]] RuledAmount amount_by_rule(const Rule& rule, const Rational& written,
                                         const Rational& serves, const Rational& portions);

}  // namespace scalepan
