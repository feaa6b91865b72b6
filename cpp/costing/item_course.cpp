#include "costing/item_course.hpp"

#include <algorithm>
#include <utility>

namespace scalepan {

namespace {

std::size_t word_of(const Rational& whole) {
  return static_cast<std::size_t>(whole.word_numerator());
}

}  // namespace

Rational GroupNeeds::most(const CurvePoints& points) const {
  if (points.size() == 0) return 0;
  return course_ ? course_->at(points[points.size() - 1]) : *std::ranges::max_element(found_);
}

/// The needs that one cover of a group meets.
struct ItemCourse::Reach {
  Rational need;
  Rational after;  // no need of zero or less has it
  Rational upto;
  Cover cover;
};

ItemCourse::ItemCourse(const ItemPlan& plan, std::vector<GroupNeeds> needs,
                       const CurvePoints& points, Unit money)
    : plan_(&plan),
      needs_(std::move(needs)),
      points_(&points),
      per_money_(Rational(1) / money.ratio()),
      straight_(points.even() && std::ranges::all_of(needs_, [](const GroupNeeds& group) {
                  return group.straight() != nullptr;
                })) {}

ItemCourse::Reach ItemCourse::reach_of(std::size_t group, std::size_t place) const {
  const CoverFunction& covers = *plan_->groups[group].covers;
  Rational need = needs_[group].at(place, *points_);
  if (need.sign() <= 0) return {need, need, 0, covers.at(need)};
  CoverStep step = covers.step(need);
  return {std::move(need), std::move(step.after), std::move(step.upto), std::move(step.cover)};
}

Rational ItemCourse::step_of(std::size_t group) const {
  return needs_[group].straight()->slope() * Rational(points_->even()->step);
}

/// The last point behind `place` up to which the needs of the group stay within reach.
std::size_t ItemCourse::last_within(std::size_t group, std::size_t place,
                                    const Reach& reach) const {
  const std::size_t end = points_->size() - 1;
  if (straight_) {
    const Rational step = step_of(group);
    if (step.is_zero()) return end;
    const Rational more = floor((reach.upto - reach.need) / step);
    return more < Rational(end - place) ? place + word_of(more) : end;
  }
  if (reach.need.sign() <= 0) return place;
  while (place < end) {
    const Rational next = needs_[group].at(place + 1, *points_);
    if (next <= reach.after || next > reach.upto) break;
    ++place;
  }
  return place;
}

Stretch ItemCourse::stretch_from(std::size_t place) const {
  Stretch stretch;
  stretch.first = place;
  stretch.last = points_->size() - 1;
  std::size_t best = 0;
  for (std::size_t i = 0; i < needs_.size(); ++i) {
    Reach reach = reach_of(i, place);
    stretch.last = std::min(stretch.last, last_within(i, place, reach));
    if (i > 0 && reach.cover.price >= stretch.cover.price) continue;
    best = i;
    stretch.cover = std::move(reach.cover);
  }
  stretch.group = &plan_->groups[best];
  stretch.keeping = keeping_of(*stretch.group, stretch.cover);
  if (straight_) stretch.step = step_of(best);
  return stretch;
}

Rational ItemCourse::most_need() const { return needs_.front().most(*points_); }

bool ItemCourse::can_be_bought(std::size_t place) const {
  for (std::size_t i = 0; i < needs_.size(); ++i) {
    const auto most = plan_->groups[i].covers->most();
    if (most && needs_[i].at(place, *points_) > *most) return false;
  }
  return true;
}

Rational ItemCourse::need_at(std::size_t place, const Stretch& stretch) const {
  return needs_[static_cast<std::size_t>(stretch.group - plan_->groups.data())].at(place, *points_);
}

Costs ItemCourse::costs_at(std::size_t place, const Stretch& stretch) const {
  return costs_of(stretch.cover, need_at(place, stretch), stretch.keeping) * per_money_;
}

Costs ItemCourse::costs_a_point(const Stretch& stretch) const {
  const Rational need = need_at(stretch.first, stretch);
  Costs rise = costs_of(stretch.cover, need, stretch.keeping) * Rational(-1);
  rise += costs_of(stretch.cover, need + stretch.step, stretch.keeping);
  return rise * per_money_;
}

}  // namespace scalepan
