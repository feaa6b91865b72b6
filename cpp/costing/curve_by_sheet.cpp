#include "costing/curve_by_sheet.hpp"

#include <utility>

#include "costing/kitchen_things.hpp"

namespace scalepan {

namespace {

Rational money_in(const CellValue& value) {
  const auto* interval = std::get_if<Interval>(&value.value);
  const Rational& number = interval == nullptr ? std::get<Rational>(value.value) : interval->low;
  return number / value.type.shown.ratio();
}

SheetPoint point_from(const std::vector<CellValue>& values) {
  SheetPoint point;
  point.costs.till = money_in(values[0]);
  point.costs.used = money_in(values[1]);
  point.costs.thrown = money_in(values[2]);
  point.borne = money_in(values[3]);
  for (std::size_t i = cost_names.size(); i < values.size(); ++i) {
    const Thing& thing = *std::get<ThingPointer>(values[i].value);
    const ItemCost& item = dynamic_cast<const PacksThing&>(thing).bought();
    point.packs.push_back(item.packs());
    point.even.push_back(!item.cover.total.is_zero() && item.cover.leftover.is_zero());
  }
  return point;
}

}  // namespace

SheetCurve curve_by_sheet(const Costing& costing, const CurvePoints& points,
                          const std::function<void(std::size_t)>& pulse) {
  SheetCurve curve;
  std::vector<std::string> names(cost_names.begin(), cost_names.end());
  const auto provisions = costing.now();
  for (std::size_t i = 0; i < provisions->items().size(); ++i) {
    if (provisions->items()[i].group == nullptr) continue;
    curve.items.push_back(provisions->items()[i].plan->item);
    names.push_back(costing.cells().packs_cell(i));
  }
  for (std::size_t place = 0; place < points.size(); ++place) {
    pulse(place);
    const Rational portions = points[place];
    if (portions.sign() <= 0) static_cast<void>(costing.recipe().scaled(portions));
    curve.points.push_back(point_from(costing.cells().at(portions, names)));
  }
  return curve;
}

}  // namespace scalepan
