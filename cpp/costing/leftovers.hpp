// What is left after a dish is cooked: of the packs bought and of what was on hand.
#pragma once

#include <string>
#include <vector>

#include "costing/provisions.hpp"

namespace scalepan {

struct Leftover {
  std::string item;
  Quantity amount;
  Quantity value;       // money, pro rata
  bool bought = false;  // else it was on hand before
  Keeping keeping;      // of what was bought
  std::string use_by;   // of what was on hand; ISO 8601, or empty
};

/// In the order of the items; what was on hand first.
[[nodiscard]] std::vector<Leftover> leftovers(const Provisions& provisions);

}  // namespace scalepan
