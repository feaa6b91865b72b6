#include "recipe/food_phrase.hpp"

#include "exact/error.hpp"
#include "exact/text.hpp"
#include "recipe/kitchen_words.hpp"

namespace scalepan {

namespace {

std::optional<FoundFood> find(const Catalog& catalog, std::string_view name, bool tinned) {
  if (tinned) {
    if (auto found = catalog.find("canned " + std::string(name))) return found;
  }
  return catalog.find(name);
}

}  // namespace

std::string FoodPhrase::key() const {
  if (!found) return "name " + plain_name(food);
  return found->near() ? "name " + plain_name(found->name->name) : "food " + found->food->id;
}

FoodPhrase read_food_phrase(const Catalog& catalog, std::string_view phrase, bool tinned) {
  FoodPhrase result{phrase, {}, find(catalog, phrase, tinned)};
  while (!result.found) {
    const std::string word = lower(result.food.substr(0, result.food.find(' ')));
    const std::string_view rest = trimmed(result.food.substr(word.size()));
    if (rest.empty() || !stage_of_preparation(word)) break;
    result.leading += (result.leading.empty() ? "" : " ") + word;
    result.food = rest;
    result.found = find(catalog, rest, tinned);
  }
  return result;
}

bool knows_food(const Catalog& catalog, std::string_view name) {
  if (name.empty()) return false;
  try {
    return catalog.find(name).has_value();
  } catch (const Error&) {
    return true;  // a name of several foods is one nevertheless
  }
}

}  // namespace scalepan
