#include "measure/count_nouns.hpp"

#include <array>
#include <utility>

namespace scalepan {

namespace {

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
std::optional<std::string_view> singular(const std::array<Noun, N>& nouns, std::string_view word) {
  for (const auto& [one, many] : nouns) {
    if (word == one || word == many) return one;
  }
  return std::nullopt;
}

}  // namespace

std::optional<std::string_view> piece_noun(std::string_view word) {
  return singular(piece_nouns, word);
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
