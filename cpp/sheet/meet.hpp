// The values of an input at which a cell meets a target or keeps to it, exactly and all of them.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "sheet/path.hpp"
#include "sheet/sweep.hpp"

namespace scalepan {

enum class Aim : std::uint8_t { equal, at_most, at_least };

/// One value, or all between two, of which each belongs to them or not.
struct Meeting {
  Rational from;
  Rational to;
  bool from_meets = true;
  bool to_meets = true;

  [[nodiscard]] bool is_one() const { return from == to; }
};

/// A figure beside the target, and the input it belongs to.
struct Missed {
  Rational input;
  Rational figure;
};

struct Meetings {
  std::vector<Meeting> found;   // rising
  std::optional<Missed> below;  // the nearest figures at the ends of stretches
  std::optional<Missed> above;
};

/// The most stretches that are looked through.
inline constexpr std::size_t most_stretches = 200'000;

/// Between two values of the input, both looked at too, in coherent units. Throws `sheet.no_form`
/// where the output does not follow from the input by sums, products and quotients, choices and
/// roundings, and `sheet.many` where it turns too often.
[[nodiscard]] Meetings meetings_of(Path path, const Rational& target, const Rational& low,
                                   const Rational& high, Aim aim, const SweepPulse& pulse);

}  // namespace scalepan
