#include "bindings/bind.hpp"
#include "exact/number_text.hpp"
#include "exact/rounding.hpp"

namespace scalepan::bindings {

void bind_exact(py::module_& m) {
  m.def("parse_amount_number", &parse_amount_number, py::arg("text"));
  m.def("parse_formula_number", &parse_formula_number, py::arg("text"));
  m.def("number", [](const Rational& x) { return x; }, py::arg("x"));
  m.def("exact_text", &exact_text, py::arg("x"));
  m.def("mixed_text", &mixed_text, py::arg("x"));
  m.def("fixed_text", &fixed_text, py::arg("x"), py::arg("places"));
  m.def(
      "round_to_multiple",
      [](const Rational& x, const Rational& step, const std::string& mode) {
        const Rounded rounded = round_to_multiple(x, step, rounding_named(mode));
        return std::pair(rounded.value, rounded.error);
      },
      py::arg("x"), py::arg("step"), py::arg("mode"));
}

}  // namespace scalepan::bindings
