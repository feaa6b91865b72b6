#include "costing/basket.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "costing/pooling.hpp"
#include "costing/recipe_checks.hpp"
#include "exact/error.hpp"

namespace scalepan {

namespace {

void expect_names(const std::vector<Dish>& dishes) {
  if (dishes.empty()) fail("basket.no_dishes", "the basket has no dishes", "name at least one");
  std::map<std::string, const PlacedText*> seen;
  for (const Dish& dish : dishes) {
    const std::string id = id_of_name(dish.name.text);
    if (id.empty()) {
      fail("basket.name",
           "the name of a dish has no letter or digit: \"" + excerpt(dish.name.text) + "\"",
           "give the dish another name", dish.name.place);
    }
    const auto [known, fresh] = seen.emplace(id, &dish.name);
    if (fresh) continue;
    fail("basket.name",
         "two dishes have the id " + id + ": \"" + excerpt(known->second->text) + "\" and \"" +
             excerpt(dish.name.text) + "\"",
         "give one of them another name", dish.name.place);
  }
}

std::vector<BasketDish> costed_apart(const std::vector<Dish>& dishes,
                                     const std::shared_ptr<const NamedPrices>& prices,
                                     CostOptions options) {
  expect_names(dishes);
  std::vector<BasketDish> costed;
  for (const Dish& dish : dishes) {
    costed.push_back({dish.name.text,
                      id_of_name(dish.name.text),
                      {},
                      {},
                      std::make_shared<const Costing>(dish.recipe, prices, options)});
  }
  return costed;
}

/// What is on hand is nobody's alone, so dishes are compared, and pools chosen, without it.
CostOptions without_stock(CostOptions options) {
  options.stock = nullptr;
  return options;
}

std::vector<std::shared_ptr<const Catalog>> catalogs_of(const std::vector<Dish>& dishes) {
  std::vector<std::shared_ptr<const Catalog>> catalogs;
  for (const Dish& dish : dishes) catalogs.push_back(dish.recipe.shared_catalog());
  return catalogs;
}

std::vector<std::size_t> dishes_of_lines(const std::vector<BasketDish>& dishes) {
  std::vector<std::size_t> dish_of;
  for (std::size_t i = 0; i < dishes.size(); ++i) {
    dish_of.insert(dish_of.end(), dishes[i].recipe().food_lines().size(), i);
  }
  return dish_of;
}

PooledLines lines_of(const std::vector<BasketDish>& dishes,
                     const std::vector<std::size_t>& dish_of) {
  PooledLines pooled{{}, {}, dish_of};
  for (const BasketDish& dish : dishes) {
    for (Line line : dish.recipe().food_lines()) {
      line.id = dish.id + "." + line.id;
      pooled.lines.push_back(std::move(line));
      pooled.terms.push_back({dish.recipe().shared_catalog()});
    }
    pooled.apart.push_back(dish.apart);
  }
  return pooled;
}

bool in_proportion(const Line& line) {
  return line.rule.kind == RuleKind::in_proportion || line.rule.kind == RuleKind::to_taste;
}

/// Bases of several dishes that would take less if they were made in one batch.
std::vector<std::string> bases_to_check(const std::vector<BasketDish>& dishes) {
  std::map<std::string, std::string> users;
  std::map<std::string, std::string> stepped;
  std::map<std::string, std::size_t> counts;
  for (const BasketDish& dish : dishes) {
    for (const MadeBase& made : dish.recipe().made_bases()) {
      const std::string& name = made.recipe->name();
      std::string lines;
      for (const Line& line : made.recipe->lines()) {
        if (!in_proportion(line)) lines += (lines.empty() ? "" : ", ") + line.id;
      }
      if (lines.empty()) continue;
      users[name] += (counts[name]++ == 0 ? "" : ", ") + dish.name;
      stepped[name] = lines;
    }
  }
  std::vector<std::string> notes;
  for (const auto& [name, count] : counts) {
    if (count == 1) continue;
    notes.push_back(name + ": made anew for each of " + users[name] +
                    "; in one batch, what does not scale in proportion may come to another " +
                    "amount: " + stepped[name]);
  }
  return notes;
}

/// Items that are bought in more than one lot.
std::vector<std::string> lots_to_check(const Provisions& provisions) {
  std::map<std::string_view, std::vector<const ItemCost*>> lots;
  std::vector<std::string_view> keys;
  for (const ItemCost& item : provisions.items()) {
    if (item.group == nullptr) continue;
    const std::string& key = provisions.lines()[item.plan->lines.front()].item_key;
    if (lots[key].empty()) keys.push_back(key);
    lots[key].push_back(&item);
  }
  std::vector<std::string> notes;
  for (const std::string_view key : keys) {
    const auto& items = lots[key];
    if (items.size() == 1) continue;
    std::string note = items.front()->plan->item + ": not bought in one lot, since one kind of " +
                       "pack or one set of price rows does not meet all lines as cheaply: ";
    for (const ItemCost* item : items) {
      note += item == items.front() ? "" : "; ";
      for (const std::size_t line : item->plan->lines) {
        note += (line == item->plan->lines.front() ? "" : ", ") + provisions.lines()[line].id;
      }
    }
    notes.push_back(std::move(note));
  }
  return notes;
}

}  // namespace

Basket::Basket(const std::vector<Dish>& dishes, std::shared_ptr<const PriceBook> prices,
               CostOptions options)
    : Basket(dishes, std::make_shared<const NamedPrices>(std::move(prices), catalogs_of(dishes)),
             options) {}

Basket::Basket(const std::vector<Dish>& dishes, const std::shared_ptr<const NamedPrices>& prices,
               const CostOptions& options)
    : dishes_(costed_apart(dishes, prices, without_stock(options))),
      dish_of_(dishes_of_lines(dishes_)),
      provisions_(pooled(lines_of(dishes_, dish_of_), prices, without_stock(options))),
      unaided_(provisions_.costs()) {
  for (const ItemCost& item : provisions_.items()) {
    for (const LineCost& line : item.lines) dishes_[dish_of_[line.line]].unaided += line.costs;
  }
  if (options.stock != nullptr) {
    provisions_ = Provisions(provisions_.lines(), provisions_.plan().terms(), prices, options);
  }
  for (const ItemCost& item : provisions_.items()) {
    for (const LineCost& line : item.lines) dishes_[dish_of_[line.line]].costs += line.costs;
  }
  for (const BasketDish& dish : dishes_) apart_ += dish.apart->costs();
}

std::vector<std::string> Basket::to_check() const {
  std::vector<std::string> notes;
  for (const BasketDish& dish : dishes_) {
    for (const std::string& note : lines_to_check(dish.recipe())) {
      notes.push_back(dish.name + ": " + note);
    }
  }
  std::ranges::move(provisions_.to_check(), std::back_inserter(notes));
  std::ranges::move(lots_to_check(provisions_), std::back_inserter(notes));
  std::ranges::move(bases_to_check(dishes_), std::back_inserter(notes));
  return notes;
}

std::vector<Caution> Basket::cautions() const {
  std::vector<Caution> all;
  for (const BasketDish& dish : dishes_) {
    for (const Caution& caution : cautions_for(dish.recipe())) {
      auto same = std::ranges::find_if(all, [&](const Caution& known) {
        return known.text == caution.text && known.source == caution.source;
      });
      if (same == all.end()) same = all.insert(all.end(), {caution.text, caution.source, {}});
      if (caution.lines.empty()) same->lines.push_back(dish.name);
      for (const std::string& line : caution.lines) same->lines.push_back(dish.id + "." + line);
    }
  }
  return all;
}

std::vector<BasketRow> shopping_list(const Basket& basket) {
  std::vector<BasketRow> rows;
  for (ShoppingRow& row : shopping_list(basket.provisions())) {
    rows.push_back({std::move(row), {}});
  }
  std::size_t at = 0;
  for (const ItemCost& item : basket.provisions().items()) {
    if (item.group == nullptr) continue;
    std::map<std::size_t, Quantity> needs;
    for (const LineCost& line : item.lines) {
      const auto [need, fresh] = needs.emplace(basket.dish_of(line.line), line.bought_as);
      if (!fresh) need->second = need->second + line.bought_as;
    }
    for (const auto& [dish, need] : needs) {
      rows[at].dishes.push_back({basket.dishes()[dish].name, need});
    }
    ++at;
  }
  return rows;
}

}  // namespace scalepan
