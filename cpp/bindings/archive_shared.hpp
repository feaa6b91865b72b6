// What many objects hold: recipes, prices, stock and baskets stand beside the bytes, catalogues in
// them, as a base and what changes it.
#pragma once

#include <memory>
#include <vector>

#include "bindings/archive.hpp"
#include "costing/basket.hpp"
#include "exact/word_column.hpp"
#include "food/catalog.hpp"
#include "packs/price_book.hpp"
#include "packs/stock.hpp"
#include "recipe/recipe.hpp"

namespace scalepan::bindings {

template <typename T>
inline constexpr auto shared_kind = nullptr;
template <>
inline constexpr auto shared_kind<Recipe> = Shared::recipe;
template <>
inline constexpr auto shared_kind<PriceBook> = Shared::prices;
template <>
inline constexpr auto shared_kind<Stock> = Shared::stock;
template <>
inline constexpr auto shared_kind<Basket> = Shared::basket;

/// What one object alone holds.
template <typename T>
void pass_own(Archive& archive, std::shared_ptr<const T>& value) {
  bool there = value != nullptr;
  pass(archive, there);
  if (!there) return;
  auto own = archive.reads() ? std::make_shared<T>() : std::const_pointer_cast<T>(value);
  pass(archive, *own);
  value = std::move(own);
}

template <typename T>
  requires std::same_as<std::remove_cv_t<decltype(shared_kind<T>)>, Shared>
void pass(Archive& archive, std::shared_ptr<const T>& value) {
  bool there = value != nullptr;
  pass(archive, there);
  if (!there) return;
  if (archive.reads()) {
    value = std::static_pointer_cast<const T>(archive.beside().take(shared_kind<T>));
  } else {
    archive.beside().give(shared_kind<T>, value);
  }
}

/// The text that a recipe was read from counts for nothing where recipes are compared: its lines
/// do.
void pass(Archive& archive, std::shared_ptr<const RecipeFile>& value);
void pass(Archive& archive, std::shared_ptr<const RecipeInput>& value);
void pass(Archive& archive, std::optional<Ramp>& value);

struct CatalogState {
  std::string base;
  std::vector<CatalogChange> changes;
};

[[nodiscard]] CatalogState state_of(const Catalog& catalog);
[[nodiscard]] std::shared_ptr<const Catalog> catalog_of(CatalogState state, Beside& beside);
/// Other catalogues have another one.
[[nodiscard]] std::string digest_of(const Catalog& catalog);
/// Equal ones that are read while others live are one.
void pass(Archive& archive, std::shared_ptr<const Catalog>& value);
void pass(Archive& archive, Catalog& value);
/// Counts from the step on, each as its difference from the one before.
void pass(Archive& archive, WordColumn& value);
void pass(Archive& archive, std::shared_ptr<const WordColumn>& value);
void pass(Archive& archive, BasketRow& row);

}  // namespace scalepan::bindings
