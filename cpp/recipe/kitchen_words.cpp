#include "recipe/kitchen_words.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace scalepan {

namespace {

constexpr auto cooked_words = std::to_array<std::string_view>(
    {"baked", "boiled", "braised", "cooked", "fried", "grilled", "hard-boiled", "poached", "roast",
     "roasted", "simmered", "steamed", "stewed"});

constexpr auto edible_words = std::to_array<std::string_view>(
    {"beaten",    "boned",  "chopped",  "cleaned", "cored",     "crumbled",  "crushed",
     "cubed",     "cut",    "deseeded", "diced",   "filleted",  "flaked",    "florets",
     "grated",    "halved", "hulled",   "juiced",  "julienned", "mashed",    "melted",
     "minced",    "packed", "peeled",   "picked",  "pitted",    "podded",    "pureed",
     "quartered", "rinsed", "scrubbed", "seeded",  "segmented", "separated", "shelled",
     "shredded",  "sifted", "skinned",  "sliced",  "snipped",   "softened",  "split",
     "stemmed",   "stoned", "stripped", "thawed",  "toasted",   "topped",    "torn",
     "trimmed",   "washed", "whipped",  "zested"});

constexpr auto size_words = std::to_array<std::string_view>(
    {"small", "medium", "large", "medium-sized", "extra-large", "jumbo"});

using Noun = std::pair<std::string_view, std::string_view>;

constexpr auto piece_nouns = std::to_array<Noun>({{"bulb", "bulbs"},
                                                  {"bunch", "bunches"},
                                                  {"clove", "cloves"},
                                                  {"ear", "ears"},
                                                  {"floret", "florets"},
                                                  {"head", "heads"},
                                                  {"leaf", "leaves"},
                                                  {"rasher", "rashers"},
                                                  {"slice", "slices"},
                                                  {"spear", "spears"},
                                                  {"sprig", "sprigs"},
                                                  {"stalk", "stalks"},
                                                  {"stick", "sticks"}});

constexpr auto container_nouns = std::to_array<Noun>({{"bag", "bags"},
                                                      {"bottle", "bottles"},
                                                      {"box", "boxes"},
                                                      {"can", "cans"},
                                                      {"carton", "cartons"},
                                                      {"jar", "jars"},
                                                      {"pack", "packs"},
                                                      {"packet", "packets"},
                                                      {"pot", "pots"},
                                                      {"tin", "tins"},
                                                      {"tub", "tubs"},
                                                      {"tube", "tubes"}});

template <std::size_t N>
bool contains(const std::array<std::string_view, N>& words, std::string_view word) {
  return std::ranges::find(words, word) != words.end();
}

template <std::size_t N>
std::optional<std::string_view> singular(const std::array<Noun, N>& nouns, std::string_view word) {
  for (const auto& [one, many] : nouns) {
    if (word == one || word == many) return one;
  }
  return std::nullopt;
}

}  // namespace

std::optional<Stage> stage_of_preparation(std::string_view word) {
  if (word == "drained") return Stage::drained;
  if (contains(cooked_words, word)) return Stage::cooked;
  if (contains(edible_words, word)) return Stage::edible;
  return std::nullopt;
}

bool is_size_word(std::string_view word) { return contains(size_words, word); }

std::optional<std::string_view> piece_noun(std::string_view word) {
  return singular(piece_nouns, word);
}

std::string_view plural_of_noun(std::string_view one) {
  for (const auto& [known, many] : piece_nouns) {
    if (known == one) return many;
  }
  for (const auto& [known, many] : container_nouns) {
    if (known == one) return many;
  }
  return one;
}

std::optional<std::string_view> container_noun(std::string_view word) {
  return singular(container_nouns, word);
}

}  // namespace scalepan
