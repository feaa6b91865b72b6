#include "recipe/unit_words.hpp"

#include <algorithm>
#include <array>
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
    {"basin", "bowl", "coffeecup", "coffeespoon", "eggcup", "eggspoon", "glass", "glasses", "ladle",
     "mug", "mustardspoon", "plate", "saltspoon", "spoon", "thimble", "tumbler", "wineglass",
     "wineglasses"});

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

template <std::size_t N>
std::optional<std::string_view> spelling(const std::array<Spelling, N>& table,
                                         std::string_view word) {
  for (const auto& [written, meant] : table) {
    if (written == word) return meant;
  }
  return std::nullopt;
}

UnitKind kind_of_unit(const NamedUnit& unit) {
  if (unit.dimension == dimension::length()) return UnitKind::length;
  if (unit.dimension == dimension::time()) return UnitKind::time;
  if (unit.dimension == dimension::piece() && unit.ratio == Rational(1)) return UnitKind::noun;
  return UnitKind::measure;
}

/// A unit of the table or a noun, by a name in lower case.
std::optional<UnitWord> known_word(std::string_view word) {
  if (const auto noun = piece_noun(word)) return UnitWord{UnitKind::noun, *noun};
  if (const auto noun = container_noun(word)) return UnitWord{UnitKind::container, *noun};
  const auto* unsized = std::ranges::find(unsized_words, word);
  if (unsized != unsized_words.end()) return UnitWord{UnitKind::unsized, *unsized};
  const auto units = units_called(word);
  if (units.empty()) return std::nullopt;
  return UnitWord{kind_of_unit(*units.front()), units.front()->label};
}

std::optional<UnitWord> meant_word(std::string_view word) {
  if (const auto letter = spelling(letters, word)) return known_word(*letter);
  const std::string plain = lower(word);
  if (const auto meant = spelling(spellings, plain)) return known_word(*meant);
  // `l` and `L` are one, `MM` and `mm` too; single letters have their own case.
  return known_word(word.size() > 1 ? plain : std::string(word));
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
  const std::string first = lower(probe.take_word());
  if (first != "fl" && first != "fluid" && first != "dry") return std::nullopt;
  if (probe.rest().starts_with('.')) probe.skip(1);
  const std::string second = lower(probe.take_word());
  const auto units = units_called(first + " " + second);
  if (units.empty()) return std::nullopt;
  cursor = probe;
  return UnitWord{UnitKind::measure, units.front()->label};
}

void take_ending(Cursor& cursor) {
  if (cursor.rest().starts_with("(s)")) cursor.skip(3);
  if (cursor.rest().starts_with('.')) cursor.skip(1);
}

std::optional<UnitWord> read_one_word(Cursor& cursor) {
  Cursor probe = cursor;
  const std::string_view written = probe.take_word();
  auto found = meant_word(written);
  if (!found && written.size() > 1) {
    probe = cursor;
    found = known_word(take_vessel(probe));
  }
  if (!found) return std::nullopt;
  const std::string plain = lower(written);
  found->in_full_singular = contains(written_out, plain);
  found->plural = plain.ends_with('s') && plain != "glass";
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
