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

/// The amounts to buy that one cover of a group meets.
struct ItemCourse::Reach {
  Rational to_buy;
  Rational after;  // no amount of zero or less has it
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
                })) {
  for (const OfferGroup& group : plan.groups) {
    Rational held;
    for (const OnHand& each : group.on_hand) held += each.amount;
    has_stock_ = has_stock_ || !held.is_zero();
    held_.push_back(std::move(held));
  }
}

Rational ItemCourse::to_buy_of(std::size_t group, std::size_t place) const {
  return needs_[group].at(place, *points_) - held_[group];
}

ItemCourse::Reach ItemCourse::reach_of(std::size_t group, std::size_t place) const {
  Rational to_buy = to_buy_of(group, place);
  if (to_buy.sign() <= 0) return {to_buy, to_buy, 0, {}};
  CoverStep step = plan_->groups[group].covers->step(to_buy);
  return {std::move(to_buy), std::move(step.after), std::move(step.upto), std::move(step.cover)};
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
    const Rational more = floor((reach.upto - reach.to_buy) / step);
    return more < Rational(end - place) ? place + word_of(more) : end;
  }
  if (reach.to_buy.sign() <= 0) return place;
  while (place < end) {
    const Rational next = to_buy_of(group, place + 1);
    if (next <= reach.after || next > reach.upto) break;
    ++place;
  }
  return place;
}

Stretch ItemCourse::stretch_from(std::size_t place) const {
  Stretch stretch;
  stretch.first = place;
  stretch.last = points_->size() - 1;
  std::size_t best = needs_.size();
  for (std::size_t i = 0; i < needs_.size(); ++i) {
    if (!can_be_bought(i, place)) {
      if (!straight_) stretch.last = place;
      continue;
    }
    Reach reach = reach_of(i, place);
    stretch.last = std::min(stretch.last, last_within(i, place, reach));
    if (best < i && reach.cover.price >= stretch.cover.price) continue;
    best = i;
    stretch.cover = std::move(reach.cover);
  }
  stretch.group = &plan_->groups[best];
  stretch.keeping = keeping_of(*stretch.group, stretch.cover);
  if (straight_) stretch.step = step_of(best);
  return stretch;
}

Rational ItemCourse::most_to_buy() const { return needs_.front().most(*points_) - held_.front(); }

bool ItemCourse::can_be_bought(std::size_t group, std::size_t place) const {
  const auto& covers = plan_->groups[group].covers;
  if (covers == nullptr) return to_buy_of(group, place).sign() <= 0;
  const auto most = covers->most();
  return !most || to_buy_of(group, place) <= *most;
}

bool ItemCourse::can_be_bought(std::size_t place) const {
  for (std::size_t i = 0; i < needs_.size(); ++i) {
    if (can_be_bought(i, place)) return true;
  }
  return false;
}

std::size_t ItemCourse::number_of(const Stretch& stretch) const {
  return static_cast<std::size_t>(stretch.group - plan_->groups.data());
}

Rational ItemCourse::to_buy_at(std::size_t place, const Stretch& stretch) const {
  return to_buy_of(number_of(stretch), place);
}

Costs ItemCourse::costs_at(std::size_t place, const Stretch& stretch) const {
  const Rational to_buy = std::max(Rational(0), to_buy_at(place, stretch));
  Costs costs = costs_of(stretch.cover, to_buy, stretch.keeping);
  if (has_stock_) {
    costs += stock_costs_of(*stretch.group, needs_[number_of(stretch)].at(place, *points_));
  }
  return costs * per_money_;
}

Costs ItemCourse::costs_a_point(const Stretch& stretch) const {
  const Rational to_buy = to_buy_at(stretch.first, stretch);
  Costs rise = costs_of(stretch.cover, to_buy, stretch.keeping) * Rational(-1);
  rise += costs_of(stretch.cover, to_buy + stretch.step, stretch.keeping);
  return rise * per_money_;
}

}  // namespace scalepan
