#include "costing/pooling.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace scalepan {

namespace {

/// Ways to pool, the largest pools first.
enum class Way : std::uint8_t { together, by_kind, by_dish };
constexpr std::array ways{Way::together, Way::by_kind, Way::by_dish};

using WayByItem = std::map<std::string, Way>;

std::string kind_text(const Form& form) {
  return std::string(name_of(form.kind)) + " " + std::string(symbol_of(form.stage)) + " " +
         form.detail;
}

/// What an item takes at the till; nothing where a line has no price that has one apart.
using Till = std::optional<Rational>;

class Pooling {
 public:
  Pooling(const PooledLines& given, const std::shared_ptr<const NamedPrices>& prices,
          CostOptions options)
      : given_(given), prices_(prices), options_(options), kinds_(given.lines.size()) {
    std::vector<std::size_t> first(given.apart.size(), given.lines.size());
    for (std::size_t i = given.lines.size(); i-- > 0;) first[given.dish_of[i]] = i;
    for (std::size_t dish = 0; dish < given.apart.size(); ++dish) {
      for (const ItemCost& item : given.apart[dish]->items()) note_apart(item, first[dish]);
    }
  }

  Provisions choose() const {
    Provisions together = provisions({});
    const std::vector<std::string> contested = contested_in(together);
    if (contested.empty()) return together;
    std::map<std::string, std::array<Till, ways.size()>> tills;
    for (const Way way : ways) {
      WayByItem all;
      for (const std::string& key : contested) all[key] = way;
      const auto by_item = tills_of(way == Way::together ? together : provisions(all));
      for (const std::string& key : contested) {
        tills[key].at(static_cast<std::size_t>(way)) = by_item.at(key);
      }
    }
    WayByItem chosen;
    for (const std::string& key : contested) chosen[key] = cheapest(tills.at(key));
    return provisions(chosen);
  }

 private:
  void note_apart(const ItemCost& item, std::size_t first) {
    if (item.group == nullptr) return;
    const std::string& key = given_.lines[first + item.plan->lines.front()].item_key;
    apart_[key] += item.costs.till;
    for (const std::size_t line : item.plan->lines) {
      kinds_[first + line] = kind_text(item.group->form);
    }
  }

  [[nodiscard]] std::string pool_of(std::size_t line, const WayByItem& by_item) const {
    if (kinds_[line].empty()) return "without a price";
    const auto found = by_item.find(given_.lines[line].item_key);
    const Way way = found == by_item.end() ? Way::together : found->second;
    if (way == Way::by_kind) return kinds_[line];
    return way == Way::by_dish ? "dish " + std::to_string(given_.dish_of[line]) : "";
  }

  [[nodiscard]] Provisions provisions(const WayByItem& by_item) const {
    std::vector<LineTerms> terms = given_.terms;
    for (std::size_t i = 0; i < terms.size(); ++i) terms[i].pool = pool_of(i, by_item);
    return {given_.lines, std::move(terms), prices_, options_};
  }

  [[nodiscard]] std::map<std::string, Till> tills_of(const Provisions& provisions) const {
    std::map<std::string, Till> tills;
    for (const auto& [key, till] : apart_) tills[key] = Rational(0);
    for (const ItemCost& item : provisions.items()) {
      const std::size_t line = item.plan->lines.front();
      if (kinds_[line].empty()) continue;
      Till& till = tills.at(given_.lines[line].item_key);
      if (item.group == nullptr) till.reset();
      if (till) *till += item.costs.till;
    }
    return tills;
  }

  /// Items for which other ways may be better: more than one kind of pack is taken apart, or the
  /// pools cost more or have no price.
  [[nodiscard]] std::vector<std::string> contested_in(const Provisions& together) const {
    std::map<std::string_view, std::string_view> kind_by_item;
    std::map<std::string_view, bool> unlike;
    for (std::size_t i = 0; i < kinds_.size(); ++i) {
      if (kinds_[i].empty()) continue;
      const auto [known, fresh] = kind_by_item.emplace(given_.lines[i].item_key, kinds_[i]);
      if (known->second != kinds_[i]) unlike[known->first] = true;
    }
    std::vector<std::string> contested;
    for (const auto& [key, till] : tills_of(together)) {
      if (unlike[key] || !till || *till > apart_.at(key)) contested.push_back(key);
    }
    return contested;
  }

  static Way cheapest(const std::array<Till, ways.size()>& tills) {
    Way best = Way::by_dish;  // as apart, so that it always has a price
    for (std::size_t i = ways.size(); i-- > 0;) {
      if (tills.at(i) && *tills.at(i) <= *tills.at(static_cast<std::size_t>(best)))
        best = ways.at(i);
    }
    return best;
  }

  const PooledLines& given_;
  const std::shared_ptr<const NamedPrices>& prices_;
  CostOptions options_;
  std::vector<std::string> kinds_;         // that a line is bought by apart; empty without a price
  std::map<std::string, Rational> apart_;  // the tills of the dishes, by item
};

}  // namespace

Provisions pooled(const PooledLines& pooled, const std::shared_ptr<const NamedPrices>& prices,
                  CostOptions options) {
  return Pooling(pooled, prices, options).choose();
}

}  // namespace scalepan
