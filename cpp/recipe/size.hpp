// Size: how much of a recipe is made.
#pragma once

#include "exact/rational.hpp"

namespace scalepan {

/// Portions and factor are one figure (portions = serves * factor) while a portion stays as large
/// as it is written; larger portions move the factor alone.
struct Size {
  Rational served;      // portions asked for
  Rational portions;    // portions made: those asked for, spare ones, and what serving loses
  Rational factor = 1;  // of the written amounts
  Rational loads = 1;   // pans, trays or ovens full

  friend bool operator==(const Size&, const Size&) = default;
};

}  // namespace scalepan
