#include "costing/cell_ids.hpp"

#include <array>

#include "costing/kitchen_functions.hpp"
#include "exact/error.hpp"
#include "exact/text.hpp"
#include "sheet/cell_names.hpp"

namespace scalepan {

namespace {

/// Longer ones are cut, so that a name of a figure can stand behind.
constexpr std::size_t longest_id = 120;

struct Plain {
  std::string_view letter;
  std::string_view plain;
};

/// Of the languages that dishes come from most often; others become "_".
constexpr std::array<Plain, 33> plain_letters{{
    {"à", "a"}, {"á", "a"},  {"â", "a"},  {"ã", "a"}, {"ä", "a"}, {"å", "a"}, {"æ", "ae"},
    {"ç", "c"}, {"è", "e"},  {"é", "e"},  {"ê", "e"}, {"ë", "e"}, {"ì", "i"}, {"í", "i"},
    {"î", "i"}, {"ï", "i"},  {"ñ", "n"},  {"ò", "o"}, {"ó", "o"}, {"ô", "o"}, {"õ", "o"},
    {"ö", "o"}, {"ø", "o"},  {"œ", "oe"}, {"ù", "u"}, {"ú", "u"}, {"û", "u"}, {"ü", "u"},
    {"ý", "y"}, {"ß", "ss"}, {"š", "s"},  {"ž", "z"}, {"č", "c"},
}};

std::string_view plain_of(std::string_view letter) {
  for (const Plain& plain : plain_letters) {
    if (plain.letter == letter) return plain.plain;
  }
  return "_";
}

std::size_t length_of_letter(std::string_view text) {
  std::size_t length = 1;
  while (length < text.size() && (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U) {
    ++length;
  }
  return length;
}

std::string in_plain_letters(std::string_view id) {
  std::string name;
  while (!id.empty()) {
    const std::size_t length = length_of_letter(id);
    const char c = id.front();
    const bool starts = name.empty() || name.back() == '.';
    if (length > 1) {
      name += plain_of(id.substr(0, length));
    } else if (c >= 'A' && c <= 'Z') {
      name += static_cast<char>(c - 'A' + 'a');
    } else if (is_digit(c)) {
      name += starts ? "_" : "";
      name += c;
    } else if (c == '.' && !starts) {
      name += c;
    } else {
      name += c >= 'a' && c <= 'z' ? c : '_';
    }
    id.remove_prefix(length);
  }
  if (name.empty() || name.back() == '.') name += '_';
  return name;
}

bool means_else(const std::string& name) {
  try {
    expect_cell_name(name, *kitchen_functions());
    return false;
  } catch (const Error&) {
    return true;
  }
}

}  // namespace

const std::string& CellIds::name(const std::string& id) {
  const auto [place, fresh] = names_.try_emplace(id);
  if (!fresh) return place->second;
  std::string name = in_plain_letters(std::string_view(id).substr(0, longest_id));
  if (means_else(name)) name += "_";
  const std::string plain = name;
  for (int i = 2; taken_.contains(name); ++i) name = plain + "_" + std::to_string(i);
  taken_.insert(name);
  return place->second = name;
}

}  // namespace scalepan
