#include "sheet/shapes.hpp"

#include <algorithm>
#include <functional>
#include <utility>

#include "sheet/functions.hpp"
#include "sheet/token.hpp"

namespace scalepan {

namespace {

constexpr char name_mark = '\1';
// Up to that many, looking through all is faster than a table.
constexpr std::size_t few_inputs = 16;
constexpr std::size_t fewest_slots = 64;

std::size_t mixed(std::size_t hash, std::size_t next) {
  hash ^= next + 0x9E3779B97F4A7C15U + (hash << 6U) + (hash >> 2U);
  return hash * 0xD6E8FEB86659FD93U;
}

/// A unit is interned: its address tells it from others.
std::size_t hash_of(const Unit& unit) { return std::hash<const void*>{}(&unit.symbol()); }

}  // namespace

void Scan::clear() {
  shape_.clear();
  names_.clear();
  occurrences_.clear();
  cells_.clear();
  types_.clear();
  places_.clear();
}

bool Scan::read(std::string_view text, const Names& names, UnitMemo& units) {
  clear();
  const bool readable = find_names(text, units);
  // All at once, so that the machine can wait for the memory of several names together.
  for (const Written& written : names_) {
    const auto found = written.total ? names.find_total(written.name) : names.find(written.name);
    if (!found) return false;
    occurrences_.push_back(input_for(*found));
  }
  return readable;
}

bool Scan::find_names(std::string_view text, UnitMemo& units) {
  TokenReader tokens(text, units);
  std::size_t copied = 0;
  bool sums = false;  // the function is the one that takes a column
  bool opens_sum = false;
  for (Token token = tokens.next(); token.kind != TokenKind::end; token = tokens.next()) {
    if (token.kind == TokenKind::unreadable) return false;
    if (token.kind == TokenKind::name) {
      names_.push_back({token.text, opens_sum});
      shape_.append(text, copied, token.spot.text - copied);
      shape_ += name_mark;
      copied = token.spot.text + token.text.size();
    }
    opens_sum = sums && token.kind == TokenKind::open;
    sums = token.kind == TokenKind::function && token.text == sum_function;
  }
  shape_.append(text, copied);
  return true;
}

std::uint32_t Scan::input_for(const Names::Found& found) {
  const auto next = static_cast<std::uint32_t>(cells_.size());
  if (next < few_inputs) {
    const auto known = std::ranges::find(cells_, found.cell);
    if (known != cells_.end()) return static_cast<std::uint32_t>(known - cells_.begin());
  } else {
    if (places_.empty()) {
      for (std::uint32_t i = 0; i < next; ++i) places_.emplace(cells_[i], i);
    }
    const auto [known, fresh] = places_.emplace(found.cell, next);
    if (!fresh) return known->second;
  }
  cells_.push_back(found.cell);
  types_.push_back(found.type);
  return next;
}

std::size_t Scan::hash() const {
  std::size_t hash = std::hash<std::string_view>{}(shape_);
  for (const std::uint32_t occurrence : occurrences_) hash = mixed(hash, occurrence);
  for (const ValueType& type : types_) {
    hash = mixed(hash, static_cast<std::size_t>(type.kind));
    hash = mixed(hash, hash_of(type.shown));
    hash = mixed(hash, hash_of(type.money));
  }
  return hash;
}

std::shared_ptr<const Programme> ShapeTable::find(std::size_t hash, const Scan& scan) const {
  if (slots_.empty()) return nullptr;
  const std::size_t mask = slots_.size() - 1;
  for (std::size_t at = hash & mask; slots_[at].taken; at = (at + 1) & mask) {
    if (slots_[at].hash != hash) continue;
    auto programme = slots_[at].programme.lock();
    if (programme && programme->shape == scan.shape() &&
        programme->occurrences == scan.occurrences() && programme->input_types == scan.types()) {
      return programme;
    }
  }
  return nullptr;
}

void ShapeTable::add(std::size_t hash, const std::shared_ptr<const Programme>& programme) {
  if (2 * (taken_ + 1) > slots_.size()) make_room();
  put({hash, true, programme});
}

void ShapeTable::put(Slot slot) {
  const std::size_t mask = slots_.size() - 1;
  std::size_t at = slot.hash & mask;
  while (slots_[at].taken) at = (at + 1) & mask;
  slots_[at] = std::move(slot);
  ++taken_;
}

/// Leaves out what no formula holds any more.
void ShapeTable::make_room() {
  std::vector<Slot> old = std::exchange(slots_, {});
  std::erase_if(old, [](const Slot& slot) { return !slot.taken || slot.programme.expired(); });
  std::size_t size = fewest_slots;
  while (size < 4 * (old.size() + 1)) size *= 2;
  slots_.resize(size);
  taken_ = 0;
  for (Slot& slot : old) put(std::move(slot));
}

}  // namespace scalepan
