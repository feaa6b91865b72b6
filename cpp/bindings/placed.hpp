// Texts with places: the Python side gives (text, file, line, column).
#pragma once

#include <string>
#include <tuple>

#include "bindings/pybind.hpp"
#include "exact/error.hpp"

namespace scalepan::bindings {

using PlacedTuple = std::tuple<std::string, std::string, int, int>;

inline PlacedText placed(const PlacedTuple& given) {
  const auto& [text, file, line, column] = given;
  Place place;
  place.file = file;
  place.line = line;
  place.column = column;
  return {text, place};
}

/// The value of a key of a dict, or an empty text.
inline PlacedText placed_at(const py::dict& fields, const char* key) {
  return fields.contains(key) ? placed(fields[key].cast<PlacedTuple>()) : PlacedText{};
}

}  // namespace scalepan::bindings
