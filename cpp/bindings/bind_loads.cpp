#include "bindings/bind.hpp"
#include "bindings/kept.hpp"
#include "measure/amount.hpp"
#include "measure/loads.hpp"

namespace scalepan::bindings {

namespace {

py::list parts_of(const Loads& loads) {
  py::list parts;
  for (const auto& [count, each] : loads.parts) parts.append(py::make_tuple(int_of(count), each));
  return parts;
}

}  // namespace

void bind_loads(py::module_& m) {
  py::class_<Loads>(m, "Loads")
      .def_readonly("capacity", &Loads::capacity)
      .def_property_readonly("parts", &parts_of)
      .def_property_readonly("count", [](const Loads& loads) { return int_of(loads.count()); })
      .def_property_readonly("full", [](const Loads& loads) { return int_of(loads.full()); })
      .def_property_readonly("each", &Loads::each)
      .def_property_readonly("short", &Loads::short_one)
      .def_property_readonly("text", &Loads::text)
      .def("in_turn", &Loads::in_turn, py::arg("time"))
      .def(
          "in_turn",
          [](const Loads& loads, const std::string& time) {
            return loads.in_turn(parse_quantity(time));
          },
          py::arg("time"))
      .def("__str__", &Loads::text)
      .def("__repr__", [](const Loads& loads) { return "<Loads " + loads.text() + ">"; });
  keep<Loads>(m, "Loads");
  m.def(
      "loads",
      [](const Quantity& total, const Quantity& capacity, bool equal) {
        return loads_of(total, capacity, equal ? LoadSplit::equal : LoadSplit::full_and_short);
      },
      py::arg("total"), py::arg("capacity"), py::arg("equal") = false);
}

}  // namespace scalepan::bindings
