// The part of a line that names the food: what stands before and behind the name, what else could
// be taken, what is to go with it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "food/catalog.hpp"

namespace scalepan {

enum class Bound : std::uint8_t { none, or_more, or_less, or_so };

/// Texts are views into the line but for `foods`, which may be put together.
struct FoodHead {
  std::string_view name;                       // the words of all foods
  std::vector<std::string> foods;              // several share one amount: `salt and pepper`
  std::vector<std::string_view> states;        // `stoned and chopped` before, `cut small` behind
  std::vector<std::string_view> alternatives;  // behind `or`
  std::vector<std::string_view> beside;        // further foods with amounts of their own
  std::vector<std::string_view> notes;         // `for frying`, `to taste`
  std::string size;                            // `large`
  std::optional<Rational> other_number;        // `two` of `an egg or two`
  std::string_view stage;                      // `AP`, `E.P.` beside the name
  Bound bound = Bound::none;
};

/// Reads a phrase without marks and brackets. `product` says that what is named comes from one
/// container: its parts are no foods of their own.
[[nodiscard]] FoodHead read_food_head(std::string_view phrase, bool product,
                                      const Catalog& catalog);

}  // namespace scalepan
