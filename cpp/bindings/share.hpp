// Numbers and shares from Python.
#pragma once

#include <string>

#include "bindings/pybind.hpp"
#include "exact/error.hpp"
#include "exact/text.hpp"

namespace scalepan::bindings {

/// Throws `argument.kind` for what is no number.
inline Rational number_of(const py::handle& given) {
  py::detail::make_caster<Rational> number;
  if (number.load(given, true)) return py::detail::cast_op<Rational>(number);
  fail("argument.kind",
       "an amount is a text, a number or a quantity, not " +
           std::string(py::str(py::type::handle_of(given).attr("__name__"))),
       "write 40, or with a unit \"1 1/2 kg\"");
}

/// A number, or a text with `%`.
inline Rational share_of(const py::handle& given) {
  if (!py::isinstance<py::str>(given)) return number_of(given);
  const auto text = given.cast<std::string>();
  const std::string_view written = trimmed(text);
  const bool percent = written.ends_with('%');
  const py::str number(
      std::string(trimmed(percent ? written.substr(0, written.size() - 1) : written)));
  const auto value = number.cast<Rational>();
  return percent ? value / Rational(100) : value;
}

}  // namespace scalepan::bindings
