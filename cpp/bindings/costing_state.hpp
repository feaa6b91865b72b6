// A costing as it was asked for.
#pragma once

#include <memory>

#include "bindings/archive_shared.hpp"
#include "costing/costing.hpp"

namespace scalepan::bindings {

/// What was changed in its sheet since is kept beside it.
struct CostingState {
  std::shared_ptr<const Recipe> recipe;
  std::shared_ptr<const PriceBook> prices;
  CostOptions options;
};

[[nodiscard]] CostingState state_of_costing(const Costing& costing);
[[nodiscard]] std::unique_ptr<Costing> costing_of(CostingState state);

}  // namespace scalepan::bindings
