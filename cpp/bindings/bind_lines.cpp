#include <memory>

#include "bindings/bind.hpp"
#include "bindings/kept.hpp"
#include "bindings/placed.hpp"
#include "bindings/reading.hpp"
#include "recipe/written_line.hpp"

namespace scalepan::bindings {

namespace {

std::string_view name_of(LineKind kind) {
  switch (kind) {
    case LineKind::heading:
      return "heading";
    case LineKind::separator:
      return "separator";
    case LineKind::ingredient:
      break;
  }
  return "ingredient";
}

std::vector<std::string> texts_of(const std::vector<SecondMeasure>& measures) {
  std::vector<std::string> texts;
  for (const SecondMeasure& measure : measures) {
    texts.push_back(measure.text + (measure.each ? " each" : ""));
  }
  return texts;
}

/// The amount as a quantity, of a range its high end; nothing without a number, and where it is
/// open which measures are meant.
std::optional<Quantity> amount_of(const WrittenLine& line) {
  const auto& bound = line.high ? line.high : line.low;
  if (!bound) return std::nullopt;
  if (line.each) return *line.each * *bound;
  if (!line.each_text.empty()) return std::nullopt;
  if (line.unit_kind != UnitKind::measure) return Quantity(*bound, Unit::named("piece"));
  return line.measure ? std::optional(Quantity(*bound, *line.measure)) : std::nullopt;
}

std::optional<std::string> stage_of(const WrittenLine& line) {
  return line.stage ? std::optional(std::string(symbol_of(*line.stage))) : std::nullopt;
}

WrittenLine read_one(const PlacedTuple& text, const std::string& measures,
                     const std::string& decimal, const std::shared_ptr<Catalog>& catalog) {
  const PlacedText line = placed(text);
  const Reading reading = reading_of(measures, decimal);
  return located(line.place, line.text,
                 [&] { return read_written_line(line.text, reading, *catalog); });
}

/// Where the text of that index begins, counted from 1.
Place place_of(std::size_t index) {
  Place place;
  place.line = static_cast<int>(index) + 1;
  place.column = 1;
  return place;
}

/// Lines that cannot be read give their error in place of a line.
py::list read_many(const std::vector<std::string>& texts, const std::string& measures,
                   const std::string& decimal, const std::shared_ptr<Catalog>& catalog,
                   const py::function& make_error) {
  const Reading reading = reading_of(measures, decimal);
  py::list results(texts.size());
  for (std::size_t i = 0; i < texts.size(); ++i) {
    try {
      results[i] = py::cast(located(
          place_of(i), texts[i], [&] { return read_written_line(texts[i], reading, *catalog); }));
    } catch (const Error& error) {
      const Place& place = error.place();
      results[i] = make_error(error.code(), error.message(), error.hint(), place.file, place.line,
                              place.column);
    }
  }
  return results;
}

}  // namespace

void bind_lines(py::module_& m) {
  using W = WrittenLine;
  py::class_<W>(m, "WrittenLine")
      .def_property_readonly("kind", [](const W& w) { return name_of(w.kind); })
      .def_readonly("heading", &W::heading)
      .def_readonly("low", &W::low)
      .def_readonly("high", &W::high)
      .def_readonly("unit", &W::unit)
      .def_property_readonly("amount", &amount_of)
      .def_readonly("about", &W::about)
      .def_readonly("vague", &W::vague)
      .def_readonly("fill", &W::fill)
      .def_readonly("size", &W::size)
      .def_readonly("container_size", &W::each_text)
      .def_property_readonly("second_measures",
                             [](const W& w) { return texts_of(w.second_measures); })
      .def_property_readonly("food", &W::food)
      .def_readonly("foods", &W::foods)
      .def_readonly("part", &W::part)
      .def_readonly("states", &W::states)
      .def_property_readonly("stage", &stage_of)
      .def_readonly("alternatives", &W::alternatives)
      .def_readonly("beside", &W::beside)
      .def_readonly("notes", &W::notes)
      .def_readonly("to_taste", &W::to_taste)
      .def_readonly("optional", &W::optional)
      .def_readonly("rule", &W::rule);
  keep<W>(m, "WrittenLine");
  m.def("read_line", &read_one, py::arg("text"), py::arg("measures"), py::arg("decimal"),
        py::arg("catalog"));
  m.def("read_lines", &read_many, py::arg("texts"), py::arg("measures"), py::arg("decimal"),
        py::arg("catalog"), py::arg("make_error"));
}

}  // namespace scalepan::bindings
