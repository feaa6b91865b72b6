// What derivations say of facts, packs, terms and stock: figures, and where each comes from.
#pragma once

#include <string>
#include <vector>

#include "costing/provisions.hpp"
#include "sheet/why_tree.hpp"

namespace scalepan {

/// As its source has it; a fraction that does not end with a short decimal before it.
[[nodiscard]] std::string figure_of_fact(const Fact& fact);
/// With what the fact is about, and the layer unless it is bundled.
[[nodiscard]] std::string source_of(const Fact& fact);
/// Other published figures on the same thing.
[[nodiscard]] std::vector<Why> why_beside(const Catalog& catalog, const Fact& fact);

/// With its tax, or without, and its place, shop and date.
[[nodiscard]] Why why_pack_price(const Offer& offer, Taxes taxes);
/// What was bought on terms; one entry an offer of which some was.
[[nodiscard]] std::vector<Why> why_terms(const ItemCost& item, Unit money);
/// What is on hand and used.
[[nodiscard]] Why why_on_hand(const ItemCost& item, Unit money);

}  // namespace scalepan
