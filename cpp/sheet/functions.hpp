// Functions of formulas, in the words of mathematics and the trade.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/along.hpp"
#include "sheet/instruction.hpp"
#include "sheet/value.hpp"

namespace scalepan {

struct Function {
  std::string_view name;
  std::string_view shape;  // `min(a, b, ...)`
  std::string_view told;   // what it gives, in a line
  std::size_t fewest;
  std::size_t most;
  /// `call` where it has a `run` of its own; `load` for the total of a column.
  Operation operation = Operation::call;
  /// What comes out for arguments of these types; throws `formula.type` and `formula.dimension`.
  ValueType (*type)(std::string_view name, std::span<const ValueType> arguments);
  Value (*run)(std::span<const Value> arguments) = nullptr;
  /// Where a figure it gives comes from, such as the source of a fact; may be null.
  std::string (*source)(std::span<const Value> arguments) = nullptr;
  /// What else a derivation tells beside it; may be null.
  std::vector<Why> (*parts)(std::span<const Value> arguments) = nullptr;
  /// What it gives along a stretch of an input, for arguments some of which move, numbers and
  /// things all of them; null where only single values are known. May end the stretch earlier.
  /// Throws what `run` throws where that is so all along it, and `NoForm`.
  Along (*along)(const Function& function, std::span<const Along> arguments,
                 Reach& reach) = nullptr;
};

/// What is in its brackets is the name of a column.
inline constexpr std::string_view sum_function = "sum";

/// The functions that a formula may call, by name. Those of mathematics are always among them.
class FunctionTable {
 public:
  explicit FunctionTable(std::vector<Function> more = {});

  /// Null for a name that is none.
  [[nodiscard]] const Function* named(std::string_view name) const;
  [[nodiscard]] const std::vector<Function>& all() const { return functions_; }
  [[nodiscard]] std::vector<std::string_view> names() const;

 private:
  std::vector<Function> functions_;  // by name
};

}  // namespace scalepan
