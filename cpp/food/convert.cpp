#include "food/convert.hpp"

#include <algorithm>
#include <array>
#include <deque>
#include <iterator>
#include <map>
#include <set>
#include <utility>

#include "exact/error.hpp"

namespace scalepan {

namespace {

struct Edge {
  Form from;
  Form to;
  Step step;
};

Form with_defaults(const Food& food, Form form) {
  if (form.kind == Kind::mass) form.detail.clear();
  if (form.detail.empty() && form.kind == Kind::volume) form.detail = food.default_state;
  if (form.detail.empty() && form.kind == Kind::count) form.detail = food.default_size;
  return form;
}

Kind source_kind(FactKind kind) {
  if (kind == FactKind::density) return Kind::volume;
  return kind == FactKind::piece ? Kind::count : Kind::mass;
}

void add_both_ways(std::vector<Edge>& edges, const Fact& fact, Stage from, Stage to) {
  const Kind kind = source_kind(fact.kind);
  const std::string& detail = kind == Kind::volume ? fact.state : fact.size;
  const Form source{kind, from, kind == Kind::mass ? std::string() : detail};
  const Form target{Kind::mass, to, {}};
  edges.push_back({source, target, {&fact, false}});
  edges.push_back({target, source, {&fact, true}});
}

/// A word measures a volume, in the state the food's volumes are taken in. No way leads back, since
/// through it AP would turn into EP.
void add_word(std::vector<Edge>& edges, const Fact& fact, const Food& food) {
  const Form word{Kind::count, Stage::as_purchased, fact.size};
  for (const Stage stage : {Stage::as_purchased, Stage::edible}) {
    const Form volume{Kind::volume, stage, food.default_state};
    edges.push_back({word, volume, {&fact, false}});
  }
}

bool is_share(const Fact& fact) {
  return fact.kind == FactKind::edible || fact.kind == FactKind::cooked ||
         fact.kind == FactKind::drained;
}

bool holds_for(const Fact& fact, Preparations preparations) {
  std::string_view words = fact.state;
  while (!words.empty()) {
    const std::string_view word = words.substr(0, words.find(' '));
    if (std::ranges::find(preparations, word) == preparations.end()) return false;
    words.remove_prefix(std::min(words.size(), word.size() + 1));
  }
  return true;
}

/// Whether a share for the very preparation takes the place of this plain one.
bool is_overruled(const Fact& fact, const std::vector<const Fact*>& facts,
                  Preparations preparations) {
  return fact.state.empty() && std::ranges::any_of(facts, [&](const Fact* other) {
           return other->kind == fact.kind && other->layer == fact.layer && !other->state.empty() &&
                  holds_for(*other, preparations);
         });
}

/// The facts that apply, ordered as the catalogue orders them.
std::vector<const Fact*> facts_for(const Catalog& catalog, const Food& food, FactLayer last_layer,
                                   Preparations preparations) {
  const std::vector<const Fact*> all = catalog.facts(food.id);
  std::vector<const Fact*> kept;
  for (const Fact* fact : all) {
    if (fact->layer > last_layer) continue;
    if (is_share(*fact) &&
        (!holds_for(*fact, preparations) || is_overruled(*fact, all, preparations))) {
      continue;
    }
    kept.push_back(fact);
  }
  if (last_layer == FactLayer::convention)
    std::ranges::copy(catalog.conventions(), std::back_inserter(kept));
  return kept;
}

/// Without the piece weights whose size an earlier layer weighs at another stage: a cook who
/// weighed whole onions shall not find a table's peeled ones in their place because no share lies
/// between.
std::vector<const Fact*> without_later_pieces(std::vector<const Fact*> facts) {
  const auto is_piece = [](const Fact* fact) { return fact->kind == FactKind::piece; };
  std::map<std::string_view, FactLayer> earliest;
  for (const Fact* fact : facts) {
    if (!is_piece(fact)) continue;
    FactLayer& layer = earliest.try_emplace(fact->size, fact->layer).first->second;
    layer = std::min(layer, fact->layer);
  }
  std::erase_if(facts, [&](const Fact* fact) {
    return is_piece(fact) && fact->layer > earliest.at(fact->size);
  });
  return facts;
}

/// Ordered as the catalogue orders facts, so that ties fall to the first.
std::vector<Edge> edges_of(const std::vector<const Fact*>& facts, const Food& food) {
  std::vector<Edge> edges;
  for (const Fact* fact : facts) {
    if (fact->kind == FactKind::word) {
      add_word(edges, *fact, food);
    } else if (fact->kind == FactKind::density && fact->from == Stage::none) {
      add_both_ways(edges, *fact, Stage::as_purchased, Stage::as_purchased);
      add_both_ways(edges, *fact, Stage::edible, Stage::edible);
    } else {
      add_both_ways(edges, *fact, fact->from, fact->to);
    }
  }
  return edges;
}

using Way = std::vector<Step>;

std::optional<Way> shortest_way(const std::vector<Edge>& edges, const Form& from, const Form& to) {
  std::map<Form, Way> ways{{from, {}}};
  std::deque<Form> queue{from};
  while (!queue.empty()) {
    const Form here = queue.front();
    queue.pop_front();
    if (here == to) return ways[here];
    for (const Edge& edge : edges) {
      if (edge.from != here || ways.contains(edge.to)) continue;
      Way way = ways[here];
      way.push_back(edge.step);
      ways.emplace(edge.to, std::move(way));
      queue.push_back(edge.to);
    }
  }
  return std::nullopt;
}

Conversion along(Way way) {
  Conversion how;
  for (const Step& step : way) {
    const Rational& value = step.fact->value.coherent();
    how.factor *= step.divides ? reciprocal(value) : value;
  }
  const Spread worst = worst_case(way);
  how.low = worst.low;
  how.high = worst.high;
  how.steps = std::move(way);
  return how;
}

std::string form_text(const Form& form) {
  std::string text(name_of(form.kind));
  if (!form.detail.empty()) text += " (" + form.detail + ")";
  if (form.stage != Stage::none) text += " " + std::string(symbol_of(form.stage));
  return text;
}

bool has_fact(const Catalog& catalog, const Food& food, FactKind kind, const std::string& detail) {
  return std::ranges::any_of(catalog.facts(food.id), [&](const Fact* fact) {
    return fact->kind == kind && (kind == FactKind::piece ? fact->size : fact->state) == detail;
  });
}

/// The fact whose absence breaks the way, in words and as a table of facts has it.
struct MissingFact {
  std::string words;
  FactKind kind;
  std::string detail;  // the size of a piece, the state of what has a density
  std::string_view unit;

  [[nodiscard]] std::string row(const Food& food) const {
    const std::string_view column = kind == FactKind::piece ? "size " : "state ";
    return "food " + food.id + ", kind " + std::string(word_of(kind)) +
           (detail.empty() ? "" : ", " + std::string(column) + detail) + ", value in " +
           std::string(unit);
  }
};

MissingFact missing_fact(const Catalog& catalog, const Food& food, const Form& from,
                         const Form& to) {
  for (const Form* form : {&from, &to}) {
    const std::string of_detail = form->detail.empty() ? "" : " (" + form->detail + ")";
    if (form->kind == Kind::volume && !has_fact(catalog, food, FactKind::density, form->detail)) {
      return {"a density" + of_detail, FactKind::density, form->detail, "g/mL"};
    }
    if (form->kind == Kind::count && !has_fact(catalog, food, FactKind::piece, form->detail)) {
      return {"a piece weight" + of_detail, FactKind::piece, form->detail, "g AP/(piece AP)"};
    }
  }
  const auto crosses = [&](Stage stage) { return from.stage == stage || to.stage == stage; };
  if (crosses(Stage::cooked)) return {"a cooked share", FactKind::cooked, {}, "cooked/EP"};
  if (crosses(Stage::drained)) return {"a drained share", FactKind::drained, {}, "drained/AP"};
  return {"an edible share", FactKind::edible, {}, "EP/AP"};
}

std::string known_facts(const Catalog& catalog, const Food& food) {
  std::string known;
  for (const Fact* fact : catalog.facts(food.id)) {
    known += (known.empty() ? "" : ", ") + fact->id;
  }
  return known.empty() ? "none" : known;
}

[[noreturn]] void fail_no_fact(const Catalog& catalog, const Food& food, const Form& from,
                               const Form& to) {
  const MissingFact missing = missing_fact(catalog, food, from, to);
  fail("convert.no_fact",
       "no fact leads from " + form_text(from) + " to " + form_text(to) + " of " + food.name +
           ": " + missing.words + " is missing",
       "known: " + known_facts(catalog, food) + "; add a fact of your own: " + missing.row(food));
}

Form form_of(Dimension dimension, const Details& details) {
  Form form{kind_of(dimension.without_stages()), dimension.stage(), {}};
  if (form.kind == Kind::volume) form.detail = details.state;
  if (form.kind == Kind::count) form.detail = details.size;
  if (form.kind == Kind::count && form.stage == Stage::none) form.stage = Stage::as_purchased;
  return form;
}

constexpr std::array stages_to_try{Stage::as_purchased, Stage::edible, Stage::cooked,
                                   Stage::drained};

/// Both ends at one stage that nobody stated.
std::optional<Conversion> at_any_stage(const Catalog& catalog, const Food& food, Form from, Form to,
                                       Preparations preparations) {
  for (const Stage stage : stages_to_try) {
    from.stage = to.stage = stage;
    if (auto how = find_conversion(catalog, food, from, to, preparations)) return how;
  }
  return std::nullopt;
}

[[noreturn]] void fail_stage(const Food& food, const Quantity& amount, Unit to) {
  // A count that states no stage is of whole pieces, so it is not what is open.
  const bool counted = amount.dimension() == dimension::piece();
  const bool amount_open = amount.stage() == Stage::none && !counted;
  const Unit open = amount_open ? amount.unit() : to;
  fail(
      "convert.stage",
      "the way from " + amount.text() + " to " + to.symbol() + " of " + food.name +
          " crosses stages, and " + open.symbol() + " states none",
      "write " + open.symbol() + " AP (as purchased) or " + open.symbol() + " EP (edible portion)");
}

Conversion staged_conversion(const Catalog& catalog, const Food& food, const Quantity& amount,
                             Unit to, Form from, Form target, Preparations preparations) {
  if (from.stage == Stage::none && target.stage == Stage::none) {
    if (auto how = at_any_stage(catalog, food, from, target, preparations)) return *how;
    from.stage = target.stage = Stage::as_purchased;
    return conversion(catalog, food, from, target, preparations);
  }
  if (from.stage != Stage::none && target.stage != Stage::none) {
    return conversion(catalog, food, from, target, preparations);
  }
  // A weight that states no stage, asked for at one: that could only mean a change of stage.
  const bool weights = from.kind == Kind::mass && target.kind == Kind::mass;
  if (weights && from.stage == Stage::none) fail_stage(food, amount, to);
  const Stage stated = from.stage == Stage::none ? target.stage : from.stage;
  Form same_from = from;
  Form same_target = target;
  same_from.stage = same_target.stage = stated;
  const bool count = from.kind == Kind::count || target.kind == Kind::count;
  auto how = find_conversion(catalog, food, same_from, same_target, preparations);
  if (how && !count) return *how;
  for (const Stage stage : stages_to_try) {
    (from.stage == Stage::none ? same_from : same_target).stage = stage;
    if (find_conversion(catalog, food, same_from, same_target, preparations))
      fail_stage(food, amount, to);
  }
  return conversion(catalog, food, same_from, same_target, preparations);
}

}  // namespace

Kind kind_of(Dimension dimension) {
  if (dimension == dimension::mass()) return Kind::mass;
  if (dimension == dimension::volume()) return Kind::volume;
  if (dimension == dimension::piece()) return Kind::count;
  fail("convert.kind", "a food is measured by weight, volume or count, not in " +
                           (dimension.is_number() ? "plain numbers" : dimension.name()));
}

std::string_view name_of(Kind kind) {
  switch (kind) {
    case Kind::mass:
      return "weight";
    case Kind::volume:
      return "volume";
    case Kind::count:
      break;
  }
  return "count";
}

Spread Conversion::root_sum_square() const { return scalepan::root_sum_square(steps); }

std::optional<Conversion> find_conversion(const Catalog& catalog, const Food& food,
                                          const Form& from, const Form& to,
                                          Preparations preparations) {
  const Form start = with_defaults(food, from);
  const Form end = with_defaults(food, to);
  if (start == end) return Conversion{};
  for (const FactLayer layer :
       {FactLayer::own, FactLayer::bundled, FactLayer::dataset, FactLayer::convention}) {
    const auto facts = facts_for(catalog, food, layer, preparations);
    const auto first = without_later_pieces(facts);
    auto way = shortest_way(edges_of(first, food), start, end);
    if (!way && first.size() < facts.size()) way = shortest_way(edges_of(facts, food), start, end);
    if (way) return along(std::move(*way));
  }
  return std::nullopt;
}

Conversion conversion(const Catalog& catalog, const Food& food, const Form& from, const Form& to,
                      Preparations preparations) {
  if (auto how = find_conversion(catalog, food, from, to, preparations)) return *how;
  fail_no_fact(catalog, food, with_defaults(food, from), with_defaults(food, to));
}

Converted convert(const Catalog& catalog, const Food& food, const Quantity& amount, Unit to,
                  const Details& details, Preparations preparations) {
  const Form from = form_of(amount.dimension(), details);
  const Form target = form_of(to.dimension(), details);
  if (from.kind == target.kind && amount.stage() == to.dimension().stage()) {
    return {amount.to(to), {}};
  }
  Conversion how = staged_conversion(catalog, food, amount, to, from, target, preparations);
  const bool keeps_stage = !to.dimension().has_stages() && target.kind != Kind::count;
  const Unit unit = keeps_stage ? to.at(amount.stage()) : to;
  return {Quantity::of_coherent(amount.coherent() * how.factor, unit), std::move(how)};
}

}  // namespace scalepan
