// Ownership of values beyond words; the address sanitizer sees leaks and double frees here.
#include <array>
#include <string>
#include <unordered_set>
#include <utility>
#include <vector>

#include "check.hpp"

namespace scalepan {
namespace {

const char* const huge_digits = "1606938044258990275541962092341162602522202993782792835301376";
const char* const other_digits = "-515377520732011331036461129765621272702107522001";
Rational huge() { return whole(huge_digits); }
Rational other() { return whole(other_digits); }

TEST_CASE("a copy is equal and independent") {
  const Rational original = huge();
  Rational copy = original;
  CHECK(copy == original);
  copy += 1;
  CHECK(fraction_text(original) == huge_digits);
  CHECK(fraction_text(copy) == "1606938044258990275541962092341162602522202993782792835301377");
}

TEST_CASE("assignment works between every pair of forms") {
  const std::array<Rational, 3> values{Rational(3, 4), huge(), other()};
  for (const Rational& from : values) {
    for (const Rational& to : values) {
      Rational copied = to;
      copied = from;
      CHECK(copied == from);
      Rational source = from;
      Rational moved = to;
      moved = std::move(source);
      CHECK(moved == from);
    }
  }
}

TEST_CASE("a value assigned to itself stays") {
  Rational small(3, 4);
  Rational big = huge();
  Rational& same_small = small;
  Rational& same_big = big;
  small = same_small;
  big = same_big;
  CHECK(small == Rational(3, 4));
  CHECK(fraction_text(big) == huge_digits);
  small = std::move(same_small);
  big = std::move(same_big);
  CHECK(small == Rational(3, 4));
  CHECK(fraction_text(big) == huge_digits);
}

TEST_CASE("a value used on both sides of its own operation") {
  Rational x = huge();
  x -= x;
  CHECK(x == 0);
  x = huge();
  x /= x;
  CHECK(x == 1);
  x = huge();
  x += x;
  CHECK(x == 2 * huge());
}

TEST_CASE("a moved-from value can be used again") {
  Rational source = huge();
  const Rational target = std::move(source);
  CHECK(fraction_text(target) == huge_digits);
  source = Rational(5, 8);
  CHECK(source == Rational(5, 8));
}

TEST_CASE("swap exchanges values of either form") {
  Rational a = huge();
  Rational b = other();
  Rational c(1, 3);
  a.swap(b);
  CHECK(fraction_text(a) == other_digits);
  CHECK(fraction_text(b) == huge_digits);
  b.swap(c);
  CHECK(b == Rational(1, 3));
  CHECK(fraction_text(c) == huge_digits);
  c.swap(c);
  CHECK(fraction_text(c) == huge_digits);
}

TEST_CASE("containers hold values of either form") {
  std::vector<Rational> values;
  std::unordered_set<Rational> distinct;
  for (int n = 0; n < 1000; ++n) {
    values.push_back(n % 2 == 0 ? huge() + n / 4 : Rational(n / 4, 7));
    distinct.insert(values.back());
  }
  values.erase(values.begin(), values.begin() + 500);
  CHECK(values.front() == huge() + 125);
  CHECK(values.back() == Rational(249, 7));
  CHECK(distinct.size() == 500);
  CHECK(distinct.count(huge() + 249) == 1);
  CHECK(distinct.count(huge() + 250) == 0);
}

}  // namespace
}  // namespace scalepan
