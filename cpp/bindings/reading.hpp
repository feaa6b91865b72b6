// How the texts of a file are to be read, as the Python side names it.
#pragma once

#include <string>

#include "exact/error.hpp"
#include "recipe/measure_phrase.hpp"

namespace scalepan::bindings {

/// Throws `unit.measures` and `number.decimal` with the choices.
inline Reading reading_of(const std::string& measures, const std::string& decimal) {
  Reading reading;
  reading.measures = measures_named(measures);
  if (decimal == "comma") {
    reading.decimal = DecimalMark::comma;
  } else if (!decimal.empty() && decimal != "point") {
    fail("number.decimal", "no decimal mark is called \"" + excerpt(decimal) + "\"",
         "there are: point, comma");
  }
  return reading;
}

}  // namespace scalepan::bindings
