// The one table from C++ errors to Python classes: scalepan.errors picks the class by code.

#include "bindings/bind.hpp"
#include "exact/error.hpp"

namespace scalepan::bindings {

namespace {

void raise(const Error& error) {
  const py::object raised = python_of(error);
  PyErr_SetObject(py::type::handle_of(raised).ptr(), raised.ptr());
}

}  // namespace

py::object python_of(const Error& error) {
  const py::object make = py::module_::import("scalepan.errors").attr("make_error");
  const Place& place = error.place();
  return make(error.code(), error.message(), error.hint(), place.file, place.line, place.column,
              place.cell);
}

void bind_errors(py::module_& /*m*/) {
  py::register_local_exception_translator([](std::exception_ptr thrown) {
    try {
      if (thrown) std::rethrow_exception(thrown);
    } catch (const Error& error) {
      raise(error);
    }
  });
}

}  // namespace scalepan::bindings
