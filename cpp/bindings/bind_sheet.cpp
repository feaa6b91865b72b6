#include "bindings/bind.hpp"
#include "measure/amount.hpp"
#include "sheet/sheet.hpp"

namespace scalepan::bindings {

namespace {

/// A quantity, an amount as written, a number, or yes or no.
CellValue value_of(const py::handle& given) {
  if (py::isinstance<py::bool_>(given)) return given.cast<bool>();
  if (py::isinstance<Quantity>(given)) return given.cast<Quantity>();
  if (py::isinstance<py::str>(given)) return parse_quantity(given.cast<std::string>());
  return Quantity(given.cast<Rational>());
}

}  // namespace

void bind_sheet(py::module_& m) {
  py::class_<Sheet>(m, "Sheet")
      .def(py::init<>())
      .def(
          "set",
          [](Sheet& sheet, const std::string& name, const py::object& value) {
            sheet.set(name, value_of(value));
          },
          py::arg("name"), py::arg("value"))
      .def("define", &Sheet::define, py::arg("name"), py::arg("formula"))
      .def(
          "override",
          [](Sheet& sheet, const std::string& name, const py::object& value,
             const std::string& why, const std::string& who, const std::string& when) {
            sheet.override_value(name, {value_of(value), why, who, when});
          },
          py::arg("name"), py::arg("value"), py::kw_only(), py::arg("why"), py::arg("who") = "",
          py::arg("when") = "")
      .def("release", &Sheet::release, py::arg("name"))
      .def("remove", &Sheet::remove, py::arg("name"))
      .def("value", &Sheet::value, py::arg("name"))
      .def("formula", &Sheet::formula, py::arg("name"))
      .def("why", &Sheet::why, py::arg("name"))
      .def_property_readonly("ran", &Sheet::ran)
      .def("__contains__", &Sheet::has, py::arg("name"));
}

}  // namespace scalepan::bindings
