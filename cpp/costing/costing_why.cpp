#include "costing/costing_why.hpp"

#include <algorithm>
#include <array>

#include "exact/error.hpp"
#include "measure/nearest.hpp"
#include "recipe/made_bases.hpp"

namespace scalepan {

namespace {

constexpr std::array<std::string_view, 7> figures_of_priced_lines{
    "buy", "packs", "till", "used", "thrown", "borne", "leftover"};

bool is_cost(std::string_view name) {
  return std::ranges::find(cost_names, name) != cost_names.end();
}

[[noreturn]] void fail_unknown(const Costing& costing, std::string_view cell) {
  const std::vector<std::string> names = costing.cells().sheet().cells();
  const std::vector<std::string_view> known(names.begin(), names.end());
  const std::string near = nearest_hint(nearest_names(cell, known));
  std::string ids;
  for (const Line& line : costing.recipe().food_lines()) {
    ids += (ids.empty() ? "" : ", ") + line.id + ".buy";
  }
  fail("why.unknown_cell", "no figure is called \"" + excerpt(cell) + "\"",
       near.empty() ? "figures: till, used, thrown, borne, and those of each line: " + ids : near);
}

const ItemCost* item_of(const Provisions& provisions, std::size_t line) {
  for (const ItemCost& item : provisions.items()) {
    if (std::ranges::find(item.plan->lines, line) != item.plan->lines.end()) return &item;
  }
  return nullptr;
}

/// Figures that a line lacks only for want of an amount or a price are told as such.
void expect_figure(const Costing& costing, std::string_view cell) {
  const std::string id = costing.cells().owner(cell);
  const std::string_view what = cell.substr(cell.rfind('.') + 1);
  const bool of_priced =
      std::ranges::find(figures_of_priced_lines, what) != figures_of_priced_lines.end();
  if (id.empty() || (!of_priced && what != "written" && what != "need")) return;
  const auto bases = base_lines_of(costing.recipe());
  const auto base = std::ranges::find(bases, id, &Line::id);
  if (base != bases.end() && of_priced) {
    fail("why.base", std::string(cell) + " has no figure: " + base->food + " is made, not bought",
         "ask for " + id + ".need, or for a line of the base");
  }
  const auto& lines = costing.recipe().food_lines();
  const auto line = std::ranges::find(lines, id, &Line::id);
  if (line == lines.end() || !of_priced) return;
  const auto provisions = costing.now();
  const ItemCost* item = item_of(*provisions, static_cast<std::size_t>(line - lines.begin()));
  if (item == nullptr || item->group != nullptr) return;
  fail("why.unpriced", std::string(cell) + " has no figure: the line is not priced", item->problem);
}

void expect_measured(const Costing& costing, std::string_view cell) {
  const std::size_t dot = cell.rfind('.');
  if (dot == std::string_view::npos) return;
  const std::string_view what = cell.substr(dot + 1);
  const bool named =
      what == "written" || what == "need" ||
      std::ranges::find(figures_of_priced_lines, what) != figures_of_priced_lines.end();
  for (const Line& line : costing.recipe().food_lines()) {
    if (line.measured || !named || line.id != cell.substr(0, dot)) continue;
    fail("why.unmeasured", std::string(cell) + " has no figure: the line states no amount",
         "\"" + line.text + "\"");
  }
}

}  // namespace

std::vector<std::string> cell_names(const Costing& costing) {
  const Sheet& sheet = costing.cells().sheet();
  std::vector<std::string> names;
  for (const std::string& name : sheet.cells()) {
    if (sheet.has_figure(name)) names.push_back(name);
  }
  return names;
}

Why explain(const Costing& costing, std::string_view cell) {
  expect_measured(costing, cell);
  const std::string name = costing.cells().cell(cell);
  Sheet& sheet = costing.cells().sheet();
  if (!sheet.has(name) || !sheet.has_figure(name)) expect_figure(costing, cell);
  if (!sheet.has(name)) fail_unknown(costing, cell);
  Why why = sheet.why(name);
  const std::size_t lines = is_cost(name) ? costing.now()->unpriced().size() : 0;
  if (lines > 0) {
    why.figure +=
        ", " + std::to_string(lines) + (lines == 1 ? " line unpriced" : " lines unpriced");
  }
  return why;
}

}  // namespace scalepan
