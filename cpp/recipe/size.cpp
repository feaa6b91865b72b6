#include "recipe/size.hpp"

#include "measure/told.hpp"

namespace scalepan {

std::string portions_text(const Rational& portions) {
  const std::string count = tell(Quantity(portions)).text;
  return count + (portions == Rational(1) ? " portion" : " portions");
}

}  // namespace scalepan
