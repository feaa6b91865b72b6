// Choices that a costing is asked about: other packs, lines, makes and spends.
#pragma once

#include <memory>

#include "bindings/pybind.hpp"
#include "costing/costing.hpp"

namespace scalepan::bindings {

using CostingClass = py::class_<Costing, std::shared_ptr<Costing>>;

/// What the choices return.
void bind_choices(py::module_& m);
/// The methods that ask for them.
void add_choices(CostingClass& costing);

}  // namespace scalepan::bindings
