// The functions that choose packs, and that tell what is bought.
#pragma once

#include <vector>

#include "sheet/functions.hpp"

namespace scalepan {

[[nodiscard]] std::vector<Function> packs_functions();

}  // namespace scalepan
