#include "costing/recipe_along.hpp"

#include "costing/function_arguments.hpp"
#include "costing/kitchen_things.hpp"
#include "costing/need_course.hpp"

namespace scalepan {

namespace {

/// Ends the stretch where a line of the recipe grows in another way: all that takes from it,
/// through bases in proportion too, is a sum of such lines.
void note_turns(const Recipe& recipe, const RatioForm& portions, Reach& reach) {
  if (!bases_in_proportion(recipe)) {
    throw NoForm{"a base of " + recipe.name() + " does not grow in proportion"};
  }
  if (portions.direction() < 0) throw NoForm{"the portions fall where it rises"};
  reach.turns_at(portions.where(recipe.portions()));  // as it is, its size may be one of its own
  if (reach.sign_of(portions) <= 0) return;
  const auto end = end_of_tapers(recipe);
  if (end && reach.sign_of(portions - RatioForm::constant(*end)) > 0) return;
  const auto from = portions.at(reach.from());
  if (!from) throw NoForm{"the portions grow beyond all bounds"};
  const auto turn = course_of_lines(recipe).next_turn(*from);
  if (turn) reach.turns_at(portions.where(*turn));
}

}  // namespace

Along recipe_along(const Function& function, std::span<const Along> arguments, Reach& reach) {
  const auto& recipe = thing<RecipeThing>(std::get<ThingPointer>(arguments.front()));
  const auto& portions = std::get<RatioForm>(arguments.back());
  note_turns(recipe.written(), portions, reach);
  const auto point = [&](const Rational& input) {
    const std::vector<Value> values = values_at(arguments, input);
    return LinePoint{std::get<Rational>(values.back()), std::get<Rational>(function.run(values))};
  };
  const Rational near = reach.inside();
  return line_through(point(near), point((reach.from() + near) / Rational(2)), portions);
}

}  // namespace scalepan
