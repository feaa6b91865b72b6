#include "costing/need_course.hpp"

#include <algorithm>

#include "recipe/made_bases.hpp"

namespace scalepan {

namespace {

bool is_proportional(const Line& line) {
  const RuleKind kind = line.rule.kind;
  return !line.measured || kind == RuleKind::in_proportion || kind == RuleKind::to_taste;
}

/// What every portion takes, where a rule that counts in whole ones has no part of one left over at
/// any whole number of portions.
std::optional<Rational> whole_each_portion(const Line& line, const Rational& serves) {
  const Rule& rule = line.rule;
  const bool whole = rule.kind == RuleKind::whole;
  if (!whole && rule.kind != RuleKind::per_portions) return std::nullopt;
  const Rational counted = whole ? line.written.coherent() / serves : Rational(1) / rule.portions;
  if (!counted.is_integer()) return std::nullopt;
  return whole ? counted : counted * rule.each;
}

bool in_proportion(const MadeBase& base) {
  return std::ranges::all_of(base.recipe->lines(), is_proportional);
}

class CourseMaker {
 public:
  CourseMaker(const Recipe& recipe, Portions portions)
      : recipe_(recipe),
        portions_(portions),
        base_lines_(base_lines_of(recipe)),
        course_(recipe.serves()) {}

  /// False where there is no course.
  bool add(const Line& line, const Rational& weight) {
    if (!line.measured) return true;
    if (line.made_in.empty()) {
      course_.add(line, weight, recipe_, portions_);
      return true;
    }
    const MadeBase& base = *recipe_.made_base(line.made_in);
    if (!in_proportion(base)) return false;
    // So much a batch; the batches are the sum of what the uses take.
    const Rational each_batch = line.written.coherent() * weight;
    return std::ranges::all_of(base.uses, [&](const BaseUse& use) {
      if (use.batches.is_zero()) return true;
      const auto user = std::ranges::find(base_lines_, use.line, &Line::id);
      return add(*user, each_batch * use.batches / use.amount.coherent());
    });
  }

  NeedCourse take() { return std::move(course_); }

 private:
  const Recipe& recipe_;
  Portions portions_;
  std::vector<Line> base_lines_;
  NeedCourse course_;
};

}  // namespace

Rational NeedCourse::at(const Rational& portions) const {
  const Rational straight = slope_ * portions + constant_;
  return bent_ ? straight + bent_->at(portions / serves_) : straight;
}

std::optional<Rational> NeedCourse::next_turn(const Rational& portions) const {
  const auto factor = bent_ ? bent_->next_turn(portions / serves_) : std::nullopt;
  return factor ? std::optional(*factor * serves_) : std::nullopt;
}

void NeedCourse::add(const Line& line, const Rational& weight, const Recipe& recipe,
                     Portions portions) {
  const Rational written = line.written.coherent();
  const Rule& rule = line.rule;
  if (is_proportional(line)) {
    slope_ += written * weight / serves_;
    return;
  }
  if (const auto each = whole_each_portion(line, serves_); each && portions == Portions::whole) {
    slope_ += *each * weight;
    return;
  }
  if (rule.kind == RuleKind::fixed) {
    constant_ += written * weight;
    return;
  }
  const bool by_load = rule.kind == RuleKind::per_load;
  const Rational each = (rule.each.is_zero() ? written : rule.each) * weight;
  if (by_load && !recipe.batch().has_load()) {
    constant_ += each;
    return;
  }
  if (!bent_) bent_.emplace();
  const Growing growing{serves_, std::nullopt};
  if (by_load) {
    recipe.batch().add_load_growth(*bent_, each, growing);
  } else {
    add_growth(*bent_, rule, written, weight, growing);
  }
}

std::optional<NeedCourse> need_course(const OfferGroup& group, const Recipe& recipe,
                                      Portions portions) {
  CourseMaker maker(recipe, portions);
  const bool known = std::ranges::all_of(group.ways, [&](const LineWay& way) {
    return maker.add(recipe.food_lines()[way.line], way.conversion.factor);
  });
  return known ? std::optional(maker.take()) : std::nullopt;
}

NeedCourse course_of_lines(const Recipe& recipe) {
  NeedCourse course(recipe.serves());
  for (const Line& line : recipe.lines()) {
    if (line.measured) course.add(line, 1, recipe, Portions::any);
  }
  return course;
}

bool bases_in_proportion(const Recipe& recipe) {
  return std::ranges::all_of(recipe.made_bases(), in_proportion);
}

std::optional<Rational> end_of_tapers(const Recipe& recipe) {
  std::optional<Rational> end;
  for (const Line& line : recipe.lines()) {
    if (!line.measured || line.rule.kind != RuleKind::tapered) continue;
    const auto factor = line.rule.taper->end();
    if (!factor) continue;
    const Rational portions = *factor * recipe.serves();
    end = end ? std::min(*end, portions) : portions;
  }
  return end;
}

}  // namespace scalepan
