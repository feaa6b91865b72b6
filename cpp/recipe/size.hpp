// Size: how much of a recipe is made.
#pragma once

#include <string>

#include "exact/rational.hpp"

namespace scalepan {

/// Portions and factor are one figure (portions = serves * factor) while a portion stays as large
/// as it is written; larger portions move the factor alone.
struct Size {
  Rational served;      // portions asked for
  Rational portions;    // portions made: those asked for, spare ones, and what serving loses
  Rational factor = 1;  // of the written amounts
  Rational loads = 1;   // pans, trays or ovens full; the batch says how many

  friend bool operator==(const Size&, const Size&) = default;
};

/// So many portions, all served, as large as they are written.
[[nodiscard]] inline Size size_of_portions(const Rational& serves, const Rational& portions) {
  return {portions, portions, portions / serves, 1};
}
[[nodiscard]] inline Size size_of_factor(const Rational& serves, const Rational& factor) {
  return size_of_portions(serves, serves * factor);
}

/// `1 portion`, `2 1/2 portions`.
[[nodiscard]] std::string portions_text(const Rational& portions);

}  // namespace scalepan
