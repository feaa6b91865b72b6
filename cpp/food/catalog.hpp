// The catalogue: foods, their names in several regions, and the facts about them.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <variant>
#include <vector>

#include "food/fact.hpp"

namespace scalepan {

struct Food {
  std::string id;      // `leek`
  std::string name;    // `leek`
  std::string plural;  // `leeks`
  std::string default_state;
  std::string default_size;
  std::vector<std::string> allergens_eu;
  std::vector<std::string> allergens_us;
  std::vector<std::string> cautions;
};

/// What rounding its amount spoils: `leavening`, `salt`, `gelling`; empty for most foods.
[[nodiscard]] std::string_view rounding_spoils(const Food& food);

/// One name of a food. `region` is empty where the name is good everywhere.
struct FoodName {
  std::string name;
  std::string plural;
  std::string region;
  std::string food;
  bool near = false;      // a close relative, not the same food
  std::size_t order = 0;  // among all names of a catalogue
};

struct FoundFood {
  const Food* food = nullptr;
  const FoodName* name = nullptr;  // the name it was found by; null where that was its id

  /// Whether the name belongs to a close relative rather than to this very food.
  [[nodiscard]] bool near() const { return name != nullptr && name->near; }
};

/// What settles a name that means several foods.
struct NameChoices {
  std::string region;  // `GB`; empty where none is stated
  /// By plain name: the food's id, or another of its names. A choice goes before the region.
  std::map<std::string, std::string, std::less<>> foods = {};
};

/// A fact by its id, laid among the own ones.
struct PreferredFact {
  std::string id;
};

/// One step in which a catalogue is made.
using CatalogChange = std::variant<Food, FoodName, Fact, PreferredFact, NameChoices>;

/// Lower case, single spaces, no outer spaces: how names are compared.
[[nodiscard]] std::string plain_name(std::string_view name);

class Catalog {
 public:
  /// Throw `food.duplicate` and `food.unknown`; `add(Fact)` also what
  /// `expect_valid(fact)` throws and
  /// `fact.duplicate` for an id used before and for two own figures on one thing. Two bundled
  /// figures on one thing may stand: the one with the first id is used, the other is told beside
  /// it.
  void add(Food food);
  void add(FoodName name);
  void add(Fact fact);

  /// Null where no such food is known.
  [[nodiscard]] const Food* food(std::string_view id) const;
  /// By any name or plural, or by an id, also one with spaces for underscores. Of several foods of
  /// one name the chosen one is taken, else the region's, else in a region that has none of its
  /// own the one good everywhere. Nothing where the name is unknown; throws `food.ambiguous` with
  /// the choices where the name stays open, and what `expect_valid` throws.
  [[nodiscard]] std::optional<FoundFood> find(std::string_view name,
                                              const NameChoices& choices) const;
  /// By what `choose` settled.
  [[nodiscard]] std::optional<FoundFood> find(std::string_view name) const {
    return find(name, choices_);
  }
  [[nodiscard]] std::optional<FoundFood> find(std::string_view name, std::string region) const {
    return find(name, NameChoices{std::move(region)});
  }
  /// Settles all names that are found without choices of their own, as for one recipe.
  /// Throws what `expect_valid` throws.
  void choose(NameChoices choices);
  /// Throws `food.region` where no name is of that region, and `food.unknown` for a choice of a
  /// food that is not there.
  void expect_valid(const NameChoices& choices) const;
  /// Whether any food has the name.
  [[nodiscard]] bool has_name(std::string_view name) const {
    return names_.contains(plain_name(name));
  }
  /// As `find`. Throws `food.unknown` with the nearest names.
  [[nodiscard]] const Food& known(std::string_view name, const NameChoices& choices) const;
  [[nodiscard]] const Food& known(std::string_view name) const { return known(name, choices_); }
  /// At most three known names near the misspelt one.
  [[nodiscard]] std::vector<std::string> nearest(std::string_view name) const;
  /// In order of layer, then id.
  [[nodiscard]] std::vector<const Fact*> facts(std::string_view food) const;
  /// What words such as `pinch` measure of any food, in the order they were added.
  [[nodiscard]] std::vector<const Fact*> conventions() const;
  /// The other figures on the very thing that a fact is about, in the same order.
  [[nodiscard]] std::vector<const Fact*> beside(const Fact& fact) const;
  /// Lays a fact of the catalogue among the own ones, so that it is used before all others.
  /// Throws `fact.unknown` with the nearest ids, and `fact.duplicate`.
  void prefer(std::string_view fact);
  /// All there is: foods by id, names as they were added, facts as `facts` has them, conventions
  /// last.
  [[nodiscard]] std::vector<const Food*> foods() const;
  [[nodiscard]] std::vector<FoodName> names() const;
  [[nodiscard]] std::vector<const Fact*> facts() const;
  [[nodiscard]] const NameChoices& choices() const { return choices_; }
  /// What it has of some foods, so that their names mean there what they mean here: with the names
  /// and foods that theirs could be taken for, and what names are settled by.
  [[nodiscard]] Catalog part(const std::set<std::string>& foods) const;
  /// Names what it holds now, for catalogues made from it: they are that and what changes it.
  void name_base(std::string base);
  /// Of it or of the catalogue that it is a copy of; empty where it began with nothing.
  [[nodiscard]] const std::string& base() const { return base_; }
  /// In which it was made from the base, or from an empty catalogue.
  [[nodiscard]] std::vector<CatalogChange> changes() const;
  /// In which an equal one is made from an empty catalogue.
  [[nodiscard]] std::vector<CatalogChange> content() const;
  /// Throws what `add`, `prefer` and `choose` throw.
  void make(CatalogChange change);
  [[nodiscard]] std::size_t food_count() const { return foods_.size(); }
  [[nodiscard]] std::size_t fact_count() const { return fact_count_; }

 private:
  void put(Fact fact);
  /// For `changes`, where there is a base.
  void note(CatalogChange change);

  std::map<std::string, Food, std::less<>> foods_;
  std::unordered_map<std::string, std::vector<FoodName>> names_;
  // Shared, so that a fact stays where it is while others are added.
  std::map<std::string, std::vector<std::shared_ptr<const Fact>>, std::less<>> facts_;
  std::vector<std::shared_ptr<const Fact>> conventions_;
  std::set<std::string, std::less<>> regions_;
  std::size_t fact_count_ = 0;
  std::size_t name_count_ = 0;
  NameChoices choices_;
  std::string base_;
  std::vector<CatalogChange> since_base_;  // where there is one
};

}  // namespace scalepan
