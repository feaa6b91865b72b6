#include "sheet/functions.hpp"

#include <algorithm>
#include <array>

namespace scalepan {

namespace {

constexpr std::size_t most_arguments = 1000;

constexpr std::array<Function, 6> functions{{
    {"min", "min(a, b, ...)", 1, most_arguments, Operation::least},
    {"max", "max(a, b, ...)", 1, most_arguments, Operation::greatest},
    {"abs", "abs(a)", 1, 1, Operation::absolute},
    {"up_to_multiple", "up_to_multiple(a, step)", 2, 2, Operation::up_to_multiple},
    {"down_to_multiple", "down_to_multiple(a, step)", 2, 2, Operation::down_to_multiple},
    {"nearest_multiple", "nearest_multiple(a, step)", 2, 2, Operation::nearest_multiple},
}};

}  // namespace

const Function* function_named(std::string_view name) {
  const auto found = std::ranges::find(functions, name, &Function::name);
  return found == functions.end() ? nullptr : &*found;
}

std::vector<std::string_view> function_names() {
  std::vector<std::string_view> names;
  for (const Function& function : functions) names.push_back(function.name);
  return names;
}

}  // namespace scalepan
