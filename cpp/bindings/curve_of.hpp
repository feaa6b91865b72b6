// The curve of a costing, over what Python gives as its points.
#pragma once

#include <memory>

#include "bindings/pybind.hpp"
#include "costing/curve.hpp"

namespace scalepan::bindings {

/// A range stands for its points without being gone through.
[[nodiscard]] std::shared_ptr<Curve> curve_of(const Costing& costing, const py::iterable& portions);

}  // namespace scalepan::bindings
