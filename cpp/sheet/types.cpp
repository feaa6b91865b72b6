#include "sheet/types.hpp"

namespace scalepan {

namespace {

std::string held_name(std::string_view held, const ValueType& type) {
  return std::string(held) + " of " + type.dimension().name() + " in " +
         type.money.dimension().coherent_symbol();
}

}  // namespace

bool ValueType::alike(const ValueType& other) const {
  return kind == other.kind && shown.dimension() == other.shown.dimension() &&
         money.dimension() == other.money.dimension();
}

std::string ValueType::name() const {
  switch (kind) {
    case ValueKind::flag:
      return "yes or no";
    case ValueKind::text:
      return "text";
    case ValueKind::food:
      return "a food";
    case ValueKind::offers:
      return held_name("offers", *this);
    case ValueKind::packs:
      return held_name("packs", *this);
    default:
      return dimension().name();
  }
}

}  // namespace scalepan
