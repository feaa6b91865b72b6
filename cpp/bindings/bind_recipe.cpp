#include <memory>
#include <tuple>
#include <utility>

#include "bindings/archive_shared.hpp"
#include "bindings/bind.hpp"
#include "bindings/bind_sizing.hpp"
#include "bindings/kept.hpp"
#include "bindings/placed.hpp"
#include "bindings/reading.hpp"
#include "recipe/bakers_percent.hpp"
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

std::vector<PlacedText> placed_all(const py::dict& fields, const char* key) {
  std::vector<PlacedText> texts;
  if (!fields.contains(key)) return texts;
  for (const PlacedTuple& text : fields[key].cast<std::vector<PlacedTuple>>()) {
    texts.push_back(placed(text));
  }
  return texts;
}

StepInput step_input(const py::dict& fields) {
  return {placed_at(fields, "text"), placed_all(fields, "uses"), placed_at(fields, "at"),
          placed_at(fields, "time"),
          fields.contains("each_load") && fields["each_load"].cast<bool>()};
}

using BaseFields = std::tuple<std::string, std::shared_ptr<Recipe>, PlacedTuple>;

/// `places` holds the (text, file, line, column) of name, serves, tested_at, lines, and of the
/// optional makes, loss, load, tray, rounding and flour; `file` its name and text.
std::shared_ptr<Recipe> make_recipe(const py::dict& places, const Rational& serves,
                                    const std::string& measures, const std::string& decimal,
                                    const std::vector<Rational>& tested_at, const Rational& trays,
                                    const std::vector<py::dict>& lines,
                                    const std::vector<BaseFields>& bases,
                                    const std::vector<py::dict>& steps,
                                    const std::optional<std::pair<std::string, std::string>>& file,
                                    const std::shared_ptr<Catalog>& catalog) {
  RecipeInput input;
  if (file) input.file = std::make_shared<const RecipeFile>(file->first, file->second);
  input.name = placed_at(places, "name");
  input.serves = serves;
  input.serves_place = placed_at(places, "serves").place;
  input.reading = reading_of(measures, decimal);
  input.tested_at = tested_at;
  input.tested_place = placed_at(places, "tested_at").place;
  input.lines_place = placed_at(places, "lines").place;
  input.tray = placed_at(places, "tray").text;
  input.rounding = placed_at(places, "rounding");
  input.flour = placed_at(places, "flour");
  input.batch = {placed_at(places, "makes"), placed_at(places, "loss"), placed_at(places, "load"),
                 trays};
  for (const py::dict& line : lines) input.lines.push_back(line_input(line));
  for (const py::dict& step : steps) input.steps.push_back(step_input(step));
  for (const auto& [name, recipe, place] : bases) {
    input.bases.push_back({name, recipe, placed(place).place});
  }
  return std::make_shared<Recipe>(std::move(input), catalog);
}

/// A line together with the recipe that tells it.
struct LineView {
  std::shared_ptr<const Recipe> recipe;
  std::shared_ptr<const Line> own;

  [[nodiscard]] const Line& line() const { return *own; }
  [[nodiscard]] std::string told() const { return scalepan::told(line(), recipe->catalog()); }
  /// Nothing where the line states no amount.
  [[nodiscard]] std::optional<Quantity> measured(Quantity Line::* which) const {
    return line().measured ? std::optional(line().*which) : std::nullopt;
  }
};

using LinesOf = const std::vector<Line>& (Recipe::*)() const;

std::vector<LineView> views(const std::shared_ptr<const Recipe>& recipe, LinesOf lines) {
  std::vector<LineView> seen;
  for (const Line& line : ((*recipe).*lines)()) seen.push_back({recipe, {recipe, &line}});
  return seen;
}

/// A step together with the recipe that tells it.
struct StepView {
  std::shared_ptr<const Recipe> recipe;
  const MethodStep* step;

  /// Each line at the amount that the step takes of it.
  [[nodiscard]] std::vector<LineView> uses() const {
    std::vector<LineView> lines;
    for (const StepUse& use : step->uses) {
      lines.push_back({recipe, std::make_shared<const Line>(
                                   part_of_line(recipe->lines()[use.line], use.share))});
    }
    return lines;
  }
};

void pass(Archive& archive, LineView& view) {
  pass(archive, view.recipe);
  pass_own(archive, view.own);
}

struct StepState {
  std::shared_ptr<const Recipe> recipe;
  std::size_t step = 0;
};

StepState state_of_step(const StepView& view) {
  return {view.recipe, static_cast<std::size_t>(view.step - view.recipe->method().data())};
}

std::unique_ptr<StepView> step_of(StepState state) {
  if (state.recipe == nullptr || state.step >= state.recipe->method().size()) fail_damaged();
  const MethodStep* step = &state.recipe->method()[state.step];
  return std::make_unique<StepView>(StepView{std::move(state.recipe), step});
}

/// What a catalogue says of no food of the recipe counts for nothing where recipes are compared.
struct CatalogOfRecipe {
  std::shared_ptr<const Catalog> whole;
  std::vector<std::string> foods = {};  // of its lines
};

void pass(Archive& archive, CatalogOfRecipe& value) {
  if (!archive.compares()) return pass(archive, value.whole);
  std::vector<Food> foods;
  std::vector<Fact> facts;
  const auto add = [&](const std::vector<const Fact*>& those) {
    for (const Fact* fact : those) facts.push_back(*fact);
  };
  for (const std::string& id : value.foods) {
    foods.push_back(*value.whole->food(id));
    add(value.whole->facts(id));
  }
  add(value.whole->conventions());
  pass(archive, foods);
  pass(archive, facts);
}

struct RecipeState {
  std::shared_ptr<const RecipeInput> input;
  Size size;
  bool alone = false;
  CatalogOfRecipe catalog;
};

RecipeState state_of_recipe(const Recipe& recipe) {
  RecipeState state{recipe.input(), recipe.size(), recipe.is_alone(), {recipe.shared_catalog()}};
  for (const Line& line : recipe.food_lines()) {
    if (!line.food_id.empty()) state.catalog.foods.push_back(line.food_id);
  }
  return state;
}

std::unique_ptr<Recipe> recipe_of(RecipeState state) {
  if (state.input == nullptr) fail_damaged();
  const Recipe written(std::move(state.input), std::move(state.catalog.whole));
  return std::make_unique<Recipe>(state.alone ? written.sized_alone(std::move(state.size))
                                              : written.sized(std::move(state.size)));
}

std::vector<StepView> steps_of(const std::shared_ptr<const Recipe>& recipe) {
  std::vector<StepView> steps;
  for (const MethodStep& step : recipe->method()) steps.push_back({recipe, &step});
  return steps;
}

void bind_step(py::module_& m) {
  using S = StepView;
  py::class_<S>(m, "MethodStep")
      .def_property_readonly("text", [](const S& s) { return s.step->text; })
      .def_property_readonly("uses", &S::uses)
      .def_property_readonly("at",
                             [](const S& s) -> std::optional<std::string> {
                               if (!s.step->at) return std::nullopt;
                               return scalepan::told(*s.step->at);
                             })
      .def_property_readonly("time",
                             [](const S& s) -> std::optional<std::string> {
                               if (s.step->time.empty()) return std::nullopt;
                               return s.step->time;
                             })
      .def_property_readonly("each_load", [](const S& s) { return s.step->each_load; })
      .def("__repr__", [](const S& s) { return "<MethodStep " + excerpt(s.step->text) + ">"; });
}

void bind_base(py::module_& m) {
  py::class_<BaseUse>(m, "BaseUse")
      .def_readonly("line", &BaseUse::line)
      .def_readonly("amount", &BaseUse::amount)
      .def_readonly("batches", &BaseUse::batches);
  py::class_<MadeBase>(m, "MadeBase")
      .def_readonly("name", &MadeBase::name)
      .def_property_readonly("recipe",
                             [](const MadeBase& b) { return std::make_shared<Recipe>(*b.recipe); })
      .def_readonly("uses", &MadeBase::uses)
      .def_readonly("batches", &MadeBase::batches)
      .def("__repr__", [](const MadeBase& b) {
        return "<MadeBase " + b.name + ": " + Quantity(b.batches).text() + " batches>";
      });
}

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
      .def_property_readonly("drained_later", [](const L& v) { return v.line().drained_later(); })
      .def_property_readonly("state", [](const L& v) { return v.line().state; })
      .def_property_readonly("size", [](const L& v) { return v.line().size; })
      .def_property_readonly("preparation", [](const L& v) { return v.line().preparation; })
      .def_property_readonly("note", [](const L& v) { return v.line().note; })
      .def_property_readonly("optional", [](const L& v) { return v.line().optional; })
      .def_property_readonly(
          "rule", [](const L& v) { return text_of(v.line().rule, v.line().written.unit()); })
      .def_property_readonly("made_in", [](const L& v) { return v.line().made_in; })
      .def_property_readonly("takes_from",
                             [](const L& v) -> std::optional<std::string> {
                               if (!v.line().base) return std::nullopt;
                               return v.recipe->bases()[*v.line().base].name;
                             })
      .def_property_readonly("rounding_spoils",
                             [](const L& v) {
                               const Food* food = v.recipe->catalog().food(v.line().food_id);
                               return std::string(food == nullptr ? "" : rounding_spoils(*food));
                             })
      .def_property_readonly("told", &L::told)
      .def("__repr__", [](const L& v) { return "<Line " + v.line().id + ": " + v.told() + ">"; });
}

}  // namespace

void bind_recipe(py::module_& m) {
  bind_line(m);
  bind_step(m);
  bind_base(m);
  using R = std::shared_ptr<Recipe>;
  py::class_<Recipe, R>(m, "Recipe")
      .def_property_readonly("name", &Recipe::name)
      .def_property_readonly("serves", &Recipe::serves)
      .def_property_readonly("portions", &Recipe::portions)
      .def_property_readonly("measures",
                             [](const R& r) { return std::string(name_of(r->measures())); })
      .def_property_readonly("tested_at", &Recipe::tested_at)
      .def_property_readonly("tested", &Recipe::tested_text)
      .def_property_readonly("lines", [](const R& r) { return views(r, &Recipe::lines); })
      .def_property_readonly("method", &steps_of)
      .def_property_readonly("times_remark", [](const Recipe& r) { return times_remark(r); })
      .def_property_readonly("file",
                             [](const R& r) -> std::optional<std::pair<std::string, std::string>> {
                               if (r->file() == nullptr) return std::nullopt;
                               return std::pair(r->file()->name, r->file()->text);
                             })
      .def_property_readonly("catalog",
                             [](const R& r) { return std::make_shared<Catalog>(r->catalog()); })
      .def_property_readonly("is_tested", &Recipe::is_tested)
      .def_property_readonly("made", [](const R& r) { return r->size().portions; })
      .def_property_readonly("factor", [](const R& r) { return r->size().factor; })
      .def_property_readonly("loads", [](const R& r) { return r->size().loads; })
      .def_property_readonly("batch", [](const R& r) { return r->batch().amount(r->size()); })
      .def_property_readonly("batch_weight",
                             [](const R& r) { return r->batch().weight(r->size()); })
      .def_property_readonly("raw_batch",
                             [](const R& r) { return r->batch().before_cooking(r->size()); })
      .def_property_readonly("tray", [](const R& r) { return r->tray(); })
      .def_property_readonly("trays", [](const R& r) { return r->trays(); })
      .def_property_readonly("rounding", [](const R& r) { return r->rounding(); })
      .def(
          "load_split",
          [](const R& r, bool equal) {
            return r->batch().loads(r->size(),
                                    equal ? LoadSplit::equal : LoadSplit::full_and_short);
          },
          py::kw_only(), py::arg("equal") = false)
      .def_property_readonly("unweighed", [](const R& r) { return r->batch().unweighed(); })
      .def_property_readonly("food_lines", [](const R& r) { return views(r, &Recipe::food_lines); })
      .def_property_readonly("bases", [](const R& r) { return r->made_bases(); })
      .def(
          "scale",
          [](const R& r, py::object portions, py::object factor, py::object batch,
             py::object raw_batch, py::object stock, py::object portion_size, py::object spare,
             py::object serving_loss) {
            return scaled_as_asked(
                *r, {std::move(portions), std::move(factor), std::move(batch), std::move(raw_batch),
                     std::move(stock), std::move(portion_size), std::move(spare),
                     std::move(serving_loss)});
          },
          py::kw_only(), py::arg("portions") = py::none(), py::arg("factor") = py::none(),
          py::arg("batch") = py::none(), py::arg("raw_batch") = py::none(),
          py::arg("stock") = py::none(), py::arg("portion_size") = py::none(),
          py::arg("spare") = py::none(), py::arg("serving_loss") = py::none())
      .def(
          "bakers_percents",
          [](const R& r, const std::vector<std::string>& flours) {
            std::vector<std::pair<std::string, Rational>> percents;
            for (const BakersPercent& line : bakers_percents(*r, flours)) {
              percents.emplace_back(line.line, line.percent);
            }
            return percents;
          },
          py::arg("flours"))
      .def("stock_limit", &stock_limit, py::arg("stock"))
      .def("__repr__", [](const R& r) {
        return "<Recipe " + r->name() + " for " + Quantity(r->portions()).text() + ">";
      });
  keep<LineView>(m, "Line");
  keep_by<StepView, &state_of_step, &step_of>(m, "MethodStep");
  keep<BaseUse>(m, "BaseUse");
  keep<MadeBase>(m, "MadeBase");
  keep_by<Recipe, &state_of_recipe, &recipe_of>(m, "Recipe");
  m.def("sized_recipe",
        [](const R& r, const Rational& served, const Rational& portions, const Rational& factor) {
          return std::make_shared<Recipe>(r->sized({served, portions, factor, 1}));
        });
  m.def("make_recipe", &make_recipe);
  m.def("times_practice", [] { return std::string(times_practice()); });
}

}  // namespace scalepan::bindings
