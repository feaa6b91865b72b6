// Figures as a derivation shows them.
#pragma once

#include <string>

#include "measure/quantity.hpp"

namespace scalepan {

/// The exact figure, and the told one where that is easier to read.
[[nodiscard]] std::string figure_of(const Quantity& q);

}  // namespace scalepan
