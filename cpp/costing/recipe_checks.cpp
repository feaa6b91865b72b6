#include "costing/recipe_checks.hpp"

#include <map>
#include <set>
#include <utility>

#include "exact/number_text.hpp"
#include "measure/told.hpp"
#include "recipe/base_line.hpp"
#include "recipe/made_bases.hpp"
#include "recipe/taper.hpp"

namespace scalepan {

namespace {

using Notes = std::vector<std::string>;

std::string percent_text(const Rational& share) {
  return tell(Quantity(share * Rational(100))).text + " %";
}

/// Without the word `pieces`, which says nothing beside a line's name.
std::string bare(const Quantity& amount) {
  const std::string text = tell(amount).text;
  const bool count = amount.dimension().without_stages() == dimension::piece();
  return count ? text.substr(0, text.rfind(' ')) : text;
}

void check_food(const Line& line, const Catalog& catalog, Notes& notes) {
  if (line.food_id.empty() && !line.several) {
    const std::vector<std::string> near = catalog.nearest(line.food);
    notes.push_back(line.id + ": the catalogue has no food \"" + line.food +
                    "\", so it has no facts, allergens or cautions" +
                    (near.empty() ? "" : " (nearest: " + near.front() + ")"));
  } else if (line.near) {
    notes.push_back(line.id + ": the facts are those of " + catalog.food(line.food_id)->name +
                    ", the nearest food with facts to " + line.food);
  }
}

/// What was read with a doubt, or left to the cook.
void check_reading(const Line& line, Notes& notes) {
  if (!line.measured) notes.push_back(line.id + ": no amount is stated, so it is not costed");
  if (!line.hedge.empty()) {
    notes.push_back(line.id + ": the amount is " + line.hedge +
                    " what is written, and that is taken");
  }
  if (!line.fill.empty()) {
    notes.push_back(line.id + ": a " + line.fill + " measure is taken as a level one");
  }
  for (const std::string& doubt : line.doubts) notes.push_back(line.id + ": " + doubt);
  if (line.is_range()) notes.push_back(line.id + ": a range is bought at its high end");
  if (line.optional && line.measured) notes.push_back(line.id + ": is optional, and costed");
}

void check_rounding(const Line& line, const Catalog& catalog, const Rational& allowed,
                    Notes& notes) {
  const Rational& exact = line.exact.coherent();
  const bool as_written = line.amount == line.written;
  if (!line.measured || as_written || exact.is_zero() || line.exact == line.amount) return;
  const Rational share = (line.amount.coherent() - exact) / exact;
  if (share <= allowed) return;
  const Food* food = catalog.food(line.food_id);
  const std::string_view spoils = food == nullptr ? "" : rounding_spoils(*food);
  notes.push_back(line.id + ": " + bare(line.amount) + " in place of " + bare(line.exact) + ", " +
                  percent_text(share) + " more, where rounding may change " +
                  percent_text(allowed) +
                  (spoils.empty() ? "" : "; " + std::string(spoils) + " is easily spoilt by it"));
}

void check_rule(const Line& line, const Batch& batch, Notes& notes) {
  const Rule& rule = line.rule;
  if (rule.kind == RuleKind::to_taste) {
    notes.push_back(line.id + ": to taste; " + bare(line.amount) +
                    " is allowed for, to buy by, and its cost is an estimate");
  }
  if (rule.kind == RuleKind::per_load && !batch.has_load()) {
    notes.push_back(line.id + ": goes by the load, but the recipe states no load; one is taken");
  }
  if (rule.kind != RuleKind::tapered || line.amount == line.written) return;
  const std::string source =
      rule.taper_name.empty() ? "its line" : std::string(source_of_taper(rule.taper_name));
  notes.push_back(line.id + ": tapered by " + source +
                  "; common practice, and sources disagree: taste and adjust");
}

/// Of the dish, or of the base that a line belongs to.
const Batch& batch_of(const Line& line, const Recipe& recipe) {
  const MadeBase* made = recipe.made_base(line.made_in);
  return made == nullptr ? recipe.batch() : made->recipe->batch();
}

/// How much of each base, as it is written, the shares of its lines leave.
void check_shares(const Recipe& recipe, Notes& notes) {
  std::map<std::size_t, Rational> taken;
  std::set<std::size_t> shared;
  for (Line line : recipe.lines()) {
    if (!line.base || !line.measured) continue;
    line.amount = line.written;
    taken[*line.base] += batches_of(line, recipe.bases()[*line.base]);
    if (line.takes_share) shared.insert(*line.base);
  }
  for (const std::size_t base : shared) {
    const Rational& share = taken[base];
    if (share == Rational(1)) continue;
    notes.push_back(recipe.bases()[base].name + ": its uses come to " + mixed_text(share) +
                    " of one batch; the other " + mixed_text(Rational(1) - share) + " is not made");
  }
}

void check_made(const MadeBase& made, Notes& notes) {
  const Recipe& recipe = *made.recipe;
  const auto makes = recipe.batch().amount(recipe.size());
  const auto whole = recipe.batch().amount(size_of_portions(recipe.serves(), recipe.serves()));
  if (!makes || !whole) return;
  const Quantity needed = *whole * made.batches;
  if (*makes == needed) return;
  const bool enough = makes->coherent() > needed.coherent();
  notes.push_back(made.name + ": " + tell(*makes).text + " is made, " +
                  (enough ? "of which " + tell(needed).text + " is taken"
                          : "where the uses are told of " + tell(needed).text + " in proportion"));
}

void check_weight_of_base(const MadeBase& made, Notes& notes) {
  const Batch& batch = made.recipe->batch();
  if (batch.tells_weight()) return;
  notes.push_back(made.name + ": how much the " + batch.makes()->text() +
                  " that its recipe makes weigh is not known, so the weight of the dish is not: "
                  "state there what it makes by weight, or its loss");
}

void check_batch(const Recipe& recipe, const std::string& name, Notes& notes) {
  const Batch& batch = recipe.batch();
  if (batch.unweighed().empty()) {
    const auto before = batch.before_cooking(recipe.size());
    const auto after = batch.weight(recipe.size());
    if (!before || !after || after->coherent() <= before->coherent()) return;
    notes.push_back(name + ": the batch is said to weigh " + tell(*after).text +
                    ", but its lines " + tell(*before).text + ": does a line lack, such as water?");
  } else if (batch.makes()) {
    std::string ids;
    for (const std::string& id : batch.unweighed()) ids += (ids.empty() ? "" : ", ") + id;
    notes.push_back(name +
                    ": the batch is taken in proportion, since no fact gives the weight of " + ids);
  }
}

}  // namespace

std::vector<std::string> lines_to_check(const Recipe& recipe) {
  Notes notes;
  for (const Line& line : recipe.food_lines()) {
    check_food(line, recipe.catalog(), notes);
    check_reading(line, notes);
    check_rounding(line, recipe.catalog(), recipe.rounding(), notes);
    check_rule(line, batch_of(line, recipe), notes);
  }
  for (const Line& line : base_lines_of(recipe)) {
    check_reading(line, notes);
    check_rounding(line, recipe.catalog(), recipe.rounding(), notes);
  }
  check_shares(recipe, notes);
  check_batch(recipe, "batch", notes);
  for (const MadeBase& made : recipe.made_bases()) {
    check_shares(*made.recipe, notes);
    check_batch(*made.recipe, made.name, notes);
    check_weight_of_base(made, notes);
    check_made(made, notes);
  }
  for (std::string& note : method_to_check(recipe)) notes.push_back(std::move(note));
  return notes;
}

}  // namespace scalepan
