// Values of cells.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "exact/rational.hpp"
#include "sheet/types.hpp"

namespace scalepan {

/// A value that formulas hand on and ask, but do not compute with: a text, a food, offers, packs.
/// Never changes.
class Thing {
 public:
  virtual ~Thing() = default;
  /// For people, in one line.
  [[nodiscard]] virtual std::string text() const = 0;
  /// Two things that cannot be told apart.
  [[nodiscard]] virtual bool same_as(const Thing& other) const = 0;
};

using ThingPointer = std::shared_ptr<const Thing>;

/// What stands between quotes.
class Text final : public Thing {
 public:
  explicit Text(std::string written) : written_(std::move(written)) {}
  [[nodiscard]] std::string text() const override { return written_; }
  [[nodiscard]] bool same_as(const Thing& other) const override;

 private:
  std::string written_;
};

/// All that a figure may be. Where `high` is empty there is no upper bound: "at least".
struct Interval {
  Rational low;
  std::optional<Rational> high;

  friend bool operator==(const Interval&, const Interval&) = default;
};

/// Numbers in the coherent unit of their type; flags are 0 and 1.
using Value = std::variant<Rational, Interval, ThingPointer>;

/// Things are equal where they cannot be told apart.
[[nodiscard]] bool same_value(const Value& a, const Value& b);

/// For people, exactly: `4 kg`, `3 to 5 kg`, `at least 3 kg`, `yes`, `yes or no`, and what a thing
/// says of itself.
[[nodiscard]] std::string figure_text(const Value& value, const ValueType& type);

}  // namespace scalepan
