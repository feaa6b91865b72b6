#include "sheet/types.hpp"

namespace scalepan {

std::string ValueType::name() const {
  return kind == ValueKind::flag ? "yes or no" : dimension().name();
}

}  // namespace scalepan
