#include "measure/quantity.hpp"

#include <functional>
#include <utility>

#include "exact/error.hpp"
#include "exact/number_text.hpp"

namespace scalepan {

namespace {

void expect_same_dimension(std::string_view code, std::string_view what, const Quantity& a,
                           const Quantity& b) {
  if (!(a.dimension() == b.dimension())) fail_dimensions(code, what, a, b);
}

Unit larger(Unit a, Unit b) { return a.ratio() < b.ratio() ? b : a; }

/// One of the two is a plain number; a percentage counts as one.
Unit unit_of_product(const Quantity& a, const Quantity& b) {
  if (b.dimension().is_number()) return a.unit();
  if (a.dimension().is_number()) return b.unit();
  return Unit::coherent(a.dimension() * b.dimension());
}

std::string stage_text(const Quantity& q) {
  const Stage stage = q.stage();
  if (stage == Stage::none) return "no stage";
  return std::string(symbol_of(stage)) + " (" + std::string(name_of(stage)) + ")";
}

std::string hint_for(const Quantity& a, const Quantity& b) {
  const bool same_kind = a.dimension().without_stages() == b.dimension().without_stages();
  if (same_kind && a.stage() != Stage::none && b.stage() != Stage::none) {
    return "a share links the stages: multiply by it one way, divide by it the other";
  }
  if (same_kind) return "state the stage of both";
  return {};
}

}  // namespace

Quantity::Quantity(const Rational& value, Unit unit)
    : coherent_(value * unit.ratio()), unit_(unit) {}

Quantity Quantity::of_coherent(Rational value, Unit unit) {
  Quantity result;
  result.coherent_ = std::move(value);
  result.unit_ = unit;
  return result;
}

Quantity Quantity::to(Unit unit) const {
  if (unit.dimension() == dimension()) return of_coherent(coherent_, unit);
  const Unit staged = unit.dimension().has_stages() ? unit : unit.at(stage());
  if (!(staged.dimension() == dimension())) {
    fail_dimensions("quantity.convert", "cannot turn", *this, Quantity(1, unit));
  }
  return of_coherent(coherent_, staged);
}

Quantity Quantity::at(Stage stage) const { return of_coherent(coherent_, unit_.at(stage)); }

Quantity operator+(const Quantity& a, const Quantity& b) {
  expect_same_dimension("quantity.add", "cannot add", a, b);
  return Quantity::of_coherent(a.coherent_ + b.coherent_, larger(a.unit_, b.unit_));
}

Quantity operator-(const Quantity& a, const Quantity& b) {
  expect_same_dimension("quantity.add", "cannot subtract", a, b);
  return Quantity::of_coherent(a.coherent_ - b.coherent_, larger(a.unit_, b.unit_));
}

Quantity operator-(const Quantity& a) { return Quantity::of_coherent(-a.coherent_, a.unit_); }

Quantity operator*(const Quantity& a, const Quantity& b) {
  return Quantity::of_coherent(a.coherent_ * b.coherent_, unit_of_product(a, b));
}

Quantity operator/(const Quantity& a, const Quantity& b) {
  const Unit unit =
      b.dimension().is_number() ? a.unit() : Unit::coherent(a.dimension() / b.dimension());
  return Quantity::of_coherent(a.coherent_ / b.coherent_, unit);
}

Quantity operator*(const Quantity& a, const Rational& b) {
  return Quantity::of_coherent(a.coherent_ * b, a.unit_);
}

std::strong_ordering operator<=>(const Quantity& a, const Quantity& b) {
  expect_same_dimension("quantity.compare", "cannot compare", a, b);
  return a.coherent_ <=> b.coherent_;
}

std::size_t Quantity::hash() const noexcept {
  const std::size_t kind = std::hash<std::string_view>{}(dimension().coherent_symbol());
  return coherent_.hash() ^ (kind << 1U);
}

std::string Quantity::text() const {
  const std::string number = exact_text(value());
  return unit_.symbol().empty() ? number : number + " " + unit_.symbol();
}

void fail_dimensions(std::string_view code, std::string_view what, const Quantity& a,
                     const Quantity& b) {
  const bool turning = code == "quantity.convert";
  const std::string unit = b.unit().symbol().empty() ? "a plain number" : b.unit().symbol();
  const std::string right = turning ? " into " + unit : " and " + b.text();
  std::string message = std::string(what) + " " + a.text() + right + ": " + a.dimension().name() +
                        " and " + b.dimension().name();
  if (a.dimension().has_stages() || b.dimension().has_stages()) {
    message += "; stages " + stage_text(a) + " and " + stage_text(b);
  }
  fail(code, std::move(message), hint_for(a, b));
}

}  // namespace scalepan
