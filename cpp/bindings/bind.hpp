// One function a layer; module.cpp calls them in the order of the layers.
#pragma once

#include "bindings/pybind.hpp"
#include "exact/error.hpp"

namespace scalepan::bindings {

/// An error as Python would raise it.
py::object python_of(const Error& error);

void bind_errors(py::module_& m);
void bind_kept(py::module_& m);
void bind_exact(py::module_& m);
void bind_measure(py::module_& m);
void bind_loads(py::module_& m);
void bind_food(py::module_& m);
void bind_yield(py::module_& m);
void bind_packs(py::module_& m);
void bind_lines(py::module_& m);
void bind_recipe(py::module_& m);
void bind_costing(py::module_& m);
void bind_basket(py::module_& m);
void bind_curve(py::module_& m);
void bind_selling(py::module_& m);
void bind_sheet(py::module_& m);

}  // namespace scalepan::bindings
