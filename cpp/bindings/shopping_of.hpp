// Shopping as Python has it: a list that a notebook shows as a table.
#pragma once

#include <utility>

#include "bindings/pybind.hpp"

namespace scalepan::bindings {

template <typename Rows>
py::object shopping_of(const py::object& bought_for, Rows rows) {
  return py::module_::import("scalepan.shopping").attr("Shopping")(std::move(rows), bought_for);
}

}  // namespace scalepan::bindings
