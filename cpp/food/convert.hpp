// Conversion of one food's amounts between weight, volume and count, and between stages.
//
// The facts of a food make a small graph: weight, volume in a state and count of a size, each at
// a stage. Of several ways one is chosen by a fixed order: the way whose weakest layer is best
// (own before bundled before dataset), then the one with fewest facts, then by fact ids. So a new
// fact moves no conversion but those it takes part in.
#pragma once

#include <compare>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "food/catalog.hpp"
#include "food/spread.hpp"

namespace scalepan {

enum class Kind : std::uint8_t { mass, volume, count };

/// Which of the three an amount is. Throws `convert.kind` for anything else.
[[nodiscard]] Kind kind_of(Dimension dimension);
[[nodiscard]] std::string_view name_of(Kind kind);

/// What an amount is an amount of: a node of the graph.
struct Form {
  Kind kind = Kind::mass;
  Stage stage = Stage::none;
  std::string detail;  // state of a volume, size of a count; empty for the food's default

  friend auto operator<=>(const Form&, const Form&) = default;
};

struct Conversion {
  Rational factor = 1;  // coherent unit to coherent unit
  std::vector<Step> steps;
  Rational low = 1;  // the factor with every fact's spread at its worst
  Rational high = 1;

  /// The factor with the facts' spreads taken as independent of one another; see food/spread.hpp.
  [[nodiscard]] Spread root_sum_square() const;
};

/// Words of how the food is prepared (`peeled`, `roasted`). A share that holds for a preparation
/// is used where all its words are among these, and then goes before the food's plain share.
using Preparations = std::span<const std::string>;

/// The way from one form of a food to another, or nothing.
[[nodiscard]] std::optional<Conversion> find_conversion(const Catalog& catalog, const Food& food,
                                                        const Form& from, const Form& to,
                                                        Preparations preparations = {});

/// As find_conversion. Throws `convert.no_fact`, which names the missing fact, the nearest that
/// is known, and how to add it.
[[nodiscard]] Conversion conversion(const Catalog& catalog, const Food& food, const Form& from,
                                    const Form& to, Preparations preparations = {});

struct Converted {
  Quantity amount;
  Conversion how;
};

/// What is meant by a volume and by a count; empty for the food's defaults.
struct Details {
  std::string state;
  std::string size;
};

/// An amount of a food in another unit. A count is of whole pieces as purchased. An amount without
/// a stage stays at the stage it is measured at; where the facts cross stages on the way, both
/// stages must be stated (`convert.stage`).
[[nodiscard]] Converted convert(const Catalog& catalog, const Food& food, const Quantity& amount,
                                Unit to, const Details& details = {},
                                Preparations preparations = {});

}  // namespace scalepan
