// Item courses: how one item is bought along the points of a curve.
#pragma once

#include <vector>

#include "costing/curve_points.hpp"
#include "costing/need_course.hpp"
#include "costing/provisions.hpp"

namespace scalepan {

/// The points from `first` to `last`, at which one cover meets the need.
struct Stretch {
  std::size_t first = 0;
  std::size_t last = 0;
  const OfferGroup* group = nullptr;
  Cover cover;
  Keeping keeping;  // of what is left
  Rational step;    // of the need, from point to point; only of an item that is straight

  [[nodiscard]] bool buys_as(const Stretch& other) const {
    return group == other.group && cover.counts == other.cover.counts;
  }
};

/// The need of one group, by its course or, where it has none, as found at each point.
class GroupNeeds {
 public:
  explicit GroupNeeds(NeedCourse course) : course_(std::move(course)) {}
  explicit GroupNeeds(std::vector<Rational> found) : found_(std::move(found)) {}

  [[nodiscard]] Rational at(std::size_t place, const CurvePoints& points) const {
    return course_ ? course_->at(points[place]) : found_[place];
  }
  /// At any of the points, which must go up.
  [[nodiscard]] Rational most(const CurvePoints& points) const;
  /// Null unless it is straight.
  [[nodiscard]] const NeedCourse* straight() const {
    return course_ && course_->is_straight() ? &*course_ : nullptr;
  }

 private:
  std::optional<NeedCourse> course_;
  std::vector<Rational> found_;
};

class ItemCourse {
 public:
  /// `needs` has one entry a group of the plan, at least one.
  ItemCourse(const ItemPlan& plan, std::vector<GroupNeeds> needs, const CurvePoints& points,
             Unit money);

  [[nodiscard]] const ItemPlan& plan() const { return *plan_; }
  [[nodiscard]] const std::vector<GroupNeeds>& needs() const { return needs_; }
  /// Whether every need grows by equal steps from point to point.
  [[nodiscard]] bool is_straight() const { return straight_; }
  /// Whether costs under one cover grow by equal steps too: not where amounts on hand, each of a
  /// value of its own, are used up on the way.
  [[nodiscard]] bool has_straight_costs() const { return straight_ && !has_stock_; }
  /// What is on hand of a group, and goes before its packs.
  [[nodiscard]] const Rational& held(std::size_t group) const { return held_[group]; }

  /// From this point on, as far as one cover goes; where needs are not straight, or the points not
  /// even, perhaps less far. Throws the errors of the covers.
  [[nodiscard]] Stretch stretch_from(std::size_t place) const;
  /// To buy of the first group, at any of the points, which must go up.
  [[nodiscard]] Rational most_to_buy() const;
  /// Whether some group can be bought: limits of the offers may be in the way.
  [[nodiscard]] bool can_be_bought(std::size_t place) const;
  /// Of the need, what is not on hand; below zero where more is on hand.
  [[nodiscard]] Rational to_buy_at(std::size_t place, const Stretch& stretch) const;
  /// In money.
  [[nodiscard]] Costs costs_at(std::size_t place, const Stretch& stretch) const;
  /// What they change by from point to point; only where they are straight.
  [[nodiscard]] Costs costs_a_point(const Stretch& stretch) const;

 private:
  struct Reach;

  [[nodiscard]] Rational to_buy_of(std::size_t group, std::size_t place) const;
  [[nodiscard]] bool can_be_bought(std::size_t group, std::size_t place) const;
  [[nodiscard]] std::size_t number_of(const Stretch& stretch) const;
  [[nodiscard]] Reach reach_of(std::size_t group, std::size_t place) const;
  [[nodiscard]] std::size_t last_within(std::size_t group, std::size_t place,
                                        const Reach& reach) const;
  [[nodiscard]] Rational step_of(std::size_t group) const;

  const ItemPlan* plan_;
  std::vector<GroupNeeds> needs_;
  const CurvePoints* points_;
  Rational per_money_;
  bool straight_;
  std::vector<Rational> held_;  // by group
  bool has_stock_ = false;
};

}  // namespace scalepan
