// Sums that lack what has no price.
#pragma once

#include <string>
#include <vector>

namespace scalepan::bindings {

/// What stands in front of such a sum.
inline std::string at_least(const std::vector<std::string>& unpriced) {
  return unpriced.empty() ? "" : "at least ";
}

}  // namespace scalepan::bindings
