#include "bindings/bind.hpp"
#include "bindings/kept.hpp"
#include "bindings/share.hpp"
#include "exact/column.hpp"
#include "exact/number_text.hpp"
#include "exact/rounding.hpp"

namespace scalepan::bindings {

namespace {

RationalColumn column_of(const py::iterable& numbers) {
  std::vector<Rational> column;
  for (const py::handle number : numbers) column.push_back(number_of(number));
  return RationalColumn::from(column);
}

std::vector<Rational> numbers_of(const RationalColumn& column) {
  std::vector<Rational> numbers;
  for (std::size_t i = 0; i < column.size(); ++i) numbers.push_back(column.at(i));
  return numbers;
}

std::unique_ptr<RationalColumn> column_from(const std::vector<Rational>& numbers) {
  return std::make_unique<RationalColumn>(RationalColumn::from(numbers));
}

void bind_column(py::module_& m) {
  py::class_<RationalColumn>(m, "NumberColumn")
      .def(py::init(&column_of), py::arg("numbers"))
      .def("__len__", &RationalColumn::size)
      .def("__getitem__",
           [](const RationalColumn& self, std::size_t place) {
             if (place >= self.size()) throw py::index_error();
             return self.at(place);
           })
      .def("sum", &RationalColumn::sum)
      .def(
          "sum_of_products",
          [](const RationalColumn& self, const RationalColumn& other) {
            return sum_of_products(self, other);
          },
          py::arg("other"));
  keep_by<RationalColumn, &numbers_of, &column_from>(m, "NumberColumn");
}

}  // namespace

void bind_exact(py::module_& m) {
  bind_column(m);
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
