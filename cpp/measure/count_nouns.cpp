#include "measure/count_nouns.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace scalepan {

namespace {

using Noun = CountNoun;

constexpr auto piece_nouns = std::to_array<Noun>({{"ball", "balls"},
                                                  {"bar", "bars"},
                                                  {"blade", "blades"},
                                                  {"block", "blocks"},
                                                  {"breakfastcup", "breakfastcups"},
                                                  {"bulb", "bulbs"},
                                                  {"bunch", "bunches"},
                                                  {"cake", "cakes"},
                                                  {"clove", "cloves"},
                                                  {"dash", "dashes"},
                                                  {"dollop", "dollops"},
                                                  {"drop", "drops"},
                                                  {"ear", "ears"},
                                                  {"fillet", "fillets"},
                                                  {"floret", "florets"},
                                                  {"grain", "grains"},
                                                  {"grating", "gratings"},
                                                  {"grind", "grinds"},
                                                  {"handful", "handfuls"},
                                                  {"head", "heads"},
                                                  {"knob", "knobs"},
                                                  {"leaf", "leaves"},
                                                  {"loaf", "loaves"},
                                                  {"lump", "lumps"},
                                                  {"nib", "nibs"},
                                                  {"pinch", "pinches"},
                                                  {"portion", "portions"},
                                                  {"quartern", "quarterns"},
                                                  {"rasher", "rashers"},
                                                  {"recipe", "recipes"},
                                                  {"rib", "ribs"},
                                                  {"scoop", "scoops"},
                                                  {"serving", "servings"},
                                                  {"sheet", "sheets"},
                                                  {"slice", "slices"},
                                                  {"spear", "spears"},
                                                  {"splash", "splashes"},
                                                  {"sprig", "sprigs"},
                                                  {"square", "squares"},
                                                  {"squeeze", "squeezes"},
                                                  {"stalk", "stalks"},
                                                  {"stem", "stems"},
                                                  {"stick", "sticks"},
                                                  {"strip", "strips"},
                                                  {"teacup", "teacups"},
                                                  {"drizzle", "drizzles"},
                                                  {"log", "logs"},
                                                  {"pat", "pats"},
                                                  {"roll", "rolls"},
                                                  {"round", "rounds"},
                                                  {"shake", "shakes"},
                                                  {"slab", "slabs"},
                                                  {"sliver", "slivers"},
                                                  {"thumb", "thumbs"},
                                                  {"twist", "twists"},
                                                  {"wedge", "wedges"}});

constexpr auto container_nouns = std::to_array<Noun>(
    {{"bag", "bags"},           {"bottle", "bottles"}, {"box", "boxes"},
     {"can", "cans"},           {"carton", "cartons"}, {"container", "containers"},
     {"envelope", "envelopes"}, {"jar", "jars"},       {"pack", "packs"},
     {"package", "packages"},   {"packet", "packets"}, {"pot", "pots"},
     {"pouch", "pouches"},      {"punnet", "punnets"}, {"sachet", "sachets"},
     {"sack", "sacks"},         {"tin", "tins"},       {"tray", "trays"},
     {"tub", "tubs"},           {"tube", "tubes"}});

template <std::size_t N>
std::optional<std::string_view> singular(const std::array<Noun, N>& nouns, std::string_view word) {
  for (const auto& [one, many] : nouns) {
    if (word == one || word == many) return one;
  }
  return std::nullopt;
}

}  // namespace

std::span<const CountNoun> nouns_of_pieces() { return piece_nouns; }

std::span<const CountNoun> nouns_of_containers() { return container_nouns; }

std::optional<std::string_view> piece_noun(std::string_view word) {
  return singular(piece_nouns, word);
}

std::optional<std::string_view> part_noun(std::string_view word) {
  constexpr std::array<std::string_view, 16> parts{
      "bulb",  "clove", "ear",   "floret", "head",  "leaf", "rasher", "rib",
      "sheet", "slice", "spear", "sprig",  "stalk", "stem", "stick",  "wedge"};
  const auto noun = piece_noun(word);
  return noun && std::ranges::find(parts, *noun) != parts.end() ? noun : std::nullopt;
}

std::optional<std::string_view> container_noun(std::string_view word) {
  return singular(container_nouns, word);
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

bool is_tin(std::string_view singular) { return singular == "tin" || singular == "can"; }

bool same_noun(std::string_view a, std::string_view b) {
  return a == b || (is_tin(a) && is_tin(b));
}

}  // namespace scalepan
