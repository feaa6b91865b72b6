#include <memory>

#include "bindings/bind.hpp"
#include "bindings/placed.hpp"
#include "bindings/reading.hpp"
#include "recipe/recipe.hpp"

namespace scalepan::bindings {

namespace {

LineInput line_input(const py::dict& fields) {
  LineInput input;
  input.line = placed_at(fields, "line");
  input.id = placed_at(fields, "id");
  input.stage = placed_at(fields, "stage");
  input.state = placed_at(fields, "state");
  input.rule = placed_at(fields, "rule");
  input.note = placed_at(fields, "note").text;
  input.optional = fields.contains("optional") && fields["optional"].cast<bool>();
  return input;
}

/// `places` holds the (text, file, line, column) of name, serves, tested_at and lines.
std::shared_ptr<Recipe> make_recipe(const py::dict& places, const Rational& serves,
                                    const std::string& measures, const std::string& decimal,
                                    const std::vector<Rational>& tested_at,
                                    const std::vector<py::dict>& lines,
                                    const std::shared_ptr<Catalog>& catalog) {
  RecipeInput input;
  input.name = placed_at(places, "name");
  input.serves = serves;
  input.serves_place = placed_at(places, "serves").place;
  input.reading = reading_of(measures, decimal);
  input.tested_at = tested_at;
  input.tested_place = placed_at(places, "tested_at").place;
  input.lines_place = placed_at(places, "lines").place;
  for (const py::dict& line : lines) input.lines.push_back(line_input(line));
  return std::make_shared<Recipe>(input, catalog);
}

/// A line together with the recipe that tells it.
struct LineView {
  std::shared_ptr<const Recipe> recipe;
  std::size_t index;

  [[nodiscard]] const Line& line() const { return recipe->lines()[index]; }
  [[nodiscard]] std::string told() const { return scalepan::told(line(), recipe->catalog()); }
  /// Nothing where the line states no amount.
  [[nodiscard]] std::optional<Quantity> measured(Quantity Line::* which) const {
    return line().measured ? std::optional(line().*which) : std::nullopt;
  }
};

void bind_line(py::module_& m) {
  using L = LineView;
  py::class_<L>(m, "Line")
      .def_property_readonly("id", [](const L& v) { return v.line().id; })
      .def_property_readonly("text", [](const L& v) { return v.line().text; })
      .def_property_readonly("food", [](const L& v) { return v.line().food; })
      .def_property_readonly("food_id",
                             [](const L& v) -> std::optional<std::string> {
                               if (v.line().food_id.empty()) return std::nullopt;
                               return v.line().food_id;
                             })
      .def_property_readonly("amount", [](const L& v) { return v.measured(&Line::amount); })
      .def_property_readonly("low", [](const L& v) { return v.measured(&Line::amount_low); })
      .def_property_readonly("exact", [](const L& v) { return v.measured(&Line::exact); })
      .def_property_readonly("written", [](const L& v) { return v.measured(&Line::written); })
      .def_property_readonly("heading", [](const L& v) { return v.line().heading; })
      .def_property_readonly("part", [](const L& v) { return v.line().part; })
      .def_property_readonly("part_amount", [](const L& v) { return v.line().part_amount(); })
      .def_property_readonly(
          "stage", [](const L& v) { return std::string(symbol_of(v.line().written.stage())); })
      .def_property_readonly("state", [](const L& v) { return v.line().state; })
      .def_property_readonly("size", [](const L& v) { return v.line().size; })
      .def_property_readonly("preparation", [](const L& v) { return v.line().preparation; })
      .def_property_readonly("note", [](const L& v) { return v.line().note; })
      .def_property_readonly("optional", [](const L& v) { return v.line().optional; })
      .def_property_readonly(
          "rule", [](const L& v) { return text_of(v.line().rule, v.line().written.unit()); })
      .def_property_readonly("told", &L::told)
      .def("__repr__", [](const L& v) { return "<Line " + v.line().id + ": " + v.told() + ">"; });
}

}  // namespace

void bind_recipe(py::module_& m) {
  bind_line(m);
  using R = std::shared_ptr<Recipe>;
  py::class_<Recipe, R>(m, "Recipe")
      .def_property_readonly("name", &Recipe::name)
      .def_property_readonly("serves", &Recipe::serves)
      .def_property_readonly("portions", &Recipe::portions)
      .def_property_readonly("measures",
                             [](const R& r) { return std::string(name_of(r->measures())); })
      .def_property_readonly("tested_at", &Recipe::tested_at)
      .def_property_readonly("tested", &Recipe::tested_text)
      .def_property_readonly("lines",
                             [](const R& r) {
                               std::vector<LineView> lines;
                               for (std::size_t i = 0; i < r->lines().size(); ++i) {
                                 lines.push_back({r, i});
                               }
                               return lines;
                             })
      .def(
          "scale",
          [](const R& r, const std::optional<Rational>& portions,
             const std::optional<Rational>& factor) {
            if (portions.has_value() == factor.has_value()) {
              fail("recipe.size", "a size is either portions or a factor",
                   "write scale(portions=40) or scale(factor=10)");
            }
            return std::make_shared<Recipe>(
                r->scaled(portions ? *portions : r->serves() * *factor));
          },
          py::kw_only(), py::arg("portions") = py::none(), py::arg("factor") = py::none())
      .def("__repr__", [](const R& r) {
        return "<Recipe " + r->name() + " for " + Quantity(r->portions()).text() + ">";
      });
  m.def("make_recipe", &make_recipe);
}

}  // namespace scalepan::bindings
