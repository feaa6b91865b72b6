// Shares of something named: `3/5 of the sauce`, `rest of the sauce`.
//
//   phrase = part [ "of" ] [ "the" ] name
//   part   = number [ "%" ] | words | "all" | [ "the" ] "rest" | number "portions"
//
// A number alone must be followed by `of` or `the`: `2 sauces` is no share.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exact/number_text.hpp"

namespace scalepan {

enum class ShareKind : std::uint8_t { share, rest, portions };

struct SharePhrase {
  ShareKind kind = ShareKind::share;
  Rational amount = 1;  // a share of the whole, or a number of portions
  std::string name;     // of what, with anything behind it
  std::size_t name_at = 0;
};

/// Nothing where the text is no such phrase. Throws the errors of the number readers.
[[nodiscard]] std::optional<SharePhrase> read_share_phrase(std::string_view text, DecimalMark mark);

/// Settles the shares of one thing: the rest is what the others leave. Throws `share.over` where
/// they come to more than the whole, `share.two_rests` and `share.no_rest` where nothing is left
/// for the rest, naming `whole` and the sum; the offset is 0.
[[nodiscard]] std::vector<Rational> settle_shares(const std::vector<std::optional<Rational>>& parts,
                                                  std::string_view whole);

}  // namespace scalepan
