#include "recipe/kitchen_words.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "exact/text.hpp"

namespace scalepan {

namespace {

using Words = std::unordered_set<std::string_view>;

const std::unordered_map<std::string_view, Stage>& preparations() {
  static const auto table = [] {
    std::unordered_map<std::string_view, Stage> made;
    for (const std::string_view word :
         {"baked", "boiled", "braised", "broiled", "cooked", "fried", "grilled", "hard-boiled",
          "poached", "roast", "roasted", "simmered", "steamed", "stewed"}) {
      made.emplace(word, Stage::cooked);
    }
    for (const std::string_view word :
         {"beaten",    "boned",    "chopped",  "cored",     "creamed",  "crumbled",  "crushed",
          "cubed",     "cut",      "deseeded", "diced",     "filleted", "flaked",    "florets",
          "grated",    "halved",   "hulled",   "husked",    "juiced",   "julienned", "mashed",
          "melted",    "minced",   "packed",   "pared",     "peeled",   "picked",    "pitted",
          "podded",    "pounded",  "pureed",   "quartered", "riced",    "seeded",    "segmented",
          "separated", "shaved",   "shelled",  "shredded",  "sifted",   "skinned",   "sliced",
          "snipped",   "softened", "split",    "stemmed",   "stoned",   "strained",  "stripped",
          "thawed",    "toasted",  "topped",   "torn",      "trimmed",  "whipped",   "zested"}) {
      made.emplace(word, Stage::edible);
    }
    for (const std::string_view word :
         {"chilled", "cleaned", "cooled", "diluted", "heated", "rinsed", "scalded", "soaked",
          "stuck", "warmed", "washed"}) {
      made.emplace(word, Stage::none);
    }
    made.emplace("drained", Stage::drained);
    return made;
  }();
  return table;
}

bool contains(const Words& words, std::string_view word) {
  if (words.contains(word)) return true;
  const bool capital = std::ranges::any_of(word, [](char c) { return c >= 'A' && c <= 'Z'; });
  return capital && words.contains(lower(word));
}

const Words size_words{"small",       "medium",      "large",       "medium-sized", "medium-size",
                       "extra-large", "large-sized", "small-sized", "good-sized",   "fair-sized",
                       "jumbo",       "big",         "tiny",        "huge",         "sized",
                       "little",      "lg",          "lge",         "med",          "sm",
                       "sml",         "thumb-sized"};

const Words conditions{"boiling",  "cold",     "cool",     "fresh",    "frozen", "hot",
                       "lukewarm", "raw",      "ripe",     "overripe", "stale",  "stiff",
                       "tepid",    "uncooked", "unpeeled", "unsifted", "warm",   "undrained",
                       "unripe",   "whole",    "boneless", "skinless"};

const Words name_makers{"sauce",     "dog",   "dogs",    "pepper",  "peppers",  "chili",
                        "chilli",    "chile", "chiles",  "chilies", "chillies", "cuts",
                        "chocolate", "cross", "mustard", "paprika", "sugar",    "cream",
                        "cheese",    "pasta", "curry"};

const Words adverbs{"well", "very", "quite", "fairly", "rather", "too", "hard",
                    "half", "soft", "just",  "more",   "less",   "not"};

// Words in -ed that are no participles, and -ly that are no adverbs.
const Words no_participles{"red",   "shred",    "bread", "sweetbread", "gingerbread", "reed",
                           "breed", "unsalted", "naked", "aged",       "kindred",     "sacred"};
const Words no_adverbs{"jelly", "barley", "parsley", "belly", "curly", "holy",
                       "lily",  "chilly", "early",   "daily", "oily"};

const Words adjectives{
    "red",     "white",      "black",   "green",     "yellow",      "brown",    "blue",
    "purple",  "golden",     "pink",    "dark",      "light",       "pale",     "sweet",
    "sour",    "tart",       "bitter",  "dry",       "dried",       "mild",     "sharp",
    "strong",  "weak",       "thick",   "thin",      "plain",       "rich",     "lean",
    "firm",    "crisp",      "tender",  "young",     "old",         "good",     "best",
    "nice",    "clear",      "instant", "fresh",     "frozen",      "canned",   "tinned",
    "bottled", "smoked",     "salted",  "unsalted",  "salt-free",   "low-fat",  "fat-free",
    "nonfat",  "skim",       "skimmed", "whole",     "ground",      "powdered", "english",
    "french",  "italian",    "spanish", "german",    "swiss",       "greek",    "american",
    "indian",  "chinese",    "mexican", "irish",     "scotch",      "dutch",    "spring",
    "winter",  "summer",     "wild",    "sweetened", "unsweetened", "raw",      "cooked",
    "hot",     "cold",       "large",   "small",     "medium",      "big",      "nut",
    "dairy",   "low-sodium", "hard",    "soft",      "long",        "short"};

const Words method_verbs{
    "beat",   "blend",  "chop",     "dissolve", "divide", "grease",   "sift",  "soak",    "whisk",
    "wash",   "add",    "allow",    "arrange",  "bake",   "boil",     "bring", "combine", "cook",
    "cover",  "drain",  "fold",     "heat",     "knead",  "leave",    "let",   "make",    "melt",
    "mix",    "place",  "pour",     "preheat",  "put",    "remove",   "rinse", "season",  "serve",
    "simmer", "spread", "sprinkle", "stir",     "take",   "transfer", "turn"};

using Part = std::pair<std::string_view, std::string_view>;

constexpr auto parts = std::to_array<Part>({{"juice", "juice"},
                                            {"juices", "juice"},
                                            {"rind", "rind"},
                                            {"rinds", "rind"},
                                            {"zest", "zest"},
                                            {"zests", "zest"},
                                            {"peel", "peel"},
                                            {"peels", "peel"},
                                            {"skin", "skin"},
                                            {"skins", "skin"},
                                            {"yolk", "yolk"},
                                            {"yolks", "yolk"},
                                            {"white", "white"},
                                            {"whites", "white"},
                                            {"pulp", "pulp"},
                                            {"flesh", "flesh"},
                                            {"meat", "meat"},
                                            {"seeds", "seeds"},
                                            {"leaves", "leaves"}});

}  // namespace

std::optional<Stage> stage_of_preparation(std::string_view word) {
  const auto found = preparations().find(word);
  return found == preparations().end() ? std::nullopt : std::optional(found->second);
}

bool is_size_word(std::string_view word) { return contains(size_words, word); }

std::string_view size_written_out(std::string_view word) {
  if (word == "lg" || word == "lge") return "large";
  if (word == "med" || word == "medium-size") return "medium";
  return word == "sm" || word == "sml" ? "small" : word;
}

bool is_condition(std::string_view word) { return contains(conditions, word); }

bool makes_a_name(std::string_view word) { return contains(name_makers, word); }

bool is_adverb(std::string_view word) {
  if (contains(adverbs, word)) return true;
  return word.size() > 4 && word.ends_with("ly") && !contains(no_adverbs, word);
}

bool is_participle(std::string_view word) {
  if (stage_of_preparation(lower(word))) return true;
  constexpr std::size_t shortest = 5;
  const bool seed = word.ends_with("seed") || word.ends_with("weed");
  return word.size() >= shortest && word.ends_with("ed") && !seed && !word.ends_with("-sized") &&
         !contains(no_participles, word);
}

bool is_adjective(std::string_view word) {
  // `bone-in`, `skin-on`, `gluten-free`
  const bool compound = word.ends_with("-in") || word.ends_with("-on") || word.ends_with("-off") ||
                        word.ends_with("-free") || word.ends_with("-less");
  return compound || contains(adjectives, word);
}

std::string_view part_of_food(std::string_view word) {
  const std::string plain = lower(word);
  const auto found = std::ranges::find(parts, std::string_view(plain), &Part::first);
  return found == parts.end() ? std::string_view() : found->second;
}

bool is_method_verb(std::string_view word) { return contains(method_verbs, word); }

bool belong_together(std::string_view first, std::string_view second) {
  constexpr std::array<std::array<std::string_view, 2>, 9> pairs{{{"half", "half"},
                                                                  {"bread", "butter"},
                                                                  {"macaroni", "cheese"},
                                                                  {"mac", "cheese"},
                                                                  {"pork", "beans"},
                                                                  {"salt", "vinegar"},
                                                                  {"sweet", "sour"},
                                                                  {"cookies", "cream"},
                                                                  {"rum", "raisin"}}};
  return std::ranges::any_of(
      pairs, [&](const auto& pair) { return pair[0] == lower(first) && pair[1] == lower(second); });
}

}  // namespace scalepan
