#include "costing/swaps.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "exact/error.hpp"
#include "measure/nearest.hpp"

namespace scalepan {

namespace {

/// The lists that name each allergen of the lines: `EU`, `US`, or `EU, US`.
using Allergens = std::map<std::string, std::string>;

Allergens allergens_of(const std::vector<Line>& lines, const Catalog& catalog) {
  std::map<std::string, std::set<std::string>> lists;
  for (const Line& line : lines) {
    const Food* food = catalog.food(line.food_id);
    if (food == nullptr) continue;
    for (const std::string& allergen : food->allergens_eu) lists[allergen].insert("EU");
    for (const std::string& allergen : food->allergens_us) lists[allergen].insert("US");
  }
  Allergens allergens;
  for (const auto& [allergen, names] : lists) {
    std::string& text = allergens[allergen];
    for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  }
  return allergens;
}

std::vector<std::string> missing_from(const Allergens& some, const Allergens& others) {
  std::vector<std::string> missing;
  for (const auto& [allergen, lists] : some) {
    if (!others.contains(allergen)) missing.push_back(allergen + " (" + lists + ")");
  }
  return missing;
}

Costs difference(const Costs& a, const Costs& b) {
  Costs rest = b * Rational(-1);
  rest += a;
  return rest;
}

std::vector<Line>::const_iterator line_named(const std::vector<Line>& lines,
                                             const std::string& id) {
  const auto found = std::ranges::find(lines, id, &Line::id);
  if (found != lines.end()) return found;
  std::vector<std::string_view> ids;
  for (const Line& line : lines) ids.push_back(line.id);
  fail("swap.line", "no line of a food has the id \"" + excerpt(id) + "\"",
       nearest_hint(nearest_names(id, ids)));
}

std::vector<Line> read_lines(const Recipe& recipe, const Line& line, const SwapAsked& asked) {
  if (asked.lines.empty()) {
    fail("swap.line", "no lines are given in place of " + line.id,
         "to leave it out, write the dish without it");
  }
  const MadeBase* base = recipe.made_base(line.made_in);
  const Recipe& whose = base == nullptr ? recipe : *base->recipe;
  std::vector<Line> lines;
  for (const PlacedText& text : asked.lines) {
    LineInput input;
    input.line = text;
    lines.push_back(whose.line_at_size(input));
    lines.back().made_in = line.made_in;
    if (base != nullptr) lines.back().id = line.made_in + "." + lines.back().id;
  }
  return lines;
}

Swap costed(const Costing& costing, const SwapAsked& asked) {
  const std::vector<Line>& own = costing.recipe().food_lines();
  const auto line = line_named(own, asked.line);
  Swap swap;
  swap.line = asked.line;
  swap.lines = read_lines(costing.recipe(), *line, asked);
  std::vector<Line> lines(own.begin(), line);
  const std::size_t first = lines.size();
  lines.insert(lines.end(), swap.lines.begin(), swap.lines.end());
  lines.insert(lines.end(), line + 1, own.end());
  const Provisions bought = bought_for(costing, lines);
  swap.costs = bought.costs();
  swap.saved = difference(costing.costs(), bought.costs());
  for (const ItemCost& item : bought.items()) {
    if (item.group != nullptr) continue;
    for (const std::size_t i : item.plan->lines) {
      const bool fresh = i >= first && i < first + swap.lines.size();
      if (fresh) swap.unpriced.push_back(lines[i].id);
    }
  }
  const Catalog& catalog = costing.recipe().catalog();
  const Allergens before = allergens_of(own, catalog);
  const Allergens after = allergens_of(lines, catalog);
  swap.allergens_gained = missing_from(after, before);
  swap.allergens_lost = missing_from(before, after);
  for (const Line& fresh : swap.lines) {
    if (fresh.food_id.empty()) swap.allergens_unknown.push_back(fresh.food);
  }
  return swap;
}

}  // namespace

std::vector<Swap> swaps(const Costing& costing, const std::vector<SwapAsked>& asked,
                        std::string_view which) {
  static_cast<void>(cost_named(costing.costs(), which));
  std::vector<Swap> found;
  for (const SwapAsked& swap : asked) found.push_back(costed(costing, swap));
  std::ranges::stable_sort(found, [&](const Swap& a, const Swap& b) {
    if (a.unpriced.empty() != b.unpriced.empty()) return a.unpriced.empty();
    return cost_named(a.saved, which) > cost_named(b.saved, which);
  });
  return found;
}

}  // namespace scalepan
