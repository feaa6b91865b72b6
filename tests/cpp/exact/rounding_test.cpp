#include "exact/rounding.hpp"

#include <array>
#include <string>

#include "check.hpp"
#include "operands.hpp"

namespace scalepan {
namespace {

constexpr std::array<Rounding, 7> modes{Rounding::half_up, Rounding::half_down, Rounding::half_even,
                                        Rounding::up,      Rounding::down,      Rounding::ceiling,
                                        Rounding::floor};

struct Row {
  Rounding mode;
  std::array<int, 6> ties;    // of -2.5, -1.5, -0.5, 0.5, 1.5, 2.5
  std::array<int, 6> others;  // of -1.2, -0.6, -0.4, 0.4, 0.6, 1.2
};

// Worked out from the definition of each mode.
constexpr std::array<Row, 7> table{{
    {Rounding::half_up, {-3, -2, -1, 1, 2, 3}, {-1, -1, 0, 0, 1, 1}},
    {Rounding::half_down, {-2, -1, 0, 0, 1, 2}, {-1, -1, 0, 0, 1, 1}},
    {Rounding::half_even, {-2, -2, 0, 0, 2, 2}, {-1, -1, 0, 0, 1, 1}},
    {Rounding::up, {-3, -2, -1, 1, 2, 3}, {-2, -1, -1, 1, 1, 2}},
    {Rounding::down, {-2, -1, 0, 0, 1, 2}, {-1, 0, 0, 0, 0, 1}},
    {Rounding::ceiling, {-2, -1, 0, 1, 2, 3}, {-1, 0, 0, 1, 1, 2}},
    {Rounding::floor, {-3, -2, -1, 0, 1, 2}, {-2, -1, -1, 0, 0, 1}},
}};

const std::array<Rational, 6> ties{Rational(-5, 2), Rational(-3, 2), Rational(-1, 2),
                                   Rational(1, 2),  Rational(3, 2),  Rational(5, 2)};
const std::array<Rational, 6> others{Rational(-6, 5), Rational(-3, 5), Rational(-2, 5),
                                     Rational(2, 5),  Rational(3, 5),  Rational(6, 5)};

/// Each figure times `step` rounds to the tabled whole times `step`.
void check_table(const Rational& step) {
  for (const Row& row : table) {
    for (std::size_t i = 0; i < ties.size(); ++i) {
      CAPTURE(name_of(row.mode), step, ties.at(i), others.at(i));
      const Rounded tie = round_to_multiple(ties.at(i) * step, step, row.mode);
      CHECK(tie.value == row.ties.at(i) * step);
      CHECK(tie.error == (row.ties.at(i) - ties.at(i)) * step);
      const Rounded other = round_to_multiple(others.at(i) * step, step, row.mode);
      CHECK(other.value == row.others.at(i) * step);
      CHECK(other.error == (row.others.at(i) - others.at(i)) * step);
    }
  }
}

TEST_CASE("every mode rounds by its definition, whatever the step") {
  check_table(1);
  check_table(5);
  check_table(Rational(1, 4));
  check_table(Rational(1, 3));
  check_table(whole("100000000000000000000"));
  check_table(reciprocal(whole("100000000000000000000")));
}

TEST_CASE("a multiple of the step stays with no error in every mode") {
  for (const Rounding mode : modes) {
    for (const int count : {-7, -1, 0, 1, 8}) {
      const Rounded rounded = round_to_multiple(Rational(3, 8) * count, Rational(3, 8), mode);
      CHECK(rounded.value == Rational(3, 8) * count);
      CHECK(rounded.error == 0);
    }
  }
}

bool is_nearest(Rounding mode) {
  return mode == Rounding::half_up || mode == Rounding::half_down || mode == Rounding::half_even;
}

TEST_CASE("value less error is the figure, and the error is below its bound") {
  Operands operands(301);
  for (int round = 0; round < 20000 / operations_divisor; ++round) {
    const Rational x = rational_of(operands.any());
    const Rational step = abs(rational_of(operands.any()));
    if (step.is_zero()) continue;
    const Rounding mode = modes.at(operands.below(modes.size()));
    const Rounded rounded = round_to_multiple(x, step, mode);
    const Rational size = abs(rounded.error);
    const bool holds = rounded.value - rounded.error == x && (rounded.value / step).is_integer() &&
                       (is_nearest(mode) ? size * 2 <= step : size < step);
    if (!holds) FAIL(name_of(mode) << " of " << fraction_text(x) << " to " << fraction_text(step));
  }
}

TEST_CASE("directed modes err to their own side only") {
  Operands operands(302);
  for (int round = 0; round < 5000 / operations_divisor; ++round) {
    const Rational x = rational_of(operands.kitchen());
    const auto error = [&](Rounding mode) { return round_to_multiple(x, 1, mode).error.sign(); };
    const bool holds = error(Rounding::ceiling) >= 0 && error(Rounding::floor) <= 0 &&
                       error(Rounding::up) * x.sign() >= 0 && error(Rounding::down) * x.sign() <= 0;
    if (!holds) FAIL(fraction_text(x));
  }
}

TEST_CASE("rounding to places on either side of the point") {
  const auto to = [](const Rational& x, int places, Rounding mode) {
    return fraction_text(round_to_places(x, places, mode).value);
  };
  CHECK(to(Rational(1005, 1000), 2, Rounding::half_up) == "101/100");
  CHECK(to(Rational(1005, 1000), 2, Rounding::half_even) == "1");
  CHECK(to(Rational(-1, 3), 3, Rounding::half_up) == "-333/1000");
  CHECK(to(Rational(-1, 3), 3, Rounding::floor) == "-167/500");
  CHECK(to(Rational(5, 2), 0, Rounding::half_even) == "2");
  CHECK(to(1250, -2, Rounding::half_even) == "1200");
  CHECK(to(1250, -2, Rounding::half_up) == "1300");
  CHECK(to(49, -2, Rounding::half_up) == "0");
  CHECK(round_to_places(Rational(2, 3), 2, Rounding::half_up).error == Rational(1, 300));
}

TEST_CASE("rounding to significant digits") {
  const auto to = [](const Rational& x, int digits) {
    return fraction_text(round_to_digits(x, digits, Rounding::half_up).value);
  };
  CHECK(to(Rational(34567, 10000000), 2) == "7/2000");
  CHECK(to(Rational(-34567, 10000000), 2) == "-7/2000");
  CHECK(to(Rational(9995, 10), 3) == "1000");
  CHECK(to(Rational(9994, 10), 3) == "999");
  CHECK(to(1, 1) == "1");
  CHECK(to(10, 1) == "10");
  CHECK(to(Rational(1, 10), 1) == "1/10");
  CHECK(to(99, 1) == "100");
  CHECK(to(power(2, 100), 3) == "1270000000000000000000000000000");
  CHECK(to(0, 3) == "0");
  CHECK(round_to_digits(Rational(2, 3), 2, Rounding::half_up).error == Rational(1, 300));
}

TEST_CASE("the outermost places are too large, not undefined") {
  const Thrown too_large{"number.too_large",
                         "a number of more than 1048576 bits is too large to work with"};
  for (const int places : {-2147483647 - 1, -2147483647, 2147483647}) {
    CHECK(thrown_by([&] { return round_to_places(1, places, Rounding::up).value; }) == too_large);
  }
}

TEST_CASE("a mode is found by the name it is written with") {
  const std::array<std::string, 7> names{"half up", "half down", "half even", "up",
                                         "down",    "ceiling",   "floor"};
  for (std::size_t i = 0; i < modes.size(); ++i) {
    CHECK(name_of(modes.at(i)) == names.at(i));
    CHECK(rounding_named(names.at(i)) == modes.at(i));
  }
}

TEST_CASE("an unknown mode and a step not above zero are refused") {
  const std::string hint = "there are: half up, half down, half even, up, down, ceiling, floor";
  CHECK(thrown_by([] { return rounding_named("nearest"); }) ==
        Thrown{"number.rounding_mode", "no rounding is called \"nearest\"", hint});
  CHECK(thrown_by([] { return rounding_named(""); }) ==
        Thrown{"number.rounding_mode", "no rounding is called \"\"", hint});
  const Thrown step{"number.rounding_step", "the step to round to must be above zero"};
  CHECK(thrown_by([] { return round_to_multiple(1, 0, Rounding::up).value; }) == step);
  CHECK(thrown_by([] { return round_to_multiple(1, -5, Rounding::up).value; }) == step);
}

}  // namespace
}  // namespace scalepan
