#include "exact/ramp.hpp"

#include "check.hpp"

namespace scalepan {
namespace {

Thrown refusal(std::vector<Ramp::Point> points, std::optional<Rational> further = {}) {
  return thrown_by([&] { return Ramp(std::move(points), std::move(further)); });
}

TEST_CASE("ramps: straight between the points, from (0, 0) on") {
  const Ramp ramp({{1, 1}, {2, Rational(3, 2)}, {4, 2}}, std::nullopt);
  CHECK(ramp.at(0) == Rational(0));
  CHECK(ramp.at(Rational(1, 3)) == Rational(1, 3));
  CHECK(ramp.at(1) == Rational(1));
  CHECK(ramp.at(Rational(3, 2)) == Rational(5, 4));
  CHECK(ramp.at(2) == Rational(3, 2));
  CHECK(ramp.at(3) == Rational(7, 4));
  CHECK(ramp.at(4) == Rational(2));
}

TEST_CASE("ramps: the slope just behind a point") {
  const Ramp ramp({{1, 1}, {2, Rational(3, 2)}, {4, 2}}, Rational(1, 8));
  CHECK(ramp.slope_after(0) == Rational(1));
  CHECK(ramp.slope_after(1) == Rational(1, 2));
  CHECK(ramp.slope_after(Rational(5, 2)) == Rational(1, 4));
  CHECK(ramp.slope_after(4) == Rational(1, 8));
  CHECK(ramp.slope_after(99) == Rational(1, 8));
  CHECK(Ramp({{1, 1}}, std::nullopt).slope_after(1) == Rational(0));
}

TEST_CASE("ramps: behind the last point they go on, or end") {
  const Ramp on({{2, 2}}, Rational(1, 2));
  CHECK_FALSE(on.end());
  CHECK(on.at(10) == Rational(6));
  CHECK(Ramp({{2, 2}}, Rational(0)).at(1000) == Rational(2));

  const Ramp ended({{2, Rational(3, 2)}}, std::nullopt);
  CHECK(ended.end() == Rational(2));
  CHECK(thrown_by([&] { return ended.at(Rational(201, 100)); }) ==
        Thrown{"ramp.end", "the points end at 2; 2.01 is asked for"});
  CHECK(thrown_by([&] { return on.at(-1); }) ==
        Thrown{"ramp.end", "the points end at 2; -1 is asked for"});
}

TEST_CASE("ramps: points that do not go on to the right, or fall") {
  constexpr const char* hint = "write the points from the smallest size to the largest";
  CHECK(refusal({{2, 1}, {2, 2}}) ==
        Thrown{"ramp.order",
               "the point (2, 2) does not lie to the right of (2, 1) and as high or higher", hint});
  CHECK(refusal({{2, 2}, {1, 3}}) ==
        Thrown{"ramp.order",
               "the point (1, 3) does not lie to the right of (2, 2) and as high or higher", hint});
  CHECK(refusal({{2, 2}, {3, Rational(3, 2)}}) ==
        Thrown{"ramp.order",
               "the point (3, 1.5) does not lie to the right of (2, 2) and as high or higher",
               hint});
  CHECK(refusal({{0, 0}}) ==
        Thrown{"ramp.order",
               "the point (0, 0) does not lie to the right of (0, 0) and as high or higher", hint});
  CHECK(refusal({{1, -1}}) ==
        Thrown{"ramp.order",
               "the point (1, -1) does not lie to the right of (0, 0) and as high or higher",
               hint});
  CHECK(refusal({{2, 2}}, Rational(-1, 2)) == Thrown{"ramp.order",
                                                     "behind the last point it would fall by 0.5",
                                                     "the further slope must be 0 or above"});
}

TEST_CASE("ramps: level stretches are allowed") {
  const Ramp ramp({{1, 1}, {3, 1}, {4, 2}}, Rational(0));
  CHECK(ramp.at(2) == Rational(1));
  CHECK(ramp.slope_after(1) == Rational(0));
  CHECK(ramp.at(Rational(7, 2)) == Rational(3, 2));
}

}  // namespace
}  // namespace scalepan
