// Recipes: lines and bases, the size they were written for, and any other size.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "recipe/batch.hpp"
#include "recipe/line.hpp"
#include "recipe/method.hpp"

namespace scalepan {

class Recipe;

/// A recipe used in another, under the name the other's lines call it by.
struct BaseRecipe {
  std::string name;
  std::shared_ptr<const Recipe> recipe;  // at its written size
  Place place;
};

/// The text a recipe was read from, and the name it was read under.
struct RecipeFile {
  std::string name;
  std::string text;
};

/// A recipe as its file has it.
struct RecipeInput {
  PlacedText name;
  Rational serves;
  Place serves_place;
  Reading reading;
  std::vector<Rational> tested_at;
  Place tested_place;
  std::vector<LineInput> lines;
  Place lines_place;
  std::vector<BaseRecipe> bases;
  std::vector<StepInput> steps;
  BatchInput batch;
  std::string tray;     // the pan the written size fills, `batch.trays` times; for display
  PlacedText rounding;  // the share of an amount that rounding may change unflagged: `5 %`
  PlacedText flour;     // the weight of all flours, where lines are written in baker's percent
  std::shared_ptr<const RecipeFile> file{};  // null where it stands in that of another
};

/// One use of a base, by a line of the dish or of another base.
struct BaseUse {
  std::string line;  // `sauce`, or `filling.sauce` in the base `filling`
  Quantity amount;
  Rational batches;        // of the written base
  bool by_amount = false;  // not so many portions, whatever these come to
};

/// A base at the size that all its uses need: it is made once.
struct MadeBase {
  std::string name;
  std::shared_ptr<const Recipe> recipe;  // at that size
  std::vector<BaseUse> uses;
  Rational batches;  // their sum
};

class Recipe {
 public:
  /// Reads the lines; headings become a property of the lines below them. Throws their errors,
  /// `recipe.name`, `recipe.serves`, `recipe.tested_at`, `recipe.no_lines`,
  /// `recipe.duplicate_id`, `recipe.rounding`, what `Batch`, `read_method` and the readers of base
  /// lines throw, and
  /// `base.name_clash`, each with its place.
  Recipe(std::shared_ptr<const RecipeInput> input, std::shared_ptr<const Catalog> catalog);
  Recipe(RecipeInput input, std::shared_ptr<const Catalog> catalog)
      : Recipe(std::make_shared<const RecipeInput>(std::move(input)), std::move(catalog)) {}

  [[nodiscard]] const std::string& name() const { return name_; }
  /// The number of portions it was written for.
  [[nodiscard]] const Rational& serves() const { return serves_; }
  /// The number of portions asked for.
  [[nodiscard]] const Rational& portions() const { return size_.served; }
  [[nodiscard]] const Size& size() const { return size_; }
  [[nodiscard]] Measures measures() const { return reading_.measures; }
  [[nodiscard]] const std::vector<Rational>& tested_at() const { return tested_at_; }
  /// Its own, those that take from a base among them.
  [[nodiscard]] const std::vector<Line>& lines() const { return lines_; }
  /// As its lines name them.
  [[nodiscard]] const std::vector<BaseRecipe>& bases() const { return input_->bases; }
  /// All bases below it, each once, at the size all uses together need, in the order they are made.
  [[nodiscard]] const std::vector<MadeBase>& made_bases() const { return made_; }
  /// The made base of that name; null where there is none.
  [[nodiscard]] const MadeBase* made_base(std::string_view name) const;
  /// The lines of foods: its own and those of its bases, whose ids begin with the base's name.
  [[nodiscard]] const std::vector<Line>& food_lines() const { return food_lines_; }
  [[nodiscard]] const Catalog& catalog() const { return *catalog_; }
  [[nodiscard]] std::shared_ptr<const Catalog> shared_catalog() const { return catalog_; }

  /// What it was read from.
  [[nodiscard]] const std::shared_ptr<const RecipeInput>& input() const { return input_; }
  /// Whether its bases are left to the recipe that uses it.
  [[nodiscard]] bool is_alone() const { return made_.empty() && food_lines_.empty(); }
  /// Null where it stands in the file of a recipe that uses it.
  [[nodiscard]] const std::shared_ptr<const RecipeFile>& file() const { return input_->file; }

  [[nodiscard]] const Batch& batch() const { return *batch_; }
  /// The pan that its written size fills, as many as `trays`; empty where none is stated.
  [[nodiscard]] const std::string& tray() const { return tray_; }
  [[nodiscard]] const Rational& trays() const { return trays_; }
  /// The share of an amount that rounding may change without being flagged.
  [[nodiscard]] const Rational& rounding() const { return rounding_; }

  /// Its own steps; those of a base are that recipe's.
  [[nodiscard]] const std::vector<MethodStep>& method() const { return method_; }

  /// The same recipe for another number of portions, always from the written amounts.
  /// Throws `recipe.portions` unless above zero.
  [[nodiscard]] Recipe scaled(const Rational& portions) const;
  /// A line of a food, read as one of its own with an amount for the written size, at its present
  /// size. Throws the errors of lines, and `line.no_food` for a heading or a separator.
  [[nodiscard]] Line line_at_size(const LineInput& input) const;
  /// At a size of its own; the loads follow from the rest.
  [[nodiscard]] Recipe sized(Size size) const;
  /// The same without its bases being made.
  [[nodiscard]] Recipe sized_alone(Size size) const;

  /// Whether so many portions, of the written size, are stated as tested.
  [[nodiscard]] bool is_tested() const;
  /// `tested at 4; 40 is computed`.
  [[nodiscard]] std::string tested_text() const;

 private:
  void add_line(const LineInput& input, const RecipeInput& recipe, std::string& heading);
  [[nodiscard]] std::optional<Line> read_special_line(const LineInput& input,
                                                      const RecipeInput& recipe) const;
  void size_lines(Size size);
  void make_bases();

  std::shared_ptr<const RecipeInput> input_;
  std::string name_;
  Rational serves_;
  Size size_;
  Reading reading_;
  std::string tray_;
  Rational trays_;
  Rational rounding_{1, 20};
  std::vector<Rational> tested_at_;
  std::vector<Line> lines_;
  std::vector<MethodStep> method_;
  std::shared_ptr<const Batch> batch_;
  std::vector<MadeBase> made_;
  std::vector<Line> food_lines_;
  std::shared_ptr<const Catalog> catalog_;
};

}  // namespace scalepan
