// Values of cells, to and from Python.
#pragma once

#include <memory>

#include "bindings/archive.hpp"
#include "bindings/pybind.hpp"
#include "measure/quantity.hpp"
#include "sheet/content.hpp"

namespace scalepan::bindings {

/// A quantity, an amount as written, a number, yes or no, an interval or a text.
/// Throws `sheet.value` for what is none of these, and the errors of the amount reader.
CellValue cell_value_of(const py::handle& given);
/// Throws the errors of the amount reader.
Quantity quantity_from(const py::handle& given);
py::object python_of(const CellValue& value);
/// As `cell_value_of` reads it back: a text is a Text.
py::object given_of(const CellValue& value);

/// What a column holds: a unit, `plain number`, `yes or no` or `text`.
ValueType value_type_of(const std::string& text);

/// A text, a food or a recipe. Throws `pickle.thing` for offers and packs.
void pass(Archive& archive, ThingPointer& value);
void pass(Archive& archive, std::shared_ptr<const Error>& value);

void bind_interval(py::module_& m);

}  // namespace scalepan::bindings
