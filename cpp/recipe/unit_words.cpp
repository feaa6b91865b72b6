#include "recipe/unit_words.hpp"

#include <algorithm>
#include <array>
#include <unordered_map>
#include <utility>

#include "measure/count_nouns.hpp"
#include "measure/unit_table.hpp"

namespace scalepan {

namespace {

using Spelling = std::pair<std::string_view, std::string_view>;

// Spellings of old and terse books, beside those of the unit table and the nouns.
constexpr auto spellings = std::to_array<Spelling>({{"tablesp", "tbsp"},
                                                    {"tablesps", "tbsp"},
                                                    {"tblsp", "tbsp"},
                                                    {"tblsps", "tbsp"},
                                                    {"tbspn", "tbsp"},
                                                    {"tb", "tbsp"},
                                                    {"tbls", "tbsp"},
                                                    {"tblspn", "tbsp"},
                                                    {"tblspns", "tbsp"},
                                                    {"sq", "square"},
                                                    {"sl", "slice"},
                                                    {"slc", "slice"},
                                                    {"bn", "bunch"},
                                                    {"bch", "bunch"},
                                                    {"env", "envelope"},
                                                    {"ctn", "carton"},
                                                    {"btl", "bottle"},
                                                    {"stk", "stick"},
                                                    {"hd", "head"},
                                                    {"ea", "piece"},
                                                    {"bu", "bushel"},
                                                    {"teasp", "tsp"},
                                                    {"teasps", "tsp"},
                                                    {"tspn", "tsp"},
                                                    {"dessertsp", "dsp"},
                                                    {"pkg", "package"},
                                                    {"pkgs", "package"},
                                                    {"pkge", "package"},
                                                    {"pkt", "packet"},
                                                    {"pkts", "packet"},
                                                    {"doz", "dozen"},
                                                    {"dozens", "dozen"},
                                                    {"pc", "piece"},
                                                    {"pcs", "piece"},
                                                    // German
                                                    {"zehe", "clove"},
                                                    {"zehen", "clove"},
                                                    {"prise", "pinch"},
                                                    {"prisen", "pinch"},
                                                    {"scheibe", "slice"},
                                                    {"scheiben", "slice"},
                                                    {"bund", "bunch"},
                                                    {"dose", "tin"},
                                                    {"dosen", "tin"},
                                                    {"st\u00FCck", "piece"}});

// Letters whose case tells.
constexpr auto letters = std::to_array<Spelling>({{"c", "cup"},
                                                  {"C", "cup"},
                                                  {"T", "tbsp"},
                                                  {"Tb", "tbsp"},
                                                  {"t", "tsp"},
                                                  {"EL", "tbsp"},
                                                  {"TL", "tsp"}});

constexpr auto unsized_words = std::to_array<std::string_view>(
    {"barrel",  "basin",  "bowl",      "coffeecup", "coffeespoon",  "cwt",        "drachm",
     "drachms", "dram",   "drams",     "dr",        "eggcup",       "eggspoon",   "finger",
     "fingers", "firkin", "glass",     "glasses",   "gr",           "grs",        "jigger",
     "jiggers", "ladle",  "measure",   "mug",       "mustardspoon", "noggin",     "part",
     "parts",   "plate",  "saltspoon", "scruple",   "scruples",     "shot",       "shots",
     "pk",      "spoon",  "thimble",   "tumbler",   "wineglass",    "wineglasses"});

/// Words of food that begin like a unit: the first, and what must follow.
constexpr auto compounds = std::to_array<Spelling>(
    {{"minute", "steak"},   {"minute", "steaks"},   {"finger", "chilli"}, {"finger", "chillies"},
     {"finger", "chilies"}, {"finger", "biscuits"}, {"round", "steak"},   {"round", "steaks"},
     {"rib", "roast"},      {"rib", "eye"},         {"rib", "steak"},     {"rib", "steaks"},
     {"strip", "steak"},    {"strip", "steaks"},    {"stem", "ginger"},   {"leaf", "gelatine"},
     {"leaf", "gelatin"},   {"leaf", "lettuce"},    {"cake", "flour"},    {"cake", "mix"},
     {"loaf", "sugar"},     {"lump", "crab"},       {"lump", "crabmeat"}, {"square", "tin"},
     {"stone", "fruit"},    {"stone", "fruits"},    {"pound", "cake"},    {"pound", "cakes"},
     {"pot", "roast"},      {"pot", "pie"},         {"pot", "pies"},      {"can", "opener"},
     {"head", "cheese"},    {"cup", "cakes"},       {"grain", "bread"},   {"grain", "mustard"}});

constexpr auto vessels = std::to_array<std::string_view>({"cup", "spoon", "glass"});
constexpr auto vessel_kinds = std::to_array<std::string_view>(
    {"tea", "table", "dessert", "breakfast", "coffee", "salt", "mustard", "egg", "wine"});

constexpr auto written_out = std::to_array<std::string_view>(
    {"cup", "cupful", "gallon", "gill", "gram", "liter", "litre", "ounce", "pint", "pound", "quart",
     "tablespoon", "tablespoonful", "teaspoon", "teaspoonful"});

template <typename Words>
bool contains(const Words& words, std::string_view word) {
  return std::ranges::find(words, word) != words.end();
}

UnitKind kind_of_unit(const NamedUnit& unit) {
  if (unit.dimension == dimension::length()) return UnitKind::length;
  if (unit.dimension == dimension::time()) return UnitKind::time;
  if (unit.dimension == dimension::piece() && unit.ratio == Rational(1)) return UnitKind::noun;
  return UnitKind::measure;
}

/// Every word there is, in lower case, and the letters whose case tells.
class WordTable {
 public:
  static const WordTable& shared() {
    static const WordTable table;
    return table;
  }

  [[nodiscard]] std::optional<UnitWord> find(std::string_view word) const {
    const auto found = words_.find(word);
    return found == words_.end() ? std::nullopt : std::optional(found->second);
  }

 private:
  WordTable() {
    for (const std::string_view word : unsized_words) add(word, {UnitKind::unsized, word});
    for (const auto& [one, many] : nouns_of_pieces()) add_noun(UnitKind::noun, one, many);
    for (const auto& [one, many] : nouns_of_containers()) add_noun(UnitKind::container, one, many);
    for (const std::string_view name : unit_names()) {
      const NamedUnit& unit = *units_called(name).front();
      add(name, {kind_of_unit(unit), unit.label});
    }
    for (const auto& [written, meant] : spellings) add(written, words_.at(meant));
    for (const auto& [written, meant] : letters) add(written, words_.at(meant));
  }

  void add_noun(UnitKind kind, std::string_view one, std::string_view many) {
    add(one, {kind, one});
    add(many, {kind, one});
  }

  /// The first of two meanings holds.
  void add(std::string_view written, UnitWord word) {
    word.in_full_singular = contains(written_out, written);
    word.plural = written.ends_with('s') && written != "glass";
    words_.emplace(written, word);
  }

  std::unordered_map<std::string_view, UnitWord> words_;
};

std::optional<UnitWord> meant_word(std::string_view word) {
  if (auto found = WordTable::shared().find(word)) return found;
  // A single letter has its own case: `T` is no `t`.
  if (word.size() < 2) return std::nullopt;
  return WordTable::shared().find(lower(word));
}

/// `tablespoonsful` and `tablespoonfuls` as `tablespoon`.
std::string without_ful(std::string word) {
  if (word.ends_with("fuls")) word.pop_back();
  if (!word.ends_with("ful") || word == "handful") return word;
  word.resize(word.size() - 3);
  if (word.ends_with("spoons") || word.ends_with("cups")) word.pop_back();
  return word;
}

std::string singular_vessel(std::string word) {
  if (word.ends_with("spoons") || word.ends_with("cups")) word.pop_back();
  return word;
}

/// `tea-cupful`, `table spoons`, `dessert-spoonfuls` as one plain word; the cursor moves past it.
std::string take_vessel(Cursor& cursor) {
  std::string word = lower(cursor.take_word());
  std::erase(word, '-');
  if (contains(vessel_kinds, word)) {
    Cursor probe = cursor;
    const std::string next = lower(probe.take_word());
    const bool vessel =
        std::ranges::any_of(vessels, [&](std::string_view part) { return next.starts_with(part); });
    if (vessel) {
      word += next;
      cursor = probe;
    }
  }
  return word == "handfuls" ? word : singular_vessel(without_ful(std::move(word)));
}

/// `fl oz`, `fl. oz.`, `dry pints`.
std::optional<UnitWord> read_two_words(Cursor& cursor) {
  Cursor probe = cursor;
  const std::string_view word = probe.take_word();
  const bool two = same_word(word, "fl") || same_word(word, "fluid") || same_word(word, "dry");
  if (!two) return std::nullopt;
  const std::string first = lower(word);
  if (probe.rest().starts_with('.')) probe.skip(1);
  const std::string second = lower(probe.take_word());
  const auto units = units_called(first + " " + second);
  if (units.empty()) return std::nullopt;
  cursor = probe;
  return UnitWord{UnitKind::measure, units.front()->label};
}

/// `cupful`, `tea-cup`, `table` of `table spoon`: whether the word may be one of those.
bool may_be_vessel(std::string_view word) {
  const std::string plain = lower(word);
  return plain.find("cup") != std::string::npos || plain.find("spoon") != std::string::npos ||
         plain.find("glass") != std::string::npos || plain.find("ful") != std::string::npos ||
         contains(vessel_kinds, plain);
}

void take_ending(Cursor& cursor) {
  if (cursor.rest().starts_with("(s)")) cursor.skip(3);
  if (cursor.rest().starts_with('.')) cursor.skip(1);
}

std::optional<UnitWord> read_one_word(Cursor& cursor) {
  Cursor probe = cursor;
  const std::string_view written = probe.take_word();
  auto found = meant_word(written);
  if (!found && may_be_vessel(written)) {
    probe = cursor;
    found = WordTable::shared().find(take_vessel(probe));
  }
  if (!found) return std::nullopt;
  cursor = probe;
  return found;
}

}  // namespace

std::optional<UnitWord> read_unit_word(Cursor& cursor) {
  if (cursor.word().empty()) return std::nullopt;
  auto found = read_two_words(cursor);
  if (!found) found = read_one_word(cursor);
  if (found) take_ending(cursor);
  return found;
}

bool begins_compound(std::string_view word, std::string_view next) {
  return std::ranges::any_of(compounds, [&](const Spelling& compound) {
    return same_word(compound.first, word) && same_word(compound.second, next);
  });
}

std::optional<Unit> resolved_unit(std::string_view label, Measures measures) {
  const auto units = units_called(label);
  const NamedUnit* chosen = nullptr;
  for (const NamedUnit* unit : units) {
    const bool meant = unit->measures == Measures::unstated || unit->measures == measures;
    const bool alone = std::ranges::all_of(
        units, [&](const NamedUnit* other) { return other->ratio == unit->ratio; });
    if (meant || (measures == Measures::unstated && alone)) chosen = unit;
    if (meant) break;
  }
  return chosen == nullptr ? std::nullopt : std::optional(Unit({{chosen, 1}}));
}

std::optional<Rational> ratio_of_units(std::string_view larger, std::string_view smaller,
                                       Measures measures) {
  std::optional<Rational> ratio;
  for (const auto& [system, name] : all_measures) {
    if (measures != Measures::unstated && system != measures) continue;
    const auto large = resolved_unit(larger, system);
    const auto small = resolved_unit(smaller, system);
    if (!large || !small) continue;
    if (!(large->dimension() == small->dimension())) return std::nullopt;
    const Rational here = large->ratio() / small->ratio();
    if (ratio && !(*ratio == here)) return std::nullopt;
    ratio = here;
  }
  return ratio;
}

}  // namespace scalepan
