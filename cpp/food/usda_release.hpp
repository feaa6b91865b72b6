// The foods, household weights and refuse of a USDA Standard Reference release, from the text of
// its files in their published layout.
#pragma once

#include <string>

#include "food/caret_table.hpp"
#include "food/catalog.hpp"

namespace scalepan {

enum class WeightsLayout : std::uint8_t {
  weight,  // WEIGHT.txt: every measure of a food, one a row
  abbrev,  // ABBREV.txt: the first two measures in the row of a food
};

struct UsdaRelease {
  std::string label;  // `SR28`; of sources, and in lower case of ids
  ReleaseFile foods;  // FOOD_DES.txt
  ReleaseFile weights;
  WeightsLayout layout = WeightsLayout::weight;
};

/// Lays a release under a catalogue, in the layer `dataset`. Of food 11246 of SR28:
///
/// - the id `sr28_11246`, and as name the long description, where no other food has that name;
/// - an edible share of 1 less refuse (nothing where the release leaves the refuse blank);
/// - a density for each state that a cup, spoon, fluid ounce, pint, quart or litre is printed with
///   (`cup, chopped`): of several measures of one state the largest is the density, the others
///   are its spread;
/// - a piece weight for each other measure (`large`, `clove`), but none for a mere weight (`oz`).
///   A bracket behind the word (`medium (2-1/2" dia)`) is left out where it tells nothing apart.
///
/// Amounts other than 1 are divided out exactly. Weights are of the edible portion; where nothing
/// is refuse a density holds at any stage. Default state and size are the plain ones, else the
/// first printed.
///
/// Throws `food.release` with file, line and column for a row that cannot be read or figures of
/// zero, and what `Catalog::add` throws with file and line.
void add_release(Catalog& catalog, const UsdaRelease& release);

}  // namespace scalepan
