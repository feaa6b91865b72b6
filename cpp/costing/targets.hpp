// Targets: what a spend allows, what it must be at least, and what drives a cost.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "costing/costing.hpp"

namespace scalepan {

/// The most whole portions within a spend.
struct WithinSpend {
  Rational portions;
  Quantity till;       // of so many
  Quantity till_next;  // of one portion more, above the spend
};

/// What so many portions take at the till, and how far the same till goes.
struct LeastSpend {
  Rational portions;
  Quantity till;
  Rational most;  // portions for the same till
  std::optional<Quantity>
      till_next;  // of one portion more than those; nothing where none takes more
};

/// A till never falls with the portions, so the search halves. Throws `cost.spend` where one
/// portion takes more, where no number of portions up to `most_portions_asked` takes so much, for
/// another currency, and where lines have no price; and what `expect_by_portions` throws.
[[nodiscard]] WithinSpend most_portions(const Costing& costing, const Quantity& spend);

inline constexpr std::int64_t most_portions_asked = 1'000'000;

/// For a whole number of portions. Where no number up to `most_portions_asked` takes more, that is
/// the most. Throws `cost.portions` unless the number is whole and from 1 to that, `cost.spend`
/// where lines have no price, and what `expect_by_portions` throws.
[[nodiscard]] LeastSpend least_spend(const Costing& costing, const Rational& portions);

/// What one item bears, and what more of it would add.
struct Driver {
  std::string item;
  std::vector<std::string> lines;  // ids
  Quantity borne;
  Rational share;      // of what the dish bears
  Quantity more_till;  // that the till takes more where the lines need so much more
  Quantity more_borne;
};

/// The priced items, the dearest first; those of one cost in the order of the recipe. `more` is a
/// share of each amount: with a tenth, 10 % more is needed. Whole packs make that another figure
/// than a tenth of the cost, which 10 % on the price would be. Throws `cost.more` unless it is
/// above zero.
[[nodiscard]] std::vector<Driver> cost_drivers(const Costing& costing, const Rational& more);

}  // namespace scalepan
