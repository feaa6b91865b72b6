#include "recipe/kitchen_words.hpp"

#include <algorithm>
#include <array>

namespace scalepan {

namespace {

constexpr auto cooked_words = std::to_array<std::string_view>(
    {"baked", "boiled", "braised", "cooked", "fried", "grilled", "hard-boiled", "poached", "roast",
     "roasted", "simmered", "steamed", "stewed"});

constexpr auto edible_words = std::to_array<std::string_view>(
    {"beaten", "boned",     "chopped",   "cored",     "crumbled", "crushed", "cubed",
     "cut",    "deseeded",  "diced",     "filleted",  "flaked",   "florets", "grated",
     "halved", "hulled",    "juiced",    "julienned", "mashed",   "melted",  "minced",
     "packed", "peeled",    "picked",    "pitted",    "podded",   "pureed",  "quartered",
     "seeded", "segmented", "separated", "shelled",   "shredded", "sifted",  "skinned",
     "sliced", "snipped",   "softened",  "split",     "stemmed",  "stoned",  "stripped",
     "thawed", "toasted",   "topped",    "torn",      "trimmed",  "whipped", "zested"});

constexpr auto size_words = std::to_array<std::string_view>(
    {"small", "medium", "large", "medium-sized", "extra-large", "jumbo"});

template <std::size_t N>
bool contains(const std::array<std::string_view, N>& words, std::string_view word) {
  return std::ranges::find(words, word) != words.end();
}

}  // namespace

std::optional<Stage> stage_of_preparation(std::string_view word) {
  if (word == "drained") return Stage::drained;
  if (contains(cooked_words, word)) return Stage::cooked;
  if (contains(edible_words, word)) return Stage::edible;
  return std::nullopt;
}

bool is_size_word(std::string_view word) { return contains(size_words, word); }

}  // namespace scalepan
