#include "food/catalog.hpp"

#include <algorithm>
#include <array>
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

/// The first meaning that `fits`, where all that do are of one food.
template <typename Fits>
const FoodName* one_food(const std::vector<FoodName>& meanings, Fits fits) {
  const FoodName* first = nullptr;
  for (const FoodName& meaning : meanings) {
    if (!fits(meaning)) continue;
    if (first != nullptr && first->food != meaning.food) return nullptr;
    if (first == nullptr) first = &meaning;
  }
  return first;
}

/// What the name means in a region; null where that is open.
const FoodName* settled(const std::vector<FoodName>& meanings, const std::string& region) {
  const auto of = [](const std::string& wanted) {
    return [&wanted](const FoodName& meaning) { return meaning.region == wanted; };
  };
  if (!region.empty()) {
    if (std::ranges::any_of(meanings, of(region))) return one_food(meanings, of(region));
    if (const FoodName* everywhere = one_food(meanings, of(""))) return everywhere;
  }
  return one_food(meanings, [](const FoodName& /*any*/) { return true; });
}

/// How a recipe settles a name: `region = "GB", or names = { cornflour = "corn_starch" }`.
std::string choice_text(const std::string& plain, const std::vector<FoodName>& meanings) {
  std::string text;
  for (const FoodName& meaning : meanings) {
    if (meaning.region.empty() || settled(meanings, meaning.region) == nullptr) continue;
    text = "region = \"" + meaning.region + "\", or ";
    break;
  }
  const bool bare = std::ranges::all_of(plain, is_letter);
  return text + "names = { " + (bare ? plain : "\"" + plain + "\"") + " = \"" +
         meanings.front().food + "\" }";
}

[[noreturn]] void fail_ambiguous(const Catalog& catalog, std::string_view name,
                                 const std::vector<FoodName>& meanings) {
  std::string choices;
  std::set<std::string_view> told;
  for (const FoodName& meaning : meanings) {
    if (!told.insert(meaning.food).second) continue;
    choices += (choices.empty() ? "" : ", ") + catalog.food(meaning.food)->plural;
    if (!meaning.region.empty()) choices += " (" + meaning.region + ")";
  }
  fail("food.ambiguous", "\"" + excerpt(name) + "\" means more than one food",
       "write one of: " + choices +
           "; or choose in the recipe: " + choice_text(plain_name(name), meanings));
}

void expect_region(std::string_view region, const std::set<std::string, std::less<>>& regions) {
  if (region.empty() || regions.contains(region)) return;
  std::string all;
  for (const std::string& known : regions) all += (all.empty() ? "" : ", ") + known;
  fail("food.region", "no food has a name of the region \"" + excerpt(region) + "\"",
       all.empty() ? "" : "there are: " + all);
}

/// Of one name's meanings the one of a food; null where it has none.
const FoodName* name_of_food(const std::vector<FoodName>* meanings, std::string_view food) {
  if (meanings == nullptr) return nullptr;
  const auto found = std::ranges::find(*meanings, food, &FoodName::food);
  return found == meanings->end() ? nullptr : &*found;
}

/// The food of an id, also of one written with spaces.
const Food* food_of_id(const Catalog& catalog, std::string id) {
  std::ranges::replace(id, ' ', '_');
  return catalog.food(id);
}

/// What is chosen for the name, or for its singular or plural; null where nothing is.
const std::string* choice_of(const NameChoices& choices, const std::string& plain,
                             const std::vector<FoodName>* meanings) {
  const auto chosen = [&](const std::string& key) {
    const auto found = choices.foods.find(key);
    return found == choices.foods.end() ? nullptr : &found->second;
  };
  if (const std::string* food = chosen(plain)) return food;
  if (choices.foods.empty() || meanings == nullptr) return nullptr;
  for (const FoodName& meaning : *meanings) {
    for (const std::string* form : {&meaning.name, &meaning.plural}) {
      if (const std::string* food = chosen(plain_name(*form))) return food;
    }
  }
  return nullptr;
}

/// How a food that is not there comes in.
std::string own_food_hint(const Catalog& catalog, std::string_view food) {
  const std::string nearest = nearest_hint(catalog.nearest(food));
  return nearest + (nearest.empty() ? "" : "; ") +
         "a food of your own needs a table with a column food: --foods FILE, or foods=";
}

bool says_the_same(const Fact& a, const Fact& b) {
  return a.kind == b.kind && a.state == b.state && a.size == b.size && a.from == b.from &&
         a.to == b.to;
}

}  // namespace

std::string_view rounding_spoils(const Food& food) {
  constexpr std::array<std::string_view, 3> keys{"leavening", "salt", "gelling"};
  for (const std::string_view key : keys) {
    if (std::ranges::find(food.cautions, key) != food.cautions.end()) return key;
  }
  return {};
}

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
  if (const std::string& id = food.id; foods_.contains(id)) {
    fail("food.duplicate", "the food " + id + " is there twice");
  }
  if (!base_.empty()) note(food);
  std::string id = food.id;
  foods_.emplace(std::move(id), std::move(food));
}

void Catalog::add(FoodName name) {
  if (!foods_.contains(name.food)) {
    fail("food.unknown", "the name \"" + name.name + "\" belongs to an unknown food " + name.food,
         own_food_hint(*this, name.food));
  }
  if (!base_.empty()) note(name);
  name.order = name_count_++;
  for (const std::string& text : std::set<std::string>{name.name, name.plural}) {
    std::vector<FoodName>& meanings = names_[plain_name(text)];
    const bool known = std::ranges::any_of(meanings, [&](const FoodName& other) {
      return other.food == name.food && other.region == name.region;
    });
    if (!known) meanings.push_back(name);
  }
  if (!name.region.empty()) regions_.insert(name.region);
}

void Catalog::add(Fact fact) {
  if (base_.empty()) return put(std::move(fact));
  put(fact);
  note(fact);
}

void Catalog::put(Fact fact) {
  if (fact.kind == FactKind::word) {
    scalepan::expect_valid(fact);
    conventions_.push_back(std::make_shared<const Fact>(std::move(fact)));
    return;
  }
  if (!foods_.contains(fact.food)) {
    fail("food.unknown", "the fact " + fact.id + " is about an unknown food " + fact.food,
         own_food_hint(*this, fact.food));
  }
  scalepan::expect_valid(fact);
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

std::optional<FoundFood> Catalog::find(std::string_view name, const NameChoices& choices) const {
  expect_region(choices.region, regions_);
  const std::string plain = plain_name(name);
  const auto found = names_.find(plain);
  const auto* meanings = found == names_.end() ? nullptr : &found->second;
  if (const std::string* chosen = choice_of(choices, plain, meanings)) {
    const Food* chosen_food = food(*chosen);
    if (chosen_food == nullptr) chosen_food = &known(*chosen, NameChoices{choices.region});
    return FoundFood{chosen_food, name_of_food(meanings, chosen_food->id)};
  }
  if (meanings == nullptr) {
    const Food* by_id = food_of_id(*this, plain);
    return by_id == nullptr ? std::nullopt : std::optional(FoundFood{by_id, nullptr});
  }
  const FoodName* meaning = settled(*meanings, choices.region);
  if (meaning == nullptr) fail_ambiguous(*this, name, *meanings);
  return FoundFood{food(meaning->food), meaning};
}

void Catalog::choose(NameChoices choices) {
  expect_valid(choices);
  choices_ = std::move(choices);
  if (!base_.empty()) note(choices_);
}

void Catalog::expect_valid(const NameChoices& choices) const {
  expect_region(choices.region, regions_);
  for (const auto& [name, chosen] : choices.foods) {
    if (food(chosen) == nullptr) static_cast<void>(known(chosen, NameChoices{choices.region}));
  }
}

const Food& Catalog::known(std::string_view name, const NameChoices& choices) const {
  const auto found = find(name, choices);
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

std::vector<const Fact*> Catalog::conventions() const {
  std::vector<const Fact*> result;
  for (const auto& fact : conventions_) result.push_back(fact.get());
  return result;
}

std::vector<const Fact*> Catalog::beside(const Fact& fact) const {
  std::vector<const Fact*> others = facts(fact.food);
  std::erase_if(others, [&](const Fact* other) {
    return other->id == fact.id || !says_the_same(*other, fact);
  });
  return others;
}

void Catalog::prefer(std::string_view fact) {
  for (auto& [food, known] : facts_) {
    const auto found = std::ranges::find(known, fact, [](const auto& one) { return one->id; });
    if (found == known.end()) continue;
    Fact preferred = **found;
    preferred.layer = FactLayer::own;
    known.erase(found);
    --fact_count_;
    put(std::move(preferred));
    if (!base_.empty()) note(PreferredFact{std::string(fact)});
    return;
  }
  std::vector<std::string_view> ids;
  for (const auto& [food, known] : facts_) {
    for (const auto& one : known) ids.push_back(one->id);
  }
  fail("fact.unknown", "no fact is called \"" + excerpt(fact) + "\"",
       nearest_hint(nearest_names(fact, ids)));
}

}  // namespace scalepan
