// Cautions for Python: text, source and lines of each.
#pragma once

#include <vector>

#include "bindings/pybind.hpp"
#include "costing/caution.hpp"

namespace scalepan::bindings {

inline py::list listed(const std::vector<Caution>& cautions) {
  py::list list;
  for (const Caution& caution : cautions) {
    list.append(py::make_tuple(caution.text, caution.source, caution.lines));
  }
  return list;
}

}  // namespace scalepan::bindings
