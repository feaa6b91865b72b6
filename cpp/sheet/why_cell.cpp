#include "sheet/why_cell.hpp"

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

#include "sheet/cell_text.hpp"
#include "sheet/settle.hpp"

namespace scalepan {

namespace {

std::string by(const Override& instead) {
  std::string text = instead.why;
  if (!instead.who.empty()) text += ", " + instead.who;
  if (!instead.when.empty()) text += ", " + instead.when;
  return text;
}

class Teller {
 public:
  explicit Teller(const SheetState& state) : state_(state) {}

  Why tell(Cell cell, std::size_t depth) {
    ++told_cells_;
    Why why;
    why.name = state_.names.name(cell);
    why.figure = figure(cell);
    const bool fresh = told_.insert(cell).second;
    const ContentKind kind = state_.contents.kind(cell);
    if (kind == ContentKind::given) why.source = state_.contents.source(cell);
    if (state_.contents.is_overridden(cell)) {
      tell_override(cell, why);
    } else if (kind == ContentKind::formula) {
      why.how = state_.formula_text(cell);
      if (fresh) {
        tell_inputs(cell, depth, why);
        tell_calls(cell, why);
      } else if (!state_.uses.read_by(cell).empty()) {
        why.how += "   (as above)";
      }
    } else if (kind == ContentKind::total) {
      tell_total(cell, why);
      if (fresh) tell_rows(cell, depth, why);
    }
    if (fresh) tell_thing(cell, why);
    return why;
  }

 private:
  [[nodiscard]] std::string figure(Cell cell) const {
    const Figures& figures = state_.figures;
    if (figures.condition(cell) != Condition::failed) {
      return figure_of(CellValue{state_.type(cell), figures.value(cell)});
    }
    return std::string("no figure: ") + error_of(state_, cell).what();
  }

  void tell_override(Cell cell, Why& why) const {
    why.source = "overridden: " + by(state_.contents.instead(cell));
    const std::string formula = state_.formula_text(cell);
    const std::string own = formula.empty() ? figure_of(state_.contents.given(cell)) : formula;
    why.parts.push_back({"its own", own, "", "not used until the override is released", {}});
  }

  void tell_inputs(Cell cell, std::size_t depth, Why& why) {
    for (const Cell input : state_.uses.read_by(cell)) add(input, depth, why);
  }

  /// What the functions of its formula say of where their figures come from.
  void tell_calls(Cell cell, Why& why) const {
    const Programme& programme = state_.contents.programme(cell);
    if (programme.functions.empty()) return;
    RunSpace space;
    space.listener = [&why](const Function& function, std::span<const Value> arguments) {
      if (function.source != nullptr) add_source(why, function.source(arguments));
      if (function.parts != nullptr) add_parts(why, function.parts(arguments));
    };
    const Cell* inputs = state_.uses.inputs_of(cell);
    try {
      static_cast<void>(run_on_values(
          programme,
          [&](std::size_t input) {
            if (state_.figures.condition(inputs[input]) == Condition::failed) {
              throw InputFailed{inputs[input]};
            }
            return state_.figures.value(inputs[input]);
          },
          space));
    } catch (const InputFailed&) {  // the figure tells it
    } catch (const Error&) {        // the figure tells it
    }
  }

  static void add_source(Why& why, const std::string& source) {
    if (!source.empty()) why.source += (why.source.empty() ? "" : "; ") + source;
  }

  static void add_parts(Why& why, std::vector<Why> parts) {
    std::ranges::move(parts, std::back_inserter(why.parts));
  }

  void tell_thing(Cell cell, Why& why) const {
    if (state_.figures.condition(cell) != Condition::thing) return;
    add_parts(why, std::get<ThingPointer>(state_.figures.value(cell))->parts());
  }

  void tell_total(Cell cell, Why& why) const {
    const ColumnTotal& total = state_.totals[state_.contents.total(cell)];
    const std::vector<Row>& rows = state_.blocks.at(total.home.block).rows;
    why.how = "sum of " + std::to_string(rows.size()) + (rows.size() == 1 ? " row" : " rows");
    if (total.sum.missing() > 0) {
      why.how += ", of which " + std::to_string(total.sum.missing()) +
                 (total.sum.missing() == 1 ? " has no figure" : " have no figure");
    }
  }

  void tell_rows(Cell cell, std::size_t depth, Why& why) {
    const ColumnTotal& total = state_.totals[state_.contents.total(cell)];
    for (const Row& row : state_.blocks.at(total.home.block).rows) {
      add(row.cells[total.home.column], depth, why);
    }
  }

  void add(Cell input, std::size_t depth, Why& why) {
    if (told_cells_ >= most_told || depth >= deepest_told) {
      why.parts.push_back({std::string(state_.names.name(input)), figure(input), "...", "", {}});
    } else {
      why.parts.push_back(tell(input, depth + 1));
    }
  }

  const SheetState& state_;
  std::set<Cell> told_;
  std::size_t told_cells_ = 0;
};

}  // namespace

Why why_cell(const SheetState& state, Cell cell) { return Teller(state).tell(cell, 0); }

}  // namespace scalepan
