// Sizes asked for in other words than portions.
#pragma once

#include <string>
#include <vector>

#include "recipe/recipe.hpp"

namespace scalepan {

/// What must be made so that enough can be served.
struct Serving {
  Rational portions;
  Rational spare;  // portions beside those asked for
  Rational loss;   // the share of what is made that is lost on the way to the plate
};

/// (portions + spare) / (1 - loss) are made. Throws `recipe.portions`, `size.spare` and
/// `size.loss`.
[[nodiscard]] Size size_for_serving(const Recipe& recipe, const Serving& serving);

/// The batch comes to so much: a weight, or what `makes` is stated in; `before` cooking where said.
/// Throws `size.unreachable` with both neighbours where steps jump over the target, `size.target`
/// for a target of zero or below or one that no size comes to, and `batch.unknown`.
[[nodiscard]] Size size_for_batch(const Recipe& recipe, const Quantity& target,
                                  bool before = false);

/// The batch comes to at least so much: exactly, where it can, else at the next whole portions.
/// Throws what `size_for_batch` throws, but for steps that jump over the target.
[[nodiscard]] Size size_for_at_least(const Recipe& recipe, const Quantity& target);

/// So many portions of so much each; the lines by the portion keep to their number. Throws what
/// `size_for_batch` throws.
[[nodiscard]] Size size_for_portions_of(const Recipe& recipe, const Serving& serving,
                                        const Quantity& portion);

/// What there is of a food.
struct LineStock {
  PlacedText line;  // the id of the one line it is for, or the name of a food, for all of its lines
  Quantity amount;
};

struct LimitedSize {
  Size size;         // of whole portions, where there is enough for one
  std::string line;  // the one that limits it
  Rational exact;    // the portions it would allow
};

/// The most whole portions the stock allows; what is not in it is taken as enough. Throws
/// `size.stock` for a line that is not there, an amount that does not measure it, a food that bases
/// take too, or less than one portion needs.
[[nodiscard]] LimitedSize size_for_stock(const Recipe& recipe, const std::vector<LineStock>& stock);

}  // namespace scalepan
