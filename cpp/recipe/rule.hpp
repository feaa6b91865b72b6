// Rules: how a line's amount follows the size of the recipe.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "exact/growth.hpp"
#include "measure/quantity.hpp"
#include "recipe/size.hpp"

namespace scalepan {

enum class RuleKind : std::uint8_t {
  in_proportion,  // the written amount times the factor
  fixed,          // the written amount, whatever the size
  whole,          // in proportion, rounded up to whole pieces
  per_portions,   // `each` for every `portions` portions, a started one counting whole
  per_load,       // `each` for every load
  tapered,        // the written amount times what the taper gives for the factor
  to_taste,       // in proportion, as an amount to buy by, not to measure
};

struct Rule {
  RuleKind kind = RuleKind::in_proportion;
  Rational each = 1;      // coherent, of a per_portions or per_load rule; 0: as written a load
  Rational portions = 1;  // of a per_portions rule
  std::optional<Ramp> taper = {};  // of a tapered rule: from factor to multiple
  std::string taper_name = {};     // `herbs`; empty for one written out
  Rational taken_up = 1;           // the share of the amount that stays in the food

  friend bool operator==(const Rule&, const Rule&) = default;
};

/// Reads `in proportion`, `fixed`, `whole`, `one per portion`, `one per 4 portions`,
/// `25 g per portion`, `one per load`, `per load` (the written amount), `tapered (2, 1.5), (4, 2)`,
/// `tapered (2, 2), then 1/2`, `tapered as herbs`, `to taste`; behind any of them, or alone,
/// `15 % taken up` or `taken out`. A bare number before `per` takes the line's own unit. A point of
/// a taper is the factor of the recipe and the multiple of the written amount that goes with it; up
/// to the written size all tapers are in proportion. Throws `rule.unreadable` with the rules there
/// are, `rule.share`, `rule.unit`, `rule.taper`, `ramp.order`, and the errors of the amount reader.
[[nodiscard]] Rule parse_rule(std::string_view text, Unit unit, Measures measures);

/// As it is written.
[[nodiscard]] std::string text_of(const Rule& rule, Unit unit);

struct RuledAmount {
  Rational exact;   // before any rounding to whole pieces or started portions
  Rational amount;  // what the rule gives
};

/// The coherent amount at a size. Throws `rule.taper_end` beyond a taper's last point.
[[nodiscard]] RuledAmount amount_by_rule(const Rule& rule, const Rational& written,
                                         const Size& size);

/// What a size that is not settled yet ties together.
struct Growing {
  Rational serves;
  std::optional<Rational> portions;  // where these stay while the factor moves
};

/// Adds the coherent amount, times `weight`, as a function of the factor; lines by the load add
/// nothing.
void add_growth(Growth& growth, const Rule& rule, const Rational& written, const Rational& weight,
                const Growing& growing);

}  // namespace scalepan
