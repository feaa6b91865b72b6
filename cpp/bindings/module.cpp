#include "bindings/bind.hpp"

// Before Python 3.12 pybind11 takes the lock of Python by the state of a thread, which is that of
// the main interpreter: in a sub-interpreter it would wait for ever, before it runs what is below.
#if PY_VERSION_HEX < 0x030C0000
#define SCALEPAN_MODULE core_of_main_interpreter
#else
#define SCALEPAN_MODULE _core
#endif

PYBIND11_MODULE(SCALEPAN_MODULE, m, py::mod_gil_not_used(),
                py::multiple_interpreters::per_interpreter_gil()) {
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

#if PY_VERSION_HEX < 0x030C0000
extern "C" PYBIND11_EXPORT PyObject* PyInit__core() {
  if (PyInterpreterState_Get() == PyInterpreterState_Main()) {
    return PyInit_core_of_main_interpreter();
  }
  PyErr_SetString(PyExc_ImportError,
                  "scalepan needs Python 3.12 or newer to be loaded in a sub-interpreter");
  return nullptr;
}
#endif
