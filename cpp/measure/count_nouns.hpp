// Words for what is counted: parts of a food and containers.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>

namespace scalepan {

/// A noun in the singular and the plural.
using CountNoun = std::pair<std::string_view, std::string_view>;

/// Parts of a food, and containers.
[[nodiscard]] std::span<const CountNoun> nouns_of_pieces();
[[nodiscard]] std::span<const CountNoun> nouns_of_containers();

/// The singular of a word for a part counted in pieces (`cloves` gives `clove`), or nothing.
[[nodiscard]] std::optional<std::string_view> piece_noun(std::string_view word);

/// As `piece_noun`, but only for words that may stand behind a food: `garlic cloves`.
[[nodiscard]] std::optional<std::string_view> part_noun(std::string_view word);

/// The singular of a word for a container (`tins` gives `tin`), or nothing.
[[nodiscard]] std::optional<std::string_view> container_noun(std::string_view word);

/// The plural of a noun known here; any other noun as it is.
[[nodiscard]] std::string_view plural_of_noun(std::string_view singular);

/// Whether a container is one that food is canned in.
[[nodiscard]] bool is_tin(std::string_view singular);

/// Whether two nouns count the same thing: equal, or `tin` and `can`.
[[nodiscard]] bool same_noun(std::string_view a, std::string_view b);

}  // namespace scalepan
