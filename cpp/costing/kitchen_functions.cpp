#include "costing/kitchen_functions.hpp"

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "costing/function_arguments.hpp"
#include "costing/kitchen_things.hpp"
#include "costing/packs_functions.hpp"
#include "costing/recipe_along.hpp"
#include "costing/why_need.hpp"
#include "costing/why_parts.hpp"
#include "exact/error.hpp"
#include "measure/figure.hpp"
#include "measure/unit_text.hpp"

namespace scalepan {

namespace {

constexpr std::array<FactFunction, 6> fact_functions{{
    {FactKind::edible, Stage::edible, "edible_share", "EP/AP"},
    {FactKind::cooked, Stage::cooked, "cooked_share", "cooked/EP"},
    {FactKind::drained, Stage::drained, "drained_share", "drained/AP"},
    {FactKind::density, Stage::none, "density", "g/mL"},
    {FactKind::piece, Stage::as_purchased, "piece_weight", "g/piece"},
    {FactKind::piece, Stage::edible, "edible_piece_weight", "g EP/(piece AP)"},
}};

// What arguments may be.

void expect_kind(std::string_view function, const ValueType& type, ValueKind kind) {
  if (type.kind == kind) return;
  fail("formula.type", "\"" + std::string(function) + "\" needs " + ValueType{kind}.name() +
                           ", not " + type.name());
}

void expect_number(std::string_view function, const ValueType& type) {
  if (type.kind == ValueKind::quantity && type.dimension().is_number()) return;
  fail("formula.dimension",
       "\"" + std::string(function) + "\" needs a plain number, not " + type.name());
}

ValueType number_at_size(std::string_view function, Types types) {
  expect_kind(function, types[0], ValueKind::recipe);
  if (types.size() == 3) expect_kind(function, types[1], ValueKind::text);
  expect_number(function, types.back());
  return quantity_type(Unit());
}

template <std::size_t Which>
ValueType fact_type(std::string_view function, Types types) {
  expect_kind(function, types[0], ValueKind::food);
  if (types.size() == 2) expect_kind(function, types[1], ValueKind::text);
  static const Unit unit = parse_unit(fact_functions[Which].unit);
  return quantity_type(unit);
}

// What they are worth.

std::string text_in(const Value& value) { return std::get<ThingPointer>(value)->text(); }

// Facts.

template <std::size_t Which>
const Fact& fact_in(Values values) {
  const FactFunction& function = fact_functions[Which];
  const std::string detail = values.size() == 2 ? text_in(values[1]) : "";
  return thing<FoodThing>(values[0]).fact(function.kind, function.to, detail);
}

template <std::size_t Which>
Value fact_value(Values values) {
  return fact_in<Which>(values).value.coherent();
}

template <std::size_t Which>
std::string fact_source(Values values) {
  const Fact& fact = fact_in<Which>(values);
  static const Unit unit = parse_unit(fact_functions[Which].unit);
  const bool as_shown = fact.value.unit().ratio() == unit.ratio();
  return source_of(fact) + (as_shown ? "" : "; stated as " + figure_of_fact(fact));
}

template <std::size_t Which>
std::vector<Why> beside(Values values) {
  return why_beside(thing<FoodThing>(values[0]).catalog(), fact_in<Which>(values));
}

template <std::size_t Which>
Function fact_function(std::string_view shape, std::string_view told) {
  return {fact_functions[Which].name,
          shape,
          told,
          1,
          2,
          Operation::call,
          fact_type<Which>,
          fact_value<Which>,
          fact_source<Which>,
          beside<Which>};
}

// Sizes.

std::shared_ptr<const Recipe> recipe_at(std::string_view function, Values values) {
  return thing<RecipeThing>(values[0]).at(single(function, values.back()));
}

const MadeBase& base_in(const Recipe& recipe, const std::string& name) {
  if (const MadeBase* made = recipe.made_base(name)) return *made;
  fail("cost.base", recipe.name() + " makes no base called \"" + excerpt(name) + "\"");
}

const Line& line_in(const Recipe& recipe, const std::string& id) {
  const auto& lines = recipe.food_lines();
  const auto line = std::ranges::find(lines, id, &Line::id);
  if (line != lines.end()) return *line;
  fail("cost.line", recipe.name() + " has no line \"" + excerpt(id) + "\"");
}

Value size_factor(Values values) { return recipe_at("size_factor", values)->size().factor; }

std::string size_factor_source(Values) {
  return "of the written amounts, so that the batch comes to what is asked";
}

Value batches_of(Values values) {
  const auto recipe = recipe_at("batches_of", values);
  return base_in(*recipe, text_in(values[1])).recipe->size().factor;
}

std::string batches_source(Values values) {
  const auto recipe = recipe_at("batches_of", values);
  return told_batches(base_in(*recipe, text_in(values[1])));
}

std::vector<Why> batches_parts(Values values) {
  const auto recipe = recipe_at("batches_of", values);
  return why_uses(base_in(*recipe, text_in(values[1])));
}

/// Of the written amount, so that an amount written anew grows alike.
Value growth_of(Values values) {
  const auto recipe = recipe_at("growth_of", values);
  const Line& line = line_in(*recipe, text_in(values[1]));
  if (line.written.coherent().is_zero()) return Rational(0);
  return line.amount.coherent() / line.written.coherent();
}

std::string growth_source(Values values) {
  const auto recipe = recipe_at("growth_of", values);
  return told_rule(*recipe, line_in(*recipe, text_in(values[1])));
}

std::vector<Function> functions() {
  constexpr Operation call = Operation::call;
  std::vector<Function> functions{
      fact_function<0>("edible_share(food)", "what is left of the whole after trimming"),
      fact_function<1>("cooked_share(food)", "what cooking leaves of the edible weight"),
      fact_function<2>("drained_share(food)", "what draining leaves of the whole"),
      fact_function<3>("density(food)", "weight by volume"),
      fact_function<4>("piece_weight(food)", "weight of one, as purchased"),
      fact_function<5>("edible_piece_weight(food)", "edible weight of one"),
      {"size_factor", "size_factor(recipe, portions)", "what the written amounts are multiplied by",
       2, 2, call, number_at_size, size_factor, size_factor_source, nullptr, recipe_along},
      {"batches_of", "batches_of(recipe, base, portions)", "how many batches of a base are made", 3,
       3, call, number_at_size, batches_of, batches_source, batches_parts, recipe_along},
      {"growth_of", "growth_of(recipe, line, portions)",
       "what a line's rule multiplies its written amount by", 3, 3, call, number_at_size, growth_of,
       growth_source, nullptr, recipe_along},
  };
  std::ranges::copy(packs_functions(), std::back_inserter(functions));
  return functions;
}

}  // namespace

std::shared_ptr<const FunctionTable> kitchen_functions() {
  static const auto table = std::make_shared<const FunctionTable>(functions());
  return table;
}

const FactFunction* function_for(const Fact& fact) {
  for (const FactFunction& function : fact_functions) {
    const bool same_stage = fact.kind != FactKind::piece || function.to == fact.to;
    if (fact.kind != function.kind || !same_stage) continue;
    return parse_unit(function.unit).dimension() == fact.value.dimension() ? &function : nullptr;
  }
  return nullptr;
}

}  // namespace scalepan
