// Sweeps and targets of a sheet.
#pragma once

#include "bindings/pybind.hpp"
#include "sheet/sheet.hpp"

namespace scalepan::bindings {

using SheetClass = py::class_<Sheet, std::shared_ptr<Sheet>>;

void bind_sweep(py::module_& m, SheetClass& sheet);

}  // namespace scalepan::bindings
