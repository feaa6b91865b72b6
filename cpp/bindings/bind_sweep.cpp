#include "bindings/bind_sweep.hpp"

#include "bindings/archive_shared.hpp"
#include "bindings/bind.hpp"
#include "bindings/cell_value.hpp"
#include "bindings/kept.hpp"

namespace scalepan::bindings {

namespace {

/// Tells Python how far it is, and lets it end what takes long.
SweepPulse pulse_to(const py::object& progress) {
  return [progress](std::size_t done) {
    const py::gil_scoped_acquire held;
    if (PyErr_CheckSignals() != 0) throw py::error_already_set();
    if (!progress.is_none()) progress(done);
  };
}

std::vector<Quantity> quantities_of(const py::iterable& values) {
  constexpr std::size_t most_points = 1'000'000;
  std::vector<Quantity> quantities;
  for (const py::handle value : values) {
    if (quantities.size() == most_points) {
      fail("sheet.many", "a sweep has at most " + std::to_string(most_points) + " values");
    }
    quantities.push_back(quantity_from(value));
  }
  return quantities;
}

/// A quantity, a flag, an interval or a text; the error that a cell held.
py::object figure_of_point(const SweptCell& cell, std::size_t point) {
  const auto odd = cell.odd().find(point);
  if (odd == cell.odd().end()) return python_of({cell.type(), cell.number(point)});
  if (odd->second.error) return python_of(*odd->second.error);
  return python_of({cell.type(), odd->second.value});
}

py::list figures_of(const SweptCell& cell) {
  py::list list(cell.size());
  for (std::size_t i = 0; i < cell.size(); ++i) list[i] = figure_of_point(cell, i);
  return list;
}

/// In the unit shown; none at an odd point.
py::list fractions_of(const SweptCell& cell) {
  py::list list(cell.size());
  const Rational ratio = cell.type().shown.ratio();
  for (std::size_t i = 0; i < cell.size(); ++i) {
    list[i] = cell.odd().contains(i) ? py::object(py::none()) : fraction_of(cell.number(i) / ratio);
  }
  return list;
}

std::shared_ptr<WordColumn> column_of_cell(const SweptCell& cell) {
  const auto words = cell.words();
  if (words == nullptr) {
    fail("sheet.column",
         cell.odd().empty() ? cell.name() + " in its least common step does not fit 64 bits"
                            : cell.name() + " is no single number everywhere",
         "take it as a list of fractions");
  }
  auto column = std::make_shared<WordColumn>(
      WordColumn{words->step / cell.type().shown.ratio(), words->size, word_array(words->size)});
  std::copy_n(words->counts.get(), words->size, column->counts.get());
  return column;
}

struct SweptState {
  std::string name;
  ValueType type;
  std::shared_ptr<const WordColumn> words;
  std::vector<Rational> numbers;  // where there are no words
  std::map<std::size_t, OddPoint> odd;
};

SweptState state_of_cell(const SweptCell& cell) {
  SweptState state{cell.name(), cell.type(), cell.words(), {}, cell.odd()};
  for (std::size_t i = 0; state.words == nullptr && i < cell.size(); ++i) {
    state.numbers.push_back(cell.number(i));
  }
  return state;
}

std::unique_ptr<SweptCell> cell_of(SweptState state) {
  auto cell = std::make_unique<SweptCell>(std::move(state.name), state.type);
  if (state.words != nullptr) {
    cell->put_words(std::move(const_cast<WordColumn&>(*state.words)));
    return cell;
  }
  cell->resize(state.numbers.size());
  for (std::size_t i = 0; i < state.numbers.size(); ++i) cell->put_number(i, state.numbers[i]);
  for (auto& [point, odd] : state.odd) cell->put_odd(point, std::move(odd));
  return cell;
}

py::tuple python_of(const Meeting& meeting, const ValueType& type) {
  return py::make_tuple(Quantity::of_coherent(meeting.from, type.shown),
                        Quantity::of_coherent(meeting.to, type.shown), meeting.from_meets,
                        meeting.to_meets);
}

py::object python_of(const std::optional<Missed>& missed, const ValueType& input,
                     const ValueType& output) {
  if (!missed) return py::none();
  return py::make_tuple(Quantity::of_coherent(missed->input, input.shown),
                        Quantity::of_coherent(missed->figure, output.shown));
}

Aim aim_named(const std::string& name) {
  if (name == "at_most") return Aim::at_most;
  return name == "at_least" ? Aim::at_least : Aim::equal;
}

py::tuple meetings_as_python(const Sheet& sheet, const std::string& input,
                             const std::string& output, const py::object& target,
                             const py::object& low, const py::object& high,
                             const std::string& aim) {
  const Quantity wanted = quantity_from(target);
  const Quantity from = quantity_from(low);
  const Quantity to = quantity_from(high);
  Meetings meetings;
  {
    const SweepPulse pulse = pulse_to(py::none());
    const py::gil_scoped_release release;
    meetings = sheet.meetings(input, output, wanted, from, to, pulse, aim_named(aim));
  }
  const ValueType input_type = sheet.type(input);
  const ValueType output_type = sheet.type(output);
  py::list found;
  for (const Meeting& meeting : meetings.found) found.append(python_of(meeting, input_type));
  return py::make_tuple(found, python_of(meetings.below, input_type, output_type),
                        python_of(meetings.above, input_type, output_type));
}

}  // namespace

void bind_sweep(py::module_& m, SheetClass& sheet) {
  py::class_<SweptCell, std::shared_ptr<SweptCell>>(m, "SweptCell")
      .def_property_readonly("name", &SweptCell::name)
      .def_property_readonly("unit",
                             [](const SweptCell& self) { return self.type().shown.symbol(); })
      .def("__len__", &SweptCell::size)
      .def("__getitem__",
           [](const SweptCell& self, std::size_t point) {
             if (point >= self.size()) throw py::index_error();
             return figure_of_point(self, point);
           })
      .def_property_readonly("figures", &figures_of)
      .def_property_readonly("fractions", &fractions_of)
      .def_property_readonly("column", &column_of_cell);
  keep_by<SweptCell, &state_of_cell, &cell_of>(m, "SweptCell");
  sheet
      .def(
          "_sweep",
          [](const Sheet& self, const std::string& input, const py::iterable& values,
             const std::vector<std::string>& outputs, const py::object& progress) {
            const std::vector<Quantity> points = quantities_of(values);
            Sweep swept;
            {
              const SweepPulse pulse = pulse_to(progress);
              const py::gil_scoped_release release;
              swept = self.sweep(input, points, outputs, pulse);
            }
            py::list cells;
            for (SweptCell& cell : swept.cells) {
              cells.append(std::make_shared<SweptCell>(std::move(cell)));
            }
            return py::make_tuple(points, cells, swept.kernel);
          },
          py::arg("input"), py::arg("values"), py::arg("cells"), py::arg("progress"))
      .def("_meetings", &meetings_as_python, py::arg("input"), py::arg("cell"), py::arg("target"),
           py::arg("low"), py::arg("high"), py::arg("aim") = "equal");
}

}  // namespace scalepan::bindings
