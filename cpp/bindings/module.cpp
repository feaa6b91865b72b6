#include "bindings/bind.hpp"

PYBIND11_MODULE(_core, m, py::mod_gil_not_used()) {
  m.doc() = "The exact core of Scalepan.";
  m.attr("__version__") = SCALEPAN_VERSION;
  scalepan::bindings::bind_errors(m);
  scalepan::bindings::bind_kept(m);
  scalepan::bindings::bind_exact(m);
  scalepan::bindings::bind_measure(m);
  scalepan::bindings::bind_loads(m);
  scalepan::bindings::bind_food(m);
  scalepan::bindings::bind_yield(m);
  scalepan::bindings::bind_packs(m);
  scalepan::bindings::bind_lines(m);
  scalepan::bindings::bind_recipe(m);
  scalepan::bindings::bind_curve(m);
  scalepan::bindings::bind_costing(m);
  scalepan::bindings::bind_basket(m);
  scalepan::bindings::bind_selling(m);
  scalepan::bindings::bind_sheet(m);
}
