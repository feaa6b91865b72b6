#include "sheet/functions.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "exact/error.hpp"
#include "sheet/check.hpp"

namespace scalepan {

namespace {

constexpr std::size_t most_arguments = 1000;

/// Numbers of one dimension, and the same comes out.
ValueType one_kind(std::string_view name, std::span<const ValueType> arguments) {
  const std::string told = "\"" + std::string(name) + "\"";
  ValueType type = negated_type(arguments.front());
  for (const ValueType& other : arguments.subspan(1)) type = sum_type(told, type, other);
  return type;
}

const std::array<Function, 7> mathematics{{
    {"min", "min(a, b, ...)", "the least of them", 1, most_arguments, Operation::least, one_kind},
    {"max", "max(a, b, ...)", "the greatest of them", 1, most_arguments, Operation::greatest,
     one_kind},
    {"abs", "abs(a)", "a without its sign", 1, 1, Operation::absolute, one_kind},
    {"up_to_multiple", "up_to_multiple(a, step)", "the least multiple of the step from a on", 2, 2,
     Operation::up_to_multiple, one_kind},
    {"down_to_multiple", "down_to_multiple(a, step)", "the greatest multiple of the step up to a",
     2, 2, Operation::down_to_multiple, one_kind},
    {"nearest_multiple", "nearest_multiple(a, step)",
     "the multiple of the step nearest to a; of two, the one away from zero", 2, 2,
     Operation::nearest_multiple, one_kind},
    {sum_function, "sum(column)", "the total of a column of rows", 1, 1, Operation::load, one_kind},
}};

}  // namespace

FunctionTable::FunctionTable(std::vector<Function> more) : functions_(std::move(more)) {
  functions_.insert(functions_.end(), mathematics.begin(), mathematics.end());
  std::ranges::sort(functions_, {}, &Function::name);
}

const Function* FunctionTable::named(std::string_view name) const {
  const auto found = std::ranges::lower_bound(functions_, name, {}, &Function::name);
  return found == functions_.end() || found->name != name ? nullptr : &*found;
}

std::vector<std::string_view> FunctionTable::names() const {
  std::vector<std::string_view> names;
  for (const Function& function : functions_) names.push_back(function.name);
  return names;
}

}  // namespace scalepan
