#include "costing/function_arguments.hpp"

namespace scalepan {

std::vector<Value> values_at(std::span<const Along> arguments, const Rational& input) {
  std::vector<Value> values;
  for (const Along& argument : arguments) {
    if (const auto* form = std::get_if<RatioForm>(&argument)) {
      values.emplace_back(*form->at(input));
    } else {
      values.emplace_back(std::get<ThingPointer>(argument));
    }
  }
  return values;
}

}  // namespace scalepan
