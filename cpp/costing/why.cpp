#include "costing/why.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "costing/why_need.hpp"
#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "measure/figure.hpp"
#include "measure/nearest.hpp"
#include "measure/told.hpp"
#include "recipe/made_bases.hpp"

namespace scalepan {

namespace {

std::string offer_source(const Offer& offer) {
  std::string text = offer.place.text();
  if (!offer.shop.empty()) text += (text.empty() ? "" : ", ") + offer.shop;
  if (!offer.date.empty()) text += (text.empty() ? "" : ", ") + offer.date;
  return text;
}

/// As its source has it; a fraction that does not end with a short decimal before it.
std::string figure_of_fact(const Fact& fact) {
  const std::string exact = fact.value.text();
  const Rational value = fact.value.value();
  if (exact_text(value).find('/') == std::string::npos) return exact;
  return "≈ " + fixed_text(value, 4) + " " + fact.value.unit().symbol() + "  (exactly " + exact +
         ")";
}

std::string source_of(const Fact& fact) {
  std::string source = fact.source;
  if (!fact.state.empty()) source += " [" + fact.state + "]";
  if (!fact.size.empty()) source += " [" + fact.size + "]";
  if (fact.layer == FactLayer::bundled) return source;
  return std::string(name_of(fact.layer)) + ": " + source;
}

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
    Why why{cell(step_name(step)), figure_of_fact(*step.fact), "", source_of(*step.fact), {}};
    for (const Fact* other : recipe_.catalog().beside(*step.fact)) {
      why.parts.push_back({"beside it", figure_of_fact(*other), "", source_of(*other), {}});
    }
    return why;
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
    for (std::size_t i = 0; i < item_->cover.bought.size(); ++i) {
      const WayToBuy& way = item_->group->ways_to_buy[i];
      if (!item_->cover.bought[i].is_zero() && !way.text.empty()) {
        why.parts.push_back(on_terms(way, item_->cover.bought[i]));
      }
    }
    for (std::size_t i = 0; i < item_->group->offers.size(); ++i) {
      why.parts.push_back(pack_price(i));
    }
    return why;
  }

  [[nodiscard]] Why on_terms(const WayToBuy& way, const Rational& times) const {
    const std::string& pack = item_->group->offers[way.purchase.row]->pack.text;
    const Quantity price =
        Quantity::of_coherent(times * way.purchase.price, provisions_.plan().money());
    const std::string packs = text_of(PacksTaken{{times * way.purchase.packs, pack}});
    return {"terms", pack + ": " + way.text, packs + " for " + figure_of(price), "", {}};
  }

  [[nodiscard]] Why pack_price(std::size_t row) const {
    const Offer& offer = *item_->group->offers[row];
    const Rational counted = with_taxes(offer.price.coherent(), offer, provisions_.plan().taxes());
    const Quantity price = Quantity::of_coherent(counted, offer.price.unit());
    Why why{"pack " + offer.pack.text, figure_of(price), "", offer_source(offer), {}};
    if (!offer.tax || counted == offer.price.coherent()) return why;
    why.how = figure_of(offer.price) + (offer.tax->included ? " less" : " and") + " its " +
              exact_text(offer.tax->rate * Rational(100)) + " % tax";
    return why;
  }

  [[nodiscard]] Why on_hand() const {
    Why why{"on hand, used",
            figure_of(item_->from_stock),
            "what must be used first goes first",
            "",
            {}};
    for (const StockUse& use : item_->stock) {
      const Quantity value = Quantity::of_coherent(use.value_used, provisions_.plan().money());
      why.parts.push_back({"of " + use.stock->amount.text,
                           figure_of(use.used) + ", worth " + figure_of(value),
                           "",
                           use.stock->place.text(),
                           {}});
    }
    return why;
  }

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

/// Of a line that takes from a base.
Why explain_base_line(const Recipe& dish, const Line& line, std::string_view what) {
  if (what == "written") return why_written(line);
  if (what == "need") return why_need(dish, line);
  fail("why.base",
       line.id + "." + std::string(what) + " has no figure: " + line.food + " is made, not bought",
       "ask for " + line.id + ".need, or for a line of the base");
}

Explainer explainer_for(const BoughtLine& line) {
  for (const ItemCost& item : line.provisions.items()) {
    if (std::ranges::find(item.plan->lines, line.index) != item.plan->lines.end()) {
      return {line, &item};
    }
  }
  return {line, nullptr};
}

Why explain_total(const Costing& costing, std::string_view which) {
  std::string figure = figure_of(costing.cost(which));
  if (!costing.unpriced().empty()) {
    const std::size_t lines = costing.unpriced().size();
    figure = "at least " + figure + ", " + std::to_string(lines) +
             (lines == 1 ? " line unpriced" : " lines unpriced");
  }
  Why why{std::string(which), figure, "sum over the lines", "", {}};
  for (const ItemCost& item : costing.items()) {
    for (const LineCost& line : item.lines) {
      const Quantity part(cost_named(line.costs, which), costing.plan().money());
      why.parts.push_back({costing.recipe().food_lines()[line.line].id + "." + std::string(which),
                           figure_of(part),
                           "",
                           "",
                           {}});
    }
  }
  return why;
}

[[noreturn]] void fail_unknown(const Costing& costing, std::string_view cell) {
  const std::vector<std::string> names = cell_names(costing);
  const std::vector<std::string_view> known(names.begin(), names.end());
  const std::string near = nearest_hint(nearest_names(cell, known));
  std::string ids;
  for (const Line& line : costing.recipe().food_lines()) {
    ids += (ids.empty() ? "" : ", ") + line.id + ".buy";
  }
  fail("why.unknown_cell", "no figure is called \"" + excerpt(cell) + "\"",
       near.empty() ? "figures: till, used, thrown, borne, and those of each line: " + ids : near);
}

}  // namespace

std::vector<std::string> cell_names(const Costing& costing) {
  std::vector<std::string> names(cost_names.begin(), cost_names.end());
  for (const Line& line : base_lines_of(costing.recipe())) {
    for (const char* what : {".written", ".need"}) names.push_back(line.id + what);
  }
  for (std::size_t i = 0; i < costing.recipe().food_lines().size(); ++i) {
    for (const std::string& name : figure_names({costing.recipe(), costing.provisions(), i})) {
      names.push_back(costing.recipe().food_lines()[i].id + "." + name);
    }
  }
  return names;
}

Why explain(const Costing& costing, std::string_view cell) {
  if (std::ranges::find(cost_names, cell) != cost_names.end()) return explain_total(costing, cell);
  const std::size_t dot = cell.rfind('.');
  const std::vector<Line> of_bases = base_lines_of(costing.recipe());
  const auto of_base = std::ranges::find(of_bases, cell.substr(0, dot), &Line::id);
  if (dot != std::string_view::npos && of_base != of_bases.end()) {
    return explain_base_line(costing.recipe(), *of_base, cell.substr(dot + 1));
  }
  const std::vector<Line>& lines = costing.recipe().food_lines();
  const auto line = std::ranges::find(lines, cell.substr(0, dot), &Line::id);
  if (dot == std::string_view::npos || line == lines.end()) fail_unknown(costing, cell);
  const auto index = static_cast<std::size_t>(line - lines.begin());
  const std::string_view what = cell.substr(dot + 1);
  const BoughtLine bought{costing.recipe(), costing.provisions(), index};
  if (!has_figure(bought, what)) fail_unknown(costing, cell);
  return explain_line(bought, what);
}

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
