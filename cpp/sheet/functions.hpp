// Functions of formulas, in the words of mathematics.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "sheet/formula.hpp"

namespace scalepan {

struct Function {
  std::string_view name;
  std::string_view shape;  // `min(a, b, ...)`
  std::size_t fewest;
  std::size_t most;
  Operation operation;
};

/// Null for a name that is none.
[[nodiscard]] const Function* function_named(std::string_view name);
[[nodiscard]] std::vector<std::string_view> function_names();

}  // namespace scalepan
