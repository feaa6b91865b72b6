// The grammar of formulas: docs/formulas.md has it in full.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/formula.hpp"
#include "sheet/functions.hpp"

namespace scalepan {

/// What names in formulas mean.
class Names {
 public:
  struct Found {
    std::uint32_t cell = 0;
    ValueType type;
  };

  virtual ~Names() = default;
  [[nodiscard]] virtual std::optional<Found> find(std::string_view name) const = 0;
  /// The total of a column of rows, as `sum(lines.price)` asks for it.
  [[nodiscard]] virtual std::optional<Found> find_total(std::string_view column) const = 0;
  [[nodiscard]] virtual std::vector<std::string> nearest(std::string_view name) const = 0;
};

inline constexpr std::size_t longest_formula = 100'000;
inline constexpr std::size_t deepest_formula = 200;

/// Reads, checks dimensions and stages, and compiles; formulas of one shape share a programme.
/// Takes time in proportion to the text and never recurses. Its formulas point into the functions.
class Compiler {
 public:
  explicit Compiler(std::shared_ptr<const FunctionTable> functions);
  Compiler(Compiler&& other) noexcept;
  Compiler& operator=(Compiler&& other) noexcept;
  ~Compiler();

  [[nodiscard]] const FunctionTable& functions() const { return *functions_; }

  /// Throws, with the offset of the culprit: `formula.unreadable`, `formula.doubtful`,
  /// `formula.name`, `formula.function`, `formula.arguments`, `formula.column`, `formula.type`,
  /// `formula.dimension`, `formula.power`, `formula.deep`, `formula.long`, and the errors of
  /// numbers and units.
  [[nodiscard]] Formula compile(std::string_view text, const Names& names);

 private:
  class Shapes;

  std::shared_ptr<const FunctionTable> functions_;
  std::unique_ptr<Shapes> shapes_;
};

}  // namespace scalepan
