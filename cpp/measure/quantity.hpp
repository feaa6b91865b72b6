// A quantity: an exact number of a unit.
#pragma once

#include <compare>
#include <cstddef>
#include <string>
#include <string_view>

#include "exact/rational.hpp"
#include "measure/unit.hpp"

namespace scalepan {

/// Holds its value in the coherent unit of its dimension; the unit it was written in is a hint
/// for display, outside equality and hash.
class Quantity {
 public:
  /// The plain number zero.
  Quantity() = default;
  /// `value` of `unit`.
  Quantity(const Rational& value, Unit unit);
  /// A plain number.
  explicit Quantity(const Rational& number) : coherent_(number) {}
  /// `value` in the coherent unit, to be shown in `unit`.
  static Quantity of_coherent(Rational value, Unit unit);

  /// In the unit shown.
  [[nodiscard]] Rational value() const { return coherent_ / unit_.ratio(); }
  /// In the coherent unit of the dimension.
  [[nodiscard]] const Rational& coherent() const { return coherent_; }
  [[nodiscard]] Unit unit() const { return unit_; }
  [[nodiscard]] Dimension dimension() const { return unit_.dimension(); }
  [[nodiscard]] Stage stage() const { return dimension().stage(); }

  /// The same amount shown in another unit. A unit without a stage keeps the amount's own.
  /// Throws `quantity.convert` where the dimensions differ.
  [[nodiscard]] Quantity to(Unit unit) const;
  /// The same figure said to be of a stage. Only for an amount that has none.
  [[nodiscard]] Quantity at(Stage stage) const;

  /// Throw `quantity.add` where the dimensions differ. The sum is shown in the larger unit.
  friend Quantity operator+(const Quantity& a, const Quantity& b);
  friend Quantity operator-(const Quantity& a, const Quantity& b);
  friend Quantity operator-(const Quantity& a);
  /// Shown in the coherent unit, except that a plain number keeps the other's unit.
  friend Quantity operator*(const Quantity& a, const Quantity& b);
  /// Throws `number.division_by_zero`.
  friend Quantity operator/(const Quantity& a, const Quantity& b);
  friend Quantity operator*(const Quantity& a, const Rational& b);

  /// Quantities of different dimensions are not equal.
  friend bool operator==(const Quantity& a, const Quantity& b) {
    return a.dimension() == b.dimension() && a.coherent_ == b.coherent_;
  }
  /// Throws `quantity.compare` where the dimensions differ.
  friend std::strong_ordering operator<=>(const Quantity& a, const Quantity& b);

  [[nodiscard]] std::size_t hash() const noexcept;

  /// Exact, and reads back to the same quantity: `1 1/2 cup_us`, `5 kg EP`.
  [[nodiscard]] std::string text() const;

 private:
  Rational coherent_;
  Unit unit_;
};

/// Throws `code` naming both sides, and both stages where these are what differs.
[[noreturn]] void fail_dimensions(std::string_view code, std::string_view what, const Quantity& a,
                                  const Quantity& b);

}  // namespace scalepan
