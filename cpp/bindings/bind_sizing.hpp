// Sizes as `Recipe.scale` takes them.
#pragma once

#include <memory>

#include "bindings/pybind.hpp"
#include "recipe/recipe.hpp"

namespace scalepan::bindings {

/// One of the first five, the last three with portions only; None for what is not given.
struct SizeAsked {
  py::object portions;
  py::object factor;
  py::object batch;
  py::object raw_batch;
  py::object stock;
  py::object portion_size;
  py::object spare;
  py::object serving_loss;
};

/// Throws `recipe.size` for none or two of them, and what recipe/sizing.hpp throws.
std::shared_ptr<Recipe> scaled_as_asked(const Recipe& recipe, const SizeAsked& asked);
/// (id of the limiting line, portions it would allow)
py::tuple stock_limit(const Recipe& recipe, const py::dict& stock);

}  // namespace scalepan::bindings
