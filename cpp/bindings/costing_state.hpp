// A costing as it was asked for.
#pragma once

#include <memory>
#include <utility>
#include <vector>

#include "bindings/archive_shared.hpp"
#include "costing/costing.hpp"

namespace scalepan::bindings {

/// Rows of no line of the costing count for nothing where costings are compared.
struct BookOfCosting {
  std::shared_ptr<const PriceBook> whole;
  std::vector<const Offer*> of_lines = {};  // in it
};

inline void pass(Archive& archive, BookOfCosting& value) {
  if (!archive.compares()) return pass(archive, value.whole);
  std::vector<Offer> of_lines;
  for (const Offer* offer : value.of_lines) of_lines.push_back(*offer);
  auto book = std::make_shared<const PriceBook>(std::move(of_lines));
  pass(archive, book);
}

/// What was changed in its sheet since is kept beside it.
struct CostingState {
  std::shared_ptr<const Recipe> recipe;
  BookOfCosting prices;
  CostOptions options;
};

[[nodiscard]] CostingState state_of_costing(const Costing& costing);
[[nodiscard]] std::unique_ptr<Costing> costing_of(CostingState state);

}  // namespace scalepan::bindings
