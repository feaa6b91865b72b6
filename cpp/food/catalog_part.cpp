#include <algorithm>
#include <array>
#include <iterator>

#include "food/catalog.hpp"

namespace scalepan {

std::vector<const Food*> Catalog::foods() const {
  std::vector<const Food*> foods;
  for (const auto& [id, food] : foods_) foods.push_back(&food);
  return foods;
}

std::vector<FoodName> Catalog::names() const {
  std::vector<FoodName> names;
  for (const auto& [text, meanings] : names_) {
    names.insert(names.end(), meanings.begin(), meanings.end());
  }
  std::ranges::sort(names, {}, &FoodName::order);
  const auto twice = std::ranges::unique(names, {}, &FoodName::order);
  names.erase(twice.begin(), twice.end());
  return names;
}

std::vector<const Fact*> Catalog::facts() const {
  std::vector<const Fact*> all;
  for (const auto& [food, known] : facts_) {
    for (const auto& fact : known) all.push_back(fact.get());
  }
  for (const auto& word : conventions_) all.push_back(word.get());
  return all;
}

void Catalog::name_base(std::string base) {
  base_ = std::move(base);
  since_base_.clear();
}

void Catalog::note(CatalogChange change) { since_base_.push_back(std::move(change)); }

std::vector<CatalogChange> Catalog::changes() const {
  return base_.empty() ? content() : since_base_;
}

std::vector<CatalogChange> Catalog::content() const {
  Catalog noted;
  for (const auto& [id, food] : foods_) noted.note(food);
  for (FoodName& name : names()) {
    name.order = 0;
    noted.note(std::move(name));
  }
  for (const Fact* fact : facts()) noted.note(*fact);
  noted.note(choices_);
  return std::move(noted.since_base_);
}

void Catalog::make(CatalogChange change) {
  if (auto* food = std::get_if<Food>(&change)) {
    add(std::move(*food));
  } else if (auto* name = std::get_if<FoodName>(&change)) {
    add(std::move(*name));
  } else if (auto* fact = std::get_if<Fact>(&change)) {
    add(std::move(*fact));
  } else if (const auto* preferred = std::get_if<PreferredFact>(&change)) {
    prefer(preferred->id);
  } else {
    choose(std::get<NameChoices>(std::move(change)));
  }
}

Catalog Catalog::part(const std::set<std::string>& foods) const {
  std::set<std::string> about = foods;
  for (const auto& [name, food] : choices_.foods) about.insert(known(food, {}).id);
  const std::vector<FoodName> all = names();
  std::vector<FoodName> kept;
  const auto shares_a_name = [&](const FoodName& name) {
    return std::ranges::any_of(std::array{name.name, name.plural}, [&](const std::string& text) {
      return std::ranges::any_of(names_.at(plain_name(text)), [&](const FoodName& meaning) {
        return about.contains(meaning.food);
      });
    });
  };
  std::ranges::copy_if(all, std::back_inserter(kept), shares_a_name);
  // A region is one by a name of its own.
  const auto of_region = [&](const FoodName& name) { return name.region == choices_.region; };
  if (!choices_.region.empty() && std::ranges::none_of(kept, of_region)) {
    kept.push_back(*std::ranges::find_if(all, of_region));
  }
  std::set<std::string> named = about;
  for (const FoodName& name : kept) named.insert(name.food);
  Catalog part;
  for (const std::string& id : named) {
    if (const Food* known_food = food(id)) part.add(*known_food);
  }
  for (FoodName& name : kept) part.add(std::move(name));
  for (const Fact* fact : facts()) {
    if (fact->kind == FactKind::word || about.contains(fact->food)) part.add(*fact);
  }
  part.choices_ = choices_;
  return part;
}

}  // namespace scalepan
