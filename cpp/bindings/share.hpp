// Shares from Python: a number, or a text with `%`.
#pragma once

#include <string>

#include "bindings/pybind.hpp"
#include "exact/text.hpp"

namespace scalepan::bindings {

inline Rational share_of(const py::handle& given) {
  if (!py::isinstance<py::str>(given)) return given.cast<Rational>();
  const auto text = given.cast<std::string>();
  const std::string_view written = trimmed(text);
  const bool percent = written.ends_with('%');
  const py::str number(
      std::string(trimmed(percent ? written.substr(0, written.size() - 1) : written)));
  const auto value = number.cast<Rational>();
  return percent ? value / Rational(100) : value;
}

}  // namespace scalepan::bindings
