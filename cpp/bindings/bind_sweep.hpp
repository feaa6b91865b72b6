// Sweeps and targets of a sheet.
#pragma once

#include "bindings/pybind.hpp"
#include "sheet/sheet.hpp"

namespace scalepan::bindings {

void bind_sweep(py::module_& m, py::class_<Sheet>& sheet);

}  // namespace scalepan::bindings
