#include "recipe/fill_words.hpp"

#include <algorithm>
#include <array>

#include "recipe/kitchen_words.hpp"
#include "recipe/unit_words.hpp"

namespace scalepan {

namespace {

constexpr auto fills = std::to_array<std::string_view>({"heaping",
                                                        "heaped",
                                                        "rounded",
                                                        "rounding",
                                                        "level",
                                                        "even",
                                                        "scant",
                                                        "scanted",
                                                        "generous",
                                                        "good",
                                                        "full",
                                                        "large",
                                                        "small",
                                                        "slight",
                                                        "brimming",
                                                        "packed",
                                                        "firmly packed",
                                                        "tightly packed",
                                                        "lightly packed",
                                                        "loosely packed",
                                                        "well packed",
                                                        "thick",
                                                        "thin",
                                                        "nice",
                                                        "medium",
                                                        "big",
                                                        "thumb-sized",
                                                        "fat",
                                                        "lg",
                                                        "lge",
                                                        "med",
                                                        "sm",
                                                        "sml"});

/// `fat` of `2 fat cloves garlic`: before what is counted only.
std::string_view take_adjective(Cursor& cursor) {
  Cursor probe = cursor;
  const std::string_view written = probe.take_word();
  if (!is_adjective(written)) return {};
  Cursor unit = probe;
  const auto word = read_unit_word(unit);
  if (!word || word->kind != UnitKind::noun || word->name == "piece") return {};
  cursor = probe;
  return written;
}

}  // namespace

std::string_view take_fill(Cursor& cursor) {
  for (const std::string_view words : fills) {
    Cursor probe = cursor;
    const std::size_t start = probe.skip_spaces().at();
    if (!probe.take_words(words)) continue;
    const std::string_view written = probe.text().substr(start, probe.at() - start);
    if (probe.rest().starts_with('.')) probe.skip(1);
    Cursor unit = probe;
    if (!read_unit_word(unit)) return {};
    cursor = probe;
    return written;
  }
  return take_adjective(cursor);
}

bool is_fill(std::string_view text) { return is_one_of(text, fills); }

std::string_view take_fill_before_number(Cursor& cursor) {
  for (const std::string_view words : fills) {
    Cursor probe = cursor;
    if (!probe.take_words(words)) continue;
    const std::string_view written =
        trimmed(probe.text().substr(cursor.at(), probe.at() - cursor.at()));
    if (probe.skip_spaces().done() || letter_length(probe.text(), probe.at()) > 0) return {};
    cursor = probe;
    return written;
  }
  return {};
}

}  // namespace scalepan
