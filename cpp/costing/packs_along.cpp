#include "costing/packs_along.hpp"

#include <vector>

#include "costing/function_arguments.hpp"
#include "costing/kitchen_things.hpp"

namespace scalepan {

namespace {

/// What is bought all along a stretch, as it is at two of its points.
class PacksAlong final : public MovingThing {
 public:
  struct Point {
    Value packs;
    Rational need;
  };

  PacksAlong(RatioForm need, Point near, Point far)
      : need_(std::move(need)), near_(std::move(near)), far_(std::move(far)) {}

  /// Of the kind that is bought.
  [[nodiscard]] const RatioForm& need() const { return need_; }
  [[nodiscard]] const PacksThing& packs() const { return thing<PacksThing>(near_.packs); }
  /// What a function of packs alone comes to.
  [[nodiscard]] RatioForm told(const Function& function) const {
    return line_through({near_.need, at(function, near_)}, {far_.need, at(function, far_)}, need_);
  }

 private:
  static Rational at(const Function& function, const Point& point) {
    return std::get<Rational>(function.run(Values(&point.packs, 1)));
  }

  RatioForm need_;
  Point near_;
  Point far_;
};

/// Ends the stretch where another cover meets the need, which is above zero and within all limits.
void note_cover(const CoverFunction& covers, const RatioForm& to_buy, Reach& reach) {
  const auto from = to_buy.at(reach.from());
  if (!from) throw NoForm{"a need grows beyond all bounds"};
  const int direction = to_buy.direction();
  if (direction > 0) reach.turns_at(to_buy.where(covers.step_above(*from)->upto));
  if (direction < 0) reach.turns_at(to_buy.where(covers.step(*from).after));
}

/// Ends the stretch where the need of a group is met in another way.
void note_turns(const OfferGroup* group, const RatioForm& need, Reach& reach) {
  RatioForm to_buy = need;
  if (reach.sign_of(to_buy) <= 0 || group == nullptr) return;
  for (const OnHand& held : group->on_hand) {
    to_buy = to_buy - RatioForm::constant(held.amount);
    if (reach.sign_of(to_buy) <= 0) return;
  }
  if (group->covers == nullptr) return;
  const auto most = group->covers->most();
  if (most && reach.sign_of(to_buy - RatioForm::constant(*most)) > 0) return;
  note_cover(*group->covers, to_buy, reach);
}

const PacksAlong& moving(const Along& packs) {
  return dynamic_cast<const PacksAlong&>(*std::get<MovingPointer>(packs));
}

}  // namespace

Along packs_along(const Function& function, std::span<const Along> arguments, Reach& reach) {
  for (std::size_t i = 0; i < arguments.size(); i += 2) {
    const auto& offers = thing<OffersThing>(std::get<ThingPointer>(arguments[i]));
    note_turns(offers.group(), std::get<RatioForm>(arguments[i + 1]), reach);
  }
  const Rational near = reach.inside();
  const Rational far = (reach.from() + near) / Rational(2);
  Value packs = function.run(values_at(arguments, near));
  const std::size_t kind = thing<PacksThing>(packs).kind();
  const RatioForm& need = std::get<RatioForm>(arguments[2 * kind + 1]);
  PacksAlong::Point near_point{std::move(packs), *need.at(near)};
  PacksAlong::Point far_point{function.run(values_at(arguments, far)), *need.at(far)};
  return std::make_shared<const PacksAlong>(need, std::move(near_point), std::move(far_point));
}

Along told_along(const Function& function, std::span<const Along> arguments, Reach& /*unused*/) {
  return moving(arguments[0]).told(function);
}

Along share_along(const Function& /*unused*/, std::span<const Along> arguments, Reach& reach) {
  const bool moves = std::holds_alternative<MovingPointer>(arguments[0]);
  const PacksThing& packs = moves ? moving(arguments[0]).packs()
                                  : thing<PacksThing>(std::get<ThingPointer>(arguments[0]));
  const auto& amount = std::get<RatioForm>(arguments[packs.place_of_amount(arguments.size())]);
  const RatioForm need =
      moves ? moving(arguments[0]).need() : RatioForm::constant(packs.bought().need.coherent());
  if (need.is_constant()) return amount * RatioForm::constant(Rational(1) / need.number());
  reach.turns_at(need.where(Rational()));  // there no share is told
  return amount * inverse_of(need);
}

}  // namespace scalepan
