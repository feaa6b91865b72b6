// Packs as written: an amount, a word for the container, and what it holds at another stage.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "measure/quantity.hpp"

namespace scalepan {

/// What a pack holds at one stage. `noun` says what a count counts where that is not the item
/// itself: `head`, `bunch`, `tin`.
struct PackContent {
  Quantity amount;
  std::string noun;
};

struct PackReading {
  Stage sold_as = Stage::as_purchased;
  Measures measures = Measures::unstated;  // which pint is meant
  std::string_view item;
};

struct PackText {
  std::string text;  // of what is counted: the pack as written, or one step of loose goods
  // At `sold_as` first, then at other stages the row states, then as so many containers.
  std::vector<PackContent> contents;
  bool loose = false;   // weighed or counted out in steps, each of which is a pack
  Rational priced = 1;  // so many of it are what the price is of
};

inline constexpr std::string_view pack_hint =
    "write a pack as 1 kg, 6, or 400 g tin (240 g drained)";

/// `1 kg`, `6`, `3 heads`, `400 g tin (240 g drained)`, `1 kg loose in 50 g`. A bare number counts
/// pieces. Throws the errors of the amount reader, `price.pack` and `price.stage`, with an offset.
[[nodiscard]] PackText read_pack(std::string_view text, const PackReading& reading);

}  // namespace scalepan
