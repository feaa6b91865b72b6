// Recipes: lines, the size they were written for, and any other size.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "recipe/line.hpp"

namespace scalepan {

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
};

class Recipe {
 public:
  /// Reads the lines; headings become a property of the lines below them. Throws their errors,
  /// `recipe.name`, `recipe.serves`, `recipe.tested_at`, `recipe.no_lines` and
  /// `recipe.duplicate_id`, each with its place.
  Recipe(const RecipeInput& input, std::shared_ptr<const Catalog> catalog);

  [[nodiscard]] const std::string& name() const { return name_; }
  /// The number of portions it was written for.
  [[nodiscard]] const Rational& serves() const { return serves_; }
  /// The number of portions its amounts are for.
  [[nodiscard]] const Rational& portions() const { return portions_; }
  [[nodiscard]] Measures measures() const { return measures_; }
  [[nodiscard]] const std::vector<Rational>& tested_at() const { return tested_at_; }
  [[nodiscard]] const std::vector<Line>& lines() const { return lines_; }
  [[nodiscard]] const Catalog& catalog() const { return *catalog_; }
  [[nodiscard]] std::shared_ptr<const Catalog> shared_catalog() const { return catalog_; }

  /// The same recipe for another number of portions, always from the written amounts.
  /// Throws `recipe.portions` unless above zero.
  [[nodiscard]] Recipe scaled(const Rational& portions) const;

  /// `tested at 4; 40 is computed`.
  [[nodiscard]] std::string tested_text() const;

 private:
  void add_line(const LineInput& input, Reading reading, std::string& heading);

  std::string name_;
  Rational serves_;
  Rational portions_;
  Measures measures_ = Measures::unstated;
  std::vector<Rational> tested_at_;
  std::vector<Line> lines_;
  std::shared_ptr<const Catalog> catalog_;
};

}  // namespace scalepan
