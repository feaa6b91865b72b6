#include "measure/figure.hpp"

#include "measure/told.hpp"

namespace scalepan {

std::string figure_of(const Quantity& q) {
  const std::string exact = in_handy_unit(q).text();
  const bool money = q.dimension().currency().has_value();
  const Told told = money ? tell_money(q) : tell(q);
  if (told.is_exact() && money) return told.text;
  return told.is_exact() ? exact : told.text + "  (exactly " + exact + ")";
}

}  // namespace scalepan
