#include <memory>

#include "bindings/archive_shared.hpp"
#include "bindings/bind.hpp"
#include "bindings/kept.hpp"
#include "exact/error.hpp"
#include "food/convert.hpp"
#include "food/usda_release.hpp"
#include "measure/amount.hpp"
#include "measure/unit_text.hpp"

namespace scalepan::bindings {

namespace {

using Texts = std::vector<std::string>;

Stage stage_or_any(const std::string& word) {
  if (word == "any") return Stage::none;
  const auto stage = stage_named(word);
  if (!stage) {
    fail("fact.stage", "\"" + excerpt(word) + "\" is no stage",
         "write any, AP, EP, cooked, drained or served");
  }
  return *stage;
}

std::optional<Quantity> quantity_or_nothing(const std::string& text) {
  return text.empty() ? std::nullopt : std::optional(parse_quantity(text));
}

FactLayer layer_named(const std::string& name) {
  for (const FactLayer layer : {FactLayer::own, FactLayer::bundled, FactLayer::convention}) {
    if (name_of(layer) == name) return layer;
  }
  return FactLayer::dataset;
}

void add_food(Catalog& catalog, const Texts& names, const Texts& allergens_eu,
              const Texts& allergens_us, const Texts& cautions) {
  catalog.add(Food{names.at(0), names.at(1), names.at(2), names.at(3), names.at(4), allergens_eu,
                   allergens_us, cautions});
}

void add_name(Catalog& catalog, const std::string& name, const std::string& plural,
              const std::string& region, const std::string& food, bool near) {
  catalog.add(FoodName{name, plural, region, food, near});
}

/// fact, food, kind, state, size, from_stage, to_stage, value, low, high, source: the columns.
void add_fact(Catalog& catalog, const Texts& row, const std::string& layer) {
  catalog.add(Fact{row.at(0), row.at(1), fact_kind_named(row.at(2)), row.at(3), row.at(4),
                   stage_or_any(row.at(5)), stage_or_any(row.at(6)), parse_quantity(row.at(7)),
                   quantity_or_nothing(row.at(8)), quantity_or_nothing(row.at(9)), row.at(10),
                   layer_named(layer)});
}

std::string stage_word(Stage stage) {
  return stage == Stage::none ? "any" : std::string(symbol_of(stage));
}

std::string text_or_nothing(const std::optional<Quantity>& quantity) {
  return quantity ? quantity->text() : std::string();
}

/// What `add_food`, `add_name`, `add_fact` and `choose` were given, in the order they take it.
py::list food_rows(const Catalog& catalog) {
  py::list rows;
  for (const Food* food : catalog.foods()) {
    rows.append(py::make_tuple(
        Texts{food->id, food->name, food->plural, food->default_state, food->default_size},
        food->allergens_eu, food->allergens_us, food->cautions));
  }
  return rows;
}

py::list name_rows(const Catalog& catalog) {
  py::list rows;
  for (const FoodName& name : catalog.names()) {
    rows.append(py::make_tuple(name.name, name.plural, name.region, name.food, name.near));
  }
  return rows;
}

py::list fact_rows(const Catalog& catalog) {
  py::list rows;
  for (const Fact* fact : catalog.facts()) {
    rows.append(py::make_tuple(
        Texts{fact->id, fact->food, std::string(word_of(fact->kind)), fact->state, fact->size,
              stage_word(fact->from), stage_word(fact->to), fact->value.text(),
              text_or_nothing(fact->low), text_or_nothing(fact->high), fact->source},
        name_of(fact->layer)));
  }
  return rows;
}

/// By the region where one is stated, else by what the catalogue has settled.
const Food& known_in(const Catalog& catalog, const std::string& food, const std::string& region) {
  return region.empty() ? catalog.known(food) : catalog.known(food, NameChoices{region});
}

std::optional<std::string> id_in(const Catalog& catalog, const std::string& name,
                                 const std::string& region) {
  const auto found = region.empty() ? catalog.find(name) : catalog.find(name, region);
  return found ? std::optional(found->food->id) : std::nullopt;
}

void choose(Catalog& catalog, const std::string& region,
            const std::map<std::string, std::string>& names) {
  NameChoices choices{region};
  for (const auto& [name, food] : names) choices.foods.emplace(plain_name(name), food);
  catalog.choose(std::move(choices));
}

void add_release_files(Catalog& catalog, const std::string& label,
                       const std::pair<std::string, std::string>& foods,
                       const std::pair<std::string, std::string>& weights, bool abbreviated) {
  const auto layout = abbreviated ? WeightsLayout::abbrev : WeightsLayout::weight;
  add_release(catalog,
              {label, {foods.first, foods.second}, {weights.first, weights.second}, layout});
}

py::tuple told_fact(const Fact& fact) { return py::make_tuple(fact.id, fact.value, fact.source); }

/// A fact used, and the other figures beside it.
py::tuple told_step(const Catalog& catalog, const Step& step) {
  py::list beside;
  for (const Fact* other : catalog.beside(*step.fact)) beside.append(told_fact(*other));
  const Fact& fact = *step.fact;
  return py::make_tuple(fact.id, fact.value, step.divides, fact.source, py::tuple(beside));
}

py::tuple convert_amount(const Catalog& catalog, const Quantity& amount, const std::string& unit,
                         const std::string& food, const std::string& measures,
                         const std::string& state, const std::string& size,
                         const Texts& preparations, const std::string& region) {
  const Food& known = known_in(catalog, food, region);
  const Converted result =
      convert(catalog, known, amount, parse_unit(unit, measures_named(measures)),
              Details{state, size}, preparations);
  py::list facts;
  for (const Step& step : result.how.steps) facts.append(told_step(catalog, step));
  const auto of_factor = [&](const Rational& factor) {
    return Quantity::of_coherent(amount.coherent() * factor, result.amount.unit());
  };
  const Spread independent = result.how.root_sum_square();
  return py::make_tuple(result.amount, facts, of_factor(result.how.low), of_factor(result.how.high),
                        of_factor(independent.low), of_factor(independent.high));
}

/// By a number that follows from all it holds.
void name_base(Catalog& catalog, const std::string& name) {
  catalog.name_base(name + "/" + digest_of(catalog));
}

void bind_fact(py::module_& m) {
  py::class_<Fact>(m, "Fact")
      .def_readonly("id", &Fact::id)
      .def_readonly("food", &Fact::food)
      .def_property_readonly("kind", [](const Fact& fact) { return name_of(fact.kind); })
      .def_readonly("state", &Fact::state)
      .def_readonly("size", &Fact::size)
      .def_readonly("value", &Fact::value)
      .def_readonly("low", &Fact::low)
      .def_readonly("high", &Fact::high)
      .def_readonly("source", &Fact::source)
      .def_property_readonly("layer", [](const Fact& fact) { return name_of(fact.layer); })
      .def("__repr__",
           [](const Fact& fact) { return "Fact('" + fact.id + "', '" + fact.value.text() + "')"; });
  keep<Fact>(m, "Fact");
}

}  // namespace

void bind_food(py::module_& m) {
  bind_fact(m);
  py::class_<Catalog, std::shared_ptr<Catalog>>(m, "Catalog")
      .def(py::init<>())
      .def("copy", [](const Catalog& catalog) { return std::make_shared<Catalog>(catalog); })
      .def("add_food", &add_food)
      .def("add_name", &add_name)
      .def("add_fact", &add_fact)
      .def("food_of", &id_in, py::arg("name"), py::arg("region") = "")
      .def("add_release", &add_release_files)
      .def("prefer", &Catalog::prefer)
      .def("choose", &choose)
      .def(
          "facts",
          [](const Catalog& catalog, const std::string& food, const std::string& region) {
            std::vector<Fact> facts;
            for (const Fact* fact : catalog.facts(known_in(catalog, food, region).id)) {
              facts.push_back(*fact);
            }
            return facts;
          },
          py::arg("food"), py::arg("region") = "")
      .def("part",
           [](const Catalog& catalog, const std::set<std::string>& foods) {
             return std::make_shared<Catalog>(catalog.part(foods));
           })
      .def_property_readonly("food_rows", &food_rows)
      .def_property_readonly("name_rows", &name_rows)
      .def_property_readonly("fact_rows", &fact_rows)
      .def_property_readonly("choices",
                             [](const Catalog& catalog) {
                               const NameChoices& choices = catalog.choices();
                               return py::make_tuple(choices.region, choices.foods);
                             })
      .def("nearest", &Catalog::nearest)
      .def_property_readonly("food_count", &Catalog::food_count)
      .def_property_readonly("fact_count", &Catalog::fact_count)
      .def("name_base", &name_base)
      .def_property_readonly("base", &Catalog::base)
      .def_property_readonly("is_base", [](const Catalog& catalog) {
        return !catalog.base().empty() && catalog.changes().empty();
      });
  keep<Catalog>(m, "Catalog", true);
  m.def("convert", &convert_amount, py::arg("catalog"), py::arg("amount"), py::arg("unit"),
        py::arg("food"), py::arg("measures"), py::arg("state"), py::arg("size"),
        py::arg("preparations"), py::arg("region"));
}

}  // namespace scalepan::bindings
