// Packs for a need that goes with one input: as far as one choice of packs meets it, whatever is
// told of the packs is a straight line of the need.
#pragma once

#include <span>

#include "sheet/functions.hpp"

namespace scalepan {

/// Of a function that chooses packs for needs, given as offers and need in turn.
[[nodiscard]] Along packs_along(const Function& function, std::span<const Along> arguments,
                                Reach& reach);
/// Of a function that is given such packs alone.
[[nodiscard]] Along told_along(const Function& function, std::span<const Along> arguments,
                               Reach& reach);
/// Of a function that is given packs and, for each need that they were chosen for, a part of it.
[[nodiscard]] Along share_along(const Function& function, std::span<const Along> arguments,
                                Reach& reach);

}  // namespace scalepan
