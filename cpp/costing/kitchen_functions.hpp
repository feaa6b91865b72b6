// The functions of a costing's formulas, in the words of the trade.
#pragma once

#include <memory>
#include <string_view>

#include "food/fact.hpp"
#include "sheet/functions.hpp"

namespace scalepan {

/// Those, and the functions of mathematics. One table for all costings.
[[nodiscard]] std::shared_ptr<const FunctionTable> kitchen_functions();

/// The function that asks a food for such a fact.
struct FactFunction {
  FactKind kind;
  Stage to;  // of a piece weight: of the weight
  std::string_view name;
  std::string_view unit;
};

/// Null where none gives a figure of its dimension.
[[nodiscard]] const FactFunction* function_for(const Fact& fact);

}  // namespace scalepan
