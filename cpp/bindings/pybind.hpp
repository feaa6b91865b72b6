// The only place that includes pybind11: literals, and the caster between Rational and Fraction.
#pragma once

#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include "exact/rational.hpp"

namespace py = pybind11;

namespace scalepan::bindings {

/// int, Fraction, Decimal and str exactly; a float by its shortest decimal of at most 12 digits.
/// Throws `number.float` and the errors of the amount number grammar. False for other types.
bool rational_from_python(py::handle source, Rational& out);
py::object fraction_of(const Rational& x);
/// Only where `x` is whole.
py::object int_of(const Rational& x);
/// [(count, pack text)], counts as int.
py::list packs_of(const std::vector<std::pair<Rational, std::string>>& packs);

}  // namespace scalepan::bindings

namespace pybind11::detail {

template <>
struct type_caster<scalepan::Rational> {
  PYBIND11_TYPE_CASTER(scalepan::Rational, const_name("fractions.Fraction"));

  bool load(handle source, bool /*convert*/) {
    return scalepan::bindings::rational_from_python(source, value);
  }
  static handle cast(const scalepan::Rational& x, return_value_policy /*policy*/,
                     handle /*parent*/) {
    return scalepan::bindings::fraction_of(x).release();
  }
};

}  // namespace pybind11::detail
