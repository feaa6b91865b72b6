#include "costing/layout.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "costing/cell_ids.hpp"
#include "costing/item_layout.hpp"
#include "costing/kitchen_things.hpp"
#include "exact/number_text.hpp"
#include "recipe/made_bases.hpp"

namespace scalepan {

namespace {

std::string quoted(std::string_view text) {
  std::string quoted = "\"";
  for (const char c : text) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

CellValue number(const Rational& value) { return {quantity_type(Unit()), value}; }

/// Whether the formula of the need alone does not tell the rule.
bool is_told(const Rule& rule) {
  return rule.kind == RuleKind::fixed || rule.kind == RuleKind::to_taste ||
         rule.taken_up != Rational(1);
}

/// The size, what is written, and what is needed.
class SizeLayout {
 public:
  SizeLayout(std::shared_ptr<const Recipe> recipe, CellIds& ids, std::vector<Change>& changes)
      : recipe_(std::move(recipe)), ids_(ids), changes_(changes) {}

  void lay_out() {
    const Size& size = recipe_->size();
    changes_.emplace_back(Set{"portions", number(recipe_->portions()), "the size asked for"});
    changes_.emplace_back(Set{"serves", number(recipe_->serves()), "the size written for"});
    by_portions_ =
        size == size_of_portions(recipe_->serves(), size.served) ||
        (size.served == size.portions && size.factor * recipe_->serves() == size.portions);
    if (asks_recipe()) {
      changes_.emplace_back(Set{"recipe",
                                {{ValueKind::recipe}, std::make_shared<const RecipeThing>(recipe_)},
                                "as it is written"});
    }
    if (!by_portions_) define("factor", "size_factor(recipe, portions)");
    for (const MadeBase& made : recipe_->made_bases()) {
      define(ids_.name(made.name) + ".batches",
             "batches_of(recipe, " + quoted(made.name) + ", portions)");
    }
    for (const Line& line : base_lines_of(*recipe_)) lay_out(line);
    for (const Line& line : recipe_->food_lines()) {
      if (line.measured) lay_out(line);
    }
  }

 private:
  void define(std::string name, std::string formula) {
    changes_.emplace_back(Define{std::move(name), std::move(formula)});
  }

  /// Whether a formula asks the recipe for what it cannot tell itself.
  [[nodiscard]] bool asks_recipe() const {
    if (!by_portions_ || !recipe_->made_bases().empty()) return true;
    return std::ranges::any_of(recipe_->food_lines(), [](const Line& line) {
      return line.rule.kind == RuleKind::tapered || line.rule.kind == RuleKind::per_load;
    });
  }

  void lay_out(const Line& line) {
    const std::string& id = ids_.name(line.id);
    std::string source = "\"" + line.text + "\"";
    if (const std::string place = line.place.text(); !place.empty()) source += ", " + place;
    if (is_told(line.rule)) source += "; " + text_of(line.rule, line.written.unit());
    changes_.emplace_back(Set{
        id + ".written", {quantity_type(line.written.unit()), line.written.coherent()}, source});
    define(id + ".need", need(line, id));
  }

  [[nodiscard]] std::string need(const Line& line, const std::string& id) {
    const std::string in_proportion = id + ".written * " + factor(line);
    switch (line.rule.kind) {
      case RuleKind::in_proportion:
      case RuleKind::to_taste:
        return in_proportion;
      case RuleKind::fixed:
        return id + ".written";
      case RuleKind::whole:
        return "up_to_multiple(" + in_proportion + ", 1 " +
               Unit::coherent(line.written.dimension()).symbol() + ")";
      case RuleKind::per_portions:
        if (by_portions_ && line.made_in.empty()) return by_started_portions(line, id);
        break;
      default:
        break;
    }
    return id + ".written * growth_of(recipe, " + quoted(line.id) + ", portions)";
  }

  [[nodiscard]] std::string by_started_portions(const Line& line, const std::string& id) {
    const Unit unit = line.written.unit();
    changes_.emplace_back(
        Set{id + ".each", {quantity_type(unit), line.rule.each}, text_of(line.rule, unit)});
    const Rational& portions = line.rule.portions;
    if (portions == Rational(1)) return id + ".each * up_to_multiple(portions, 1)";
    std::string each = exact_text(portions);
    if (each.find('/') != std::string::npos) each = "(" + each + ")";
    return id + ".each * up_to_multiple(portions / " + each + ", 1)";
  }

  [[nodiscard]] std::string factor(const Line& line) {
    if (!line.made_in.empty()) return ids_.name(line.made_in) + ".batches";
    return by_portions_ ? "portions / serves" : "factor";
  }

  std::shared_ptr<const Recipe> recipe_;
  CellIds& ids_;
  std::vector<Change>& changes_;
  bool by_portions_ = true;
};

}  // namespace

Layout lay_out(const std::shared_ptr<const Recipe>& recipe, const Provisions& provisions,
               std::shared_ptr<const Plan> plan) {
  Layout layout;
  CellIds ids({"lines", "till", "used", "thrown", "borne", "per_portion"});
  SizeLayout(recipe, ids, layout.changes).lay_out();
  ItemLayout(provisions, std::move(plan), ids, layout).lay_out();
  for (const std::string_view which : cost_names) {
    const std::string name(which);
    layout.changes.emplace_back(Define{name, "sum(lines." + name + ")"});
    layout.changes.emplace_back(Define{"per_portion." + name, name + " / (portions * 1 portion)"});
  }
  layout.names = ids.all();
  return layout;
}

}  // namespace scalepan
