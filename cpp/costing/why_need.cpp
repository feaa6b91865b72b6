#include "costing/why_need.hpp"

#include "exact/number_text.hpp"
#include "measure/figure.hpp"
#include "recipe/taper.hpp"

namespace scalepan {

namespace {

Why given(std::string name, std::string figure, std::string source) {
  return {std::move(name), std::move(figure), "", std::move(source), {}};
}

/// How many batches of a base are made for all its uses.
Why why_batches(const MadeBase& made) {
  const Rational& factor = made.recipe->size().factor;
  Why why{made.name + ".batches",
          figure_of(Quantity(factor)),
          "sum of its uses / what one batch makes",
          "",
          {}};
  if (!(factor == made.batches)) {
    why.how = "enough for its uses, " + figure_of(Quantity(made.batches)) +
              " in proportion, where lines that do not scale so fall short";
  }
  for (const BaseUse& use : made.uses) {
    why.parts.push_back({use.line + ".need",
                         figure_of(use.amount),
                         figure_of(Quantity(use.batches)) + " of one batch",
                         "",
                         {}});
  }
  return why;
}

/// A size in the words of the rule that uses it.
class SizeOfLine {
 public:
  SizeOfLine(const Recipe& dish, const Line& line)
      : made_(dish.made_base(line.made_in)), recipe_(made_ == nullptr ? dish : *made_->recipe) {}

  [[nodiscard]] bool by_portions() const {
    return made_ == nullptr && size().portions == recipe_.serves() * size().factor;
  }
  /// What the written amount is multiplied by.
  [[nodiscard]] std::string factor_name() const {
    if (made_ != nullptr) return "batches";
    return by_portions() ? "portions / serves" : "factor";
  }
  void add_factor(Why& why) const {
    if (made_ != nullptr) return why.parts.push_back(why_batches(*made_));
    if (by_portions()) return add_portions(why);
    why.parts.push_back(given("factor", exact_text(size().factor),
                              "of the written amounts, so that the batch comes to what is asked"));
  }
  void add_portions(Why& why) const {
    const bool more = !(size().portions == size().served);
    const std::string served = exact_text(size().served);
    why.parts.push_back(given("portions", exact_text(size().portions),
                              more ? "to serve " + served : "the size asked for"));
    why.parts.push_back(given("serves", exact_text(recipe_.serves()), "the size written for"));
  }
  void add_loads(Why& why) const {
    why.parts.push_back(given("loads", exact_text(size().loads), "whole loads of what one takes"));
  }

 private:
  [[nodiscard]] const Size& size() const { return recipe_.size(); }

  const MadeBase* made_;
  const Recipe& recipe_;
};

std::string how_of(const Line& line, const std::string& factor) {
  const std::string in_proportion = "written * " + factor;
  const std::string rule = text_of(line.rule, line.written.unit());
  switch (line.rule.kind) {
    case RuleKind::in_proportion:
      return in_proportion;
    case RuleKind::to_taste:
      return in_proportion + ", allowed for; to taste";
    case RuleKind::fixed:
      return "written, fixed at every size";
    case RuleKind::whole:
      return in_proportion + " = " + line.exact.text() + ", rounded up to whole pieces";
    case RuleKind::tapered:
      return "written * what the taper gives for " + factor;
    case RuleKind::per_load:
      return rule + ", times the loads";
    case RuleKind::per_portions:
      break;
  }
  return rule + ", a started one counting whole";
}

void add_taper(Why& why, const Rule& rule) {
  const std::string source = rule.taper_name.empty()
                                 ? "written in the line"
                                 : std::string(source_of_taper(rule.taper_name));
  why.parts.push_back(given("taper", text_of(*rule.taper), source));
}

}  // namespace

Why why_written(const Line& line) {
  std::string source = "\"" + line.text + "\"";
  if (const std::string place = line.place.text(); !place.empty()) source += ", " + place;
  return given(line.id + ".written", line.written.text(), source);
}

Why why_need(const Recipe& dish, const Line& line) {
  const SizeOfLine size(dish, line);
  Why why{line.id + ".need",
          figure_of(line.amount),
          how_of(line, size.factor_name()),
          "",
          {why_written(line)}};
  if (line.rule.taken_up != Rational(1)) {
    why.how += "; all of it bought, " + exact_text(line.rule.taken_up * Rational(100)) +
               " % of it stays in the food";
  }
  if (line.rule.kind == RuleKind::tapered) add_taper(why, line.rule);
  if (line.rule.kind == RuleKind::per_load) {
    size.add_loads(why);
  } else if (line.rule.kind != RuleKind::fixed) {
    size.add_factor(why);
  }
  return why;
}

}  // namespace scalepan
