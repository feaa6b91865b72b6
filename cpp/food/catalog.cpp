#include "food/catalog.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "exact/error.hpp"
#include "exact/text.hpp"
#include "measure/nearest.hpp"

namespace scalepan {

namespace {

bool comes_before(const Fact& a, const Fact& b) {
  return a.layer != b.layer ? a.layer < b.layer : a.id < b.id;
}

void expect_apart(const Fact& known, const Fact& added) {
  if (known.id == added.id) {
    fail("fact.duplicate", "the fact " + added.id + " is there twice");
  }
  const bool both_own = known.layer == FactLayer::own && added.layer == FactLayer::own;
  if (both_own && known.kind == added.kind && known.state == added.state &&
      known.size == added.size) {
    fail("fact.duplicate", "the facts " + known.id + " and " + added.id + " say the same thing",
         "leave one of them out");
  }
}

[[noreturn]] void fail_ambiguous(const Catalog& catalog, std::string_view name,
                                 const std::vector<FoodName>& meanings) {
  std::string choices;
  for (const FoodName& meaning : meanings) {
    choices += (choices.empty() ? "" : ", ") + catalog.food(meaning.food)->plural;
    if (!meaning.region.empty()) choices += " (" + meaning.region + ")";
  }
  fail("food.ambiguous", "\"" + excerpt(name) + "\" means more than one food",
       "write one of: " + choices);
}

}  // namespace

std::string plain_name(std::string_view name) {
  std::string plain;
  for (const char c : name) {
    const bool space = is_space(c);
    if (space && (plain.empty() || plain.back() == ' ')) continue;
    plain += space ? ' ' : lower(c);
  }
  if (!plain.empty() && plain.back() == ' ') plain.pop_back();
  return plain;
}

void Catalog::add(Food food) {
  const std::string id = food.id;
  if (!foods_.emplace(id, std::move(food)).second) {
    fail("food.duplicate", "the food " + id + " is there twice");
  }
}

void Catalog::add(FoodName name) {
  if (!foods_.contains(name.food)) {
    fail("food.unknown", "the name \"" + name.name + "\" belongs to an unknown food " + name.food);
  }
  for (const std::string& text : std::set<std::string>{name.name, name.plural}) {
    std::vector<FoodName>& meanings = names_[plain_name(text)];
    const bool known = std::ranges::any_of(
        meanings, [&](const FoodName& other) { return other.food == name.food; });
    if (!known) meanings.push_back(name);
  }
}

void Catalog::add(Fact fact) {
  if (!foods_.contains(fact.food)) {
    fail("food.unknown", "the fact " + fact.id + " is about an unknown food " + fact.food,
         nearest_hint(nearest(fact.food)));
  }
  expect_valid(fact);
  auto& known = facts_[fact.food];
  for (const auto& other : known) expect_apart(*other, fact);
  const auto place = std::ranges::upper_bound(
      known, fact, comes_before, [](const auto& other) -> const Fact& { return *other; });
  known.insert(place, std::make_shared<const Fact>(std::move(fact)));
  ++fact_count_;
}

const Food* Catalog::food(std::string_view id) const {
  const auto found = foods_.find(id);
  return found == foods_.end() ? nullptr : &found->second;
}

std::optional<FoundFood> Catalog::find(std::string_view name) const {
  const auto found = names_.find(plain_name(name));
  if (found == names_.end()) {
    const Food* by_id = food(name);
    return by_id == nullptr ? std::nullopt : std::optional(FoundFood{by_id, nullptr});
  }
  if (found->second.size() > 1) fail_ambiguous(*this, name, found->second);
  const FoodName& meaning = found->second.front();
  return FoundFood{food(meaning.food), &meaning};
}

const Food& Catalog::known(std::string_view name) const {
  const auto found = find(name);
  if (found) return *found->food;
  fail("food.unknown", "no food is called \"" + excerpt(name) + "\"", nearest_hint(nearest(name)));
}

std::vector<std::string> Catalog::nearest(std::string_view name) const {
  std::vector<std::string_view> known;
  known.reserve(names_.size());
  for (const auto& [text, meanings] : names_) known.push_back(text);
  std::ranges::sort(known);
  return nearest_names(plain_name(name), known);
}

std::vector<const Fact*> Catalog::facts(std::string_view food) const {
  std::vector<const Fact*> result;
  const auto found = facts_.find(food);
  if (found == facts_.end()) return result;
  for (const auto& fact : found->second) result.push_back(fact.get());
  return result;
}

}  // namespace scalepan
