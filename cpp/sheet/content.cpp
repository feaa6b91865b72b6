#include "sheet/content.hpp"

#include <utility>

namespace scalepan {

namespace {

/// A free place of a list, or a new one at its end.
template <typename Item>
std::uint32_t place_in(std::vector<Item>& items, std::vector<std::uint32_t>& free) {
  if (free.empty()) {
    items.emplace_back();
    return static_cast<std::uint32_t>(items.size() - 1);
  }
  const std::uint32_t place = free.back();
  free.pop_back();
  return place;
}

}  // namespace

CellValue fitted(const CellValue& value, const ValueType& type) {
  const bool number = value.type.kind == ValueKind::quantity && value.type.dimension().is_number();
  // 75 % is a number as it stands, so it is a share of whatever stages.
  const bool share = type.kind == ValueKind::quantity && !type.dimension().is_number() &&
                     type.dimension().without_stages().is_number();
  const bool bare = number && value.type.shown == Unit();
  if (share && number && !bare) return {type, value.value};
  if (!bare || type.kind != ValueKind::quantity || type.dimension().is_number()) return value;
  const Rational ratio = type.shown.ratio();
  if (const auto* interval = std::get_if<Interval>(&value.value)) {
    Interval fit{interval->low * ratio, interval->high};
    if (fit.high) *fit.high *= ratio;
    return {type, fit};
  }
  return {type, std::get<Rational>(value.value) * ratio};
}

void Contents::set_kind(Cell cell, ContentKind kind) {
  cells_[cell].kind = static_cast<std::uint8_t>((cells_[cell].kind & overridden_bit) |
                                                static_cast<std::uint8_t>(kind));
}

void Contents::drop_detail(Cell cell) {
  const std::uint32_t detail = cells_[cell].detail;
  if (kind(cell) == ContentKind::given) {
    givens_[detail] = {};
    free_givens_.push_back(detail);
  } else if (kind(cell) == ContentKind::formula && --programmes_[detail].cells == 0) {
    places_.erase(programmes_[detail].programme.get());
    programmes_[detail].programme.reset();
    free_programmes_.push_back(detail);
  }
}

void Contents::put_given(Cell cell, CellValue value, std::string source) {
  drop_detail(cell);
  set_kind(cell, ContentKind::given);
  cells_[cell].detail = place_in(givens_, free_givens_);
  givens_[cells_[cell].detail] = {std::move(value), std::move(source)};
}

void Contents::put_formula(Cell cell, std::shared_ptr<const Programme> programme) {
  const auto known = places_.find(programme.get());
  const std::uint32_t place =
      known == places_.end() ? place_in(programmes_, free_programmes_) : known->second;
  ++programmes_[place].cells;
  if (known == places_.end()) {
    places_.emplace(programme.get(), place);
    programmes_[place].programme = std::move(programme);
  }
  drop_detail(cell);
  set_kind(cell, ContentKind::formula);
  cells_[cell].detail = place;
}

void Contents::put_total(Cell cell, std::size_t total) {
  drop_detail(cell);
  set_kind(cell, ContentKind::total);
  cells_[cell].detail = static_cast<std::uint32_t>(total);
}

void Contents::put_override(Cell cell, std::optional<Override> instead) {
  cells_[cell].kind &= kind_bits;
  if (instead) {
    cells_[cell].kind |= overridden_bit;
    overrides_.insert_or_assign(cell, std::move(*instead));
  } else {
    overrides_.erase(cell);
  }
}

void Contents::clear(Cell cell) {
  drop_detail(cell);
  put_override(cell, std::nullopt);
  set_kind(cell, ContentKind::none);
}

}  // namespace scalepan
