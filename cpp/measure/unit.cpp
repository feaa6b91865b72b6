#include "measure/unit.hpp"

#include <algorithm>
#include <cstdlib>
#include <deque>
#include <mutex>
#include <unordered_map>

#include "measure/unit_table.hpp"

namespace scalepan {

namespace {

std::vector<Unit::Part> merged(const std::vector<Unit::Part>& parts) {
  std::vector<Unit::Part> result;
  for (const auto& [unit, power] : parts) {
    const auto same = std::ranges::find(result, unit, &Unit::Part::first);
    if (same == result.end()) {
      result.emplace_back(unit, power);
    } else {
      same->second += power;
    }
  }
  std::erase_if(result, [](const Unit::Part& part) { return part.second == 0; });
  return result;
}

void add_part(std::string& text, const std::string& symbol, int power) {
  if (!text.empty()) text += ' ';
  text += symbol;
  if (power != 1) text += "^" + std::to_string(power);
}

std::string symbol_of_parts(const std::vector<Unit::Part>& parts) {
  std::string above;
  std::string below;
  int count_below = 0;
  for (const auto& [unit, power] : parts) {
    add_part(power > 0 ? above : below, unit->symbol, std::abs(power));
    if (power < 0) ++count_below;
  }
  if (below.empty()) return above;
  if (above.empty()) above = "1";
  return above + "/" + (count_below > 1 ? "(" + below + ")" : below);
}

bool is_stage(const Unit::Part& part) { return part.first->dimension.has_stages(); }

}  // namespace

/// All units in use. Entries never move and never go, so a reader needs no lock.
class Unit::Pool {
 public:
  static Pool& shared() {
    static Pool pool;
    return pool;
  }

  const Data* intern(const std::vector<Part>& written) {
    std::vector<Part> parts = merged(written);
    std::string symbol = symbol_of_parts(parts);
    const std::scoped_lock lock(mutex_);
    const auto found = by_symbol_.find(symbol);
    if (found != by_symbol_.end()) return found->second;
    Data& data = entries_.emplace_back(described(std::move(parts), std::move(symbol)));
    by_symbol_.emplace(data.symbol, &data);
    return &data;
  }

 private:
  static Data described(std::vector<Part> parts, std::string symbol) {
    Data data;
    data.ratio = 1;
    for (const auto& [unit, power] : parts) {
      data.dimension = data.dimension * unit->dimension.power(power);
      data.ratio *= power == 1 ? unit->ratio : scalepan::power(unit->ratio, power);
    }
    std::vector<Part> kind;
    std::ranges::copy_if(parts, std::back_inserter(kind), std::not_fn(is_stage));
    const bool simple = kind.size() == 1 && kind.front().second == 1;
    data.label = simple ? kind.front().first->label : symbol_of_parts(kind);
    data.plural = simple ? kind.front().first->plural : data.label;
    data.symbol = std::move(symbol);
    data.parts = std::move(parts);
    return data;
  }

  std::mutex mutex_;
  std::deque<Data> entries_;
  std::unordered_map<std::string, const Data*> by_symbol_;
};

Unit::Unit() {
  static const Data* const number = Pool::shared().intern({});
  data_ = number;
}

Unit::Unit(std::vector<Part> parts) : data_(Pool::shared().intern(parts)) {}

Unit Unit::named(std::string_view symbol) { return Unit({{&unit_with_symbol(symbol), 1}}); }

Unit Unit::coherent(Dimension dimension) {
  std::vector<Part> parts;
  for (const auto& [base, power] : dimension.factors()) {
    const bool volume = base == base::length && power % 3 == 0;
    parts.emplace_back(&unit_with_symbol(volume ? "mL" : base.symbol()),
                       volume ? power / 3 : power);
  }
  return Unit(std::move(parts));
}

Unit Unit::at(Stage stage) const {
  if (stage == Stage::none) return *this;
  std::vector<Part> staged = parts();
  staged.emplace_back(&unit_with_symbol(symbol_of(stage)), 1);
  return Unit(std::move(staged));
}

Unit Unit::without_stages() const {
  std::vector<Part> kept;
  std::ranges::copy_if(parts(), std::back_inserter(kept), std::not_fn(is_stage));
  return Unit(std::move(kept));
}

}  // namespace scalepan
