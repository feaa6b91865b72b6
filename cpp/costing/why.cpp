#include "costing/why.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "costing/why_need.hpp"
#include "costing/why_parts.hpp"
#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "measure/figure.hpp"
#include "measure/told.hpp"

namespace scalepan {

namespace {

class Explainer {
 public:
  Explainer(const BoughtLine& bought, const ItemCost* item)
      : recipe_(bought.recipe),
        provisions_(bought.provisions),
        item_(item),
        line_(bought.provisions.lines()[bought.index]),
        way_(way_of(item, bought.index)),
        cost_(cost_of(item, bought.index)) {}

  [[nodiscard]] Why explain(std::string_view what) const {
    if (!line_.measured) fail_unmeasured(what);
    if (what == "written") return why_written(line_);
    if (what == "need") return why_need(recipe_, line_);
    if (item_ == nullptr || item_->group == nullptr) fail_unpriced(what);
    if (what == "buy") return buy();
    if (what == "packs") return packs();
    if (what == "leftover") return leftover();
    if (const Step* step = step_named(what)) return fact(*step);
    return money(what);
  }

  [[nodiscard]] std::vector<std::string> names() const {
    if (!line_.measured) return {};
    std::vector<std::string> all{"written", "need"};
    if (item_ == nullptr || item_->group == nullptr) return all;
    for (const char* name : {"buy", "packs", "till", "used", "thrown", "borne", "leftover"}) {
      all.emplace_back(name);
    }
    for (const Step& step : way_->conversion.steps) all.push_back(step_name(step));
    return all;
  }

 private:
  static const LineWay* way_of(const ItemCost* item, std::size_t index) {
    if (item == nullptr || item->group == nullptr) return nullptr;
    return &*std::ranges::find(item->group->ways, index, &LineWay::line);
  }
  static const LineCost* cost_of(const ItemCost* item, std::size_t index) {
    if (item == nullptr || item->group == nullptr) return nullptr;
    return &*std::ranges::find(item->lines, index, &LineCost::line);
  }

  [[noreturn]] void fail_unmeasured(std::string_view what) const {
    fail("why.unmeasured",
         line_.id + "." + std::string(what) + " has no figure: the line states no amount",
         "\"" + line_.text + "\"");
  }

  [[noreturn]] void fail_unpriced(std::string_view what) const {
    fail("why.unpriced",
         line_.id + "." + std::string(what) + " has no figure: the line is not priced",
         item_ == nullptr ? "" : item_->problem);
  }

  [[nodiscard]] std::string cell(std::string_view what) const {
    return line_.id + "." + std::string(what);
  }

  static std::string step_name(const Step& step) {
    switch (step.fact->kind) {
      case FactKind::density:
        return "density";
      case FactKind::piece:
        return "piece_weight";
      case FactKind::edible:
        return "edible";
      case FactKind::cooked:
        return "cooked";
      case FactKind::word:
        return "word";
      case FactKind::drained:
        break;
    }
    return "drained";
  }

  [[nodiscard]] const Step* step_named(std::string_view what) const {
    for (const Step& step : way_->conversion.steps) {
      if (step_name(step) == what) return &step;
    }
    return nullptr;
  }

  [[nodiscard]] Why buy() const {
    Why why{cell("buy"), figure_of(cost_->bought_as), "need", "", {why_need(recipe_, line_)}};
    for (const Step& step : way_->conversion.steps) {
      why.how += (step.divides ? " / " : " * ") + step_name(step);
      why.parts.push_back(fact(step));
    }
    if (way_->share_assumed) {
      why.how += ", all of it taken as edible";
      why.parts.push_back({cell("edible"), "1 EP/AP", "", "assumed: no edible share is known", {}});
    }
    return why;
  }

  [[nodiscard]] Why fact(const Step& step) const {
    return {cell(step_name(step)), figure_of_fact(*step.fact), "", source_of(*step.fact),
            why_beside(recipe_.catalog(), *step.fact)};
  }

  /// Needs of every line of the item: packs are chosen for their sum.
  [[nodiscard]] Why item_need() const {
    if (item_->group->ways.size() == 1) return buy();
    Why why{item_->plan->item + " in all", figure_of(item_->need), "sum over its lines", "", {}};
    for (const LineCost& line : item_->lines) {
      why.parts.push_back(
          {provisions_.lines()[line.line].id + ".buy", figure_of(line.bought_as), "", "", {}});
    }
    return why;
  }

  [[nodiscard]] Why packs() const {
    Why why{cell("packs"),
            item_->packs().empty() ? "none" : text_of(item_->packs()),
            "cheapest whole packs of at least what is to buy",
            "",
            {item_need()}};
    if (!item_->stock.empty()) {
      why.how += ", less what is on hand";
      why.parts.push_back(on_hand());
    }
    for (Why& terms : why_terms(*item_, provisions_.plan().money())) {
      why.parts.push_back(std::move(terms));
    }
    for (const Offer* offer : item_->group->offers) {
      why.parts.push_back(why_pack_price(*offer, provisions_.plan().taxes()));
    }
    return why;
  }

  [[nodiscard]] Why on_hand() const { return why_on_hand(*item_, provisions_.plan().money()); }

  [[nodiscard]] Why leftover() const {
    return {cell("leftover"),
            figure_of(item_->leftover),
            item_->stock.empty() ? "bought - buy, of the whole item"
                                 : "bought - (buy - on hand), of the whole item",
            "",
            {packs()}};
  }

  [[nodiscard]] Why money(std::string_view what) const {
    const Quantity amount(cost_named(cost_->costs, what), provisions_.plan().money());
    if (what == "borne") {
      return {cell(what), figure_of(amount), "used + thrown", "", {money("used"), money("thrown")}};
    }
    const bool shared = item_->group->ways.size() > 1;
    Why why{cell(what), figure_of(amount), how_of(what), "", {}};
    if (shared) {
      why.how = std::string(what) + " of the whole item * this line's share by use";
      const Quantity whole(cost_named(item_->costs, what), provisions_.plan().money());
      why.parts.push_back(
          {std::string(what) + " of the whole item", figure_of(whole), how_of(what), "", {}});
    }
    if (what == "till") {
      why.parts.push_back(packs());
    } else {
      const Quantity bought = Quantity::of_coherent(item_->cover.total, item_->need.unit());
      why.parts.push_back(money("till"));
      why.parts.push_back(item_need());
      why.parts.push_back({"bought", figure_of(bought), text_of(item_->packs()), "", {}});
      if (!item_->stock.empty()) why.parts.push_back(on_hand());
    }
    return why;
  }

  [[nodiscard]] std::string how_of(std::string_view what) const {
    if (what == "till") {
      return item_->terms().empty() ? "sum of pack prices" : "sum of pack prices and terms";
    }
    if (what == "used" && !item_->stock.empty()) {
      const std::string of_stock = "value of what is on hand and used";
      if (item_->cover.total.is_zero()) return of_stock;
      return of_stock + " + till * (buy - on hand) / bought";
    }
    if (what == "used") return "till * buy / bought";
    return item_->keeping.keeps ? "nothing: what is left keeps"
                                : "till * left over / bought: what is left will not keep";
  }

  const Recipe& recipe_;
  const Provisions& provisions_;
  const ItemCost* item_;
  const Line& line_;
  const LineWay* way_;
  const LineCost* cost_;
};

Explainer explainer_for(const BoughtLine& line) {
  for (const ItemCost& item : line.provisions.items()) {
    if (std::ranges::find(item.plan->lines, line.index) != item.plan->lines.end()) {
      return {line, &item};
    }
  }
  return {line, nullptr};
}

}  // namespace

std::vector<std::string> figure_names(const BoughtLine& line) {
  return explainer_for(line).names();
}

bool has_figure(const BoughtLine& line, std::string_view what) {
  const std::vector<std::string> names = figure_names(line);
  return std::ranges::find(names, what) != names.end() ||
         std::ranges::find(cost_names, what) != cost_names.end() || what == "written" ||
         what == "need" || what == "buy" || what == "packs" || what == "leftover";
}

Why explain_line(const BoughtLine& line, std::string_view what) {
  return explainer_for(line).explain(what);
}

}  // namespace scalepan
