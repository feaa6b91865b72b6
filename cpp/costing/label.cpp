#include "costing/label.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "recipe/base_line.hpp"
#include "recipe/cursor.hpp"

namespace scalepan {

namespace {

constexpr std::string_view on_the_pack = "check the pack";
// Both articles are quoted from memory.
constexpr std::string_view draft_note =
    "A draft: whoever answers for the label follows local food law. Order after Regulation (EU) "
    "1169/2011 Art. 18, capitals after Art. 21.";

using Names = std::vector<std::string>;

/// `egg` of `eggs`: how the names of allergens are compared.
std::string stem(std::string_view word) {
  if (word.ends_with('s')) word.remove_suffix(1);
  return lower(word);
}

bool has_word(std::string_view text, std::string_view wanted) {
  for (Cursor cursor(text); !cursor.done();) {
    const std::string_view word = cursor.take_word();
    if (!word.empty() && stem(word) == stem(wanted)) return true;
    if (word.empty() && !cursor.done()) cursor.skip(1);
  }
  return false;
}

/// Whether another name of the list says it too: `nuts` beside `tree nuts`.
bool said_by_another(const Names& allergens, const std::string& one) {
  return std::ranges::any_of(
      allergens, [&](const std::string& other) { return other != one && has_word(other, one); });
}

/// With every word in capitals that is one of the allergens.
std::string with_capitals(const std::string& name, const Names& allergens) {
  std::string text = name;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = word_end(text, at);
    if (end == at) {
      ++at;
      continue;
    }
    const std::string word = text.substr(at, end - at);
    const bool allergen = std::ranges::any_of(
        allergens, [&](const std::string& known) { return stem(known) == stem(word); });
    if (allergen) text.replace(at, word.size(), upper(word));
    at = end;
  }
  return text;
}

std::string joined(const Names& names, std::string_view none = {}) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text.empty() ? std::string(none) : text;
}

std::string text_of(const std::vector<LabelItem>& items);

std::string text_of(const LabelItem& item) {
  std::string text = with_capitals(item.name, item.allergens);
  Names behind;
  for (const std::string& allergen : item.allergens) {
    if (has_word(item.name, allergen) || said_by_another(item.allergens, allergen)) continue;
    behind.push_back(upper(allergen));
  }
  if (item.check_pack) behind.emplace_back(on_the_pack);
  if (item.optional) behind.emplace_back("optional");
  if (!behind.empty()) text += " (" + joined(behind) + ")";
  return item.parts.empty() ? text : text + " [" + text_of(item.parts) + "]";
}

std::string text_of(const std::vector<LabelItem>& items) {
  Names texts;
  for (const LabelItem& item : items) texts.push_back(text_of(item));
  return joined(texts);
}

void add_once(Names& names, const std::string& name) {
  if (std::ranges::find(names, name) == names.end()) names.push_back(name);
}

void add_unweighed(const std::vector<LabelItem>& items, Names& names) {
  for (const LabelItem& item : items) {
    if (!item.weighed) add_once(names, item.name);
    add_unweighed(item.parts, names);
  }
}

void add_unknown(const std::vector<LabelItem>& items, Names& names) {
  for (const LabelItem& item : items) {
    if (item.check_pack) add_once(names, item.name);
    add_unknown(item.parts, names);
  }
}

/// In g.
std::optional<Rational> grams_of(const Line& line, const Recipe& recipe) {
  const UnitWeight unit = weight_in_batch(line, recipe.bases(), recipe.catalog());
  return unit ? std::optional(line.amount.coherent() * *unit) : std::nullopt;
}

class LabelMaker {
 public:
  explicit LabelMaker(const Recipe& recipe) : dish_(recipe) {}

  [[nodiscard]] std::vector<LabelItem> items() const { return items_of(dish_, ""); }

 private:
  [[nodiscard]] std::vector<LabelItem> items_of(const Recipe& recipe,
                                                const std::string& prefix) const {
    std::vector<LabelItem> items;
    Names keys;
    for (const Line& line : recipe.lines()) {
      const std::string key = key_of(line);
      const auto known = std::ranges::find(keys, key);
      if (!key.empty() && known != keys.end()) {
        add_weight(items[static_cast<std::size_t>(known - keys.begin())], line, recipe);
        continue;
      }
      keys.push_back(key);
      items.push_back(item_of(line, recipe, prefix));
    }
    std::ranges::stable_sort(items, [](const LabelItem& a, const LabelItem& b) {
      if (!a.grams || !b.grams) return a.grams.has_value() && !b.grams;
      return *a.grams > *b.grams;
    });
    return items;
  }

  /// Lines of one key are one ingredient; empty for a line of its own.
  static std::string key_of(const Line& line) {
    if (line.base)
      return "base " + std::to_string(*line.base) + (line.optional ? "\noptional" : "");
    if (line.item_key.empty()) return {};
    return line.item_key + "\n" + line.part + (line.optional ? "\noptional" : "");
  }

  static void add_weight(LabelItem& item, const Line& line, const Recipe& recipe) {
    const auto grams = grams_of(line, recipe);
    item.weighed = item.weighed && grams;
    if (grams) item.grams = item.grams.value_or(Rational(0)) + *grams;
  }

  [[nodiscard]] LabelItem item_of(const Line& line, const Recipe& recipe,
                                  const std::string& prefix) const {
    LabelItem item;
    item.name = line.part.empty() ? line.food : line.part + " of " + line.food;
    item.optional = line.optional;
    add_weight(item, line, recipe);
    if (line.base) {
      item.parts = parts_of(prefix + line.id);
    } else {
      add_allergens(item, line, recipe.catalog());
    }
    return item;
  }

  /// Of the base that the line takes from, at the size it is made.
  [[nodiscard]] std::vector<LabelItem> parts_of(const std::string& line) const {
    for (const MadeBase& base : dish_.made_bases()) {
      const bool used = std::ranges::find(base.uses, line, &BaseUse::line) != base.uses.end();
      if (used) return items_of(*base.recipe, base.name + ".");
    }
    return {};
  }

  static void add_allergens(LabelItem& item, const Line& line, const Catalog& catalog) {
    const Food* food = catalog.food(line.food_id);
    item.check_pack = food == nullptr || line.near;
    if (food == nullptr) return;
    std::set<std::string> allergens;
    for (const Names* list : {&food->allergens_eu, &food->allergens_us}) {
      allergens.insert(list->begin(), list->end());
    }
    if (allergens.erase(std::string(on_the_pack)) > 0) item.check_pack = true;
    item.allergens.assign(allergens.begin(), allergens.end());
  }

  const Recipe& dish_;
};

Names allergens_in(const Recipe& recipe, Names Food::* list) {
  std::set<std::string> found;
  for (const Line& line : recipe.food_lines()) {
    const Food* food = recipe.catalog().food(line.food_id);
    if (food != nullptr) found.insert((food->*list).begin(), (food->*list).end());
  }
  found.erase(std::string(on_the_pack));
  return {found.begin(), found.end()};
}

std::string text_of(const Label& label) {
  std::string text = "Ingredients by falling weight as they go in: " + text_of(label.items) + ".";
  Names unweighed;
  add_unweighed(label.items, unweighed);
  if (!unweighed.empty()) {
    text += "\nWeight not known, so perhaps too far down: " + joined(unweighed) + ".";
  }
  text += "\nAllergens, EU list: " + joined(label.allergens_eu, "none known") +
          "; US list: " + joined(label.allergens_us, "none known") + ".";
  if (!label.unknown.empty()) text += "\nCheck the pack of: " + joined(label.unknown) + ".";
  return text + "\n" + std::string(draft_note);
}

}  // namespace

Label label_of(const Recipe& recipe) {
  Label label;
  label.items = LabelMaker(recipe).items();
  label.allergens_eu = allergens_in(recipe, &Food::allergens_eu);
  label.allergens_us = allergens_in(recipe, &Food::allergens_us);
  add_unknown(label.items, label.unknown);
  label.text = text_of(label);
  return label;
}

}  // namespace scalepan
