#include "measure/unit_text.hpp"

#include <string>
#include <utility>
#include <vector>

#include "exact/error.hpp"
#include "exact/text.hpp"
#include "measure/unit_table.hpp"

namespace scalepan {

namespace {

constexpr std::size_t most_factors = 12;
constexpr std::string_view middle_dot = "\u00B7";

bool is_in_name(char c) { return is_letter(c) || c == '_'; }

std::string_view read_letters(std::string_view text, std::size_t& position) {
  const std::size_t start = position;
  while (position < text.size() && is_in_name(text[position])) ++position;
  return text.substr(start, position - start);
}

/// Whether a letter or a hyphen and a letter go on with the word: the `g` of `gâteaux` and the
/// `day` of `day-old` are no units.
bool goes_on(std::string_view text, std::size_t position) {
  if (position >= text.size()) return false;
  if (text[position] == '-') return position + 1 < text.size() && is_letter(text[position + 1]);
  // Two-byte letters of UTF-8 begin at U+00C0; the signs of multiplication and division are two
  // of them that are no letters.
  const std::string_view here = text.substr(position);
  const auto byte = static_cast<unsigned char>(here.front());
  return byte >= 0xC3U && byte <= 0xDFU && !here.starts_with("\u00D7") &&
         !here.starts_with("\u00F7");
}

const NamedUnit* find_at(std::size_t offset, std::string_view name, Measures measures,
                         UnitScope scope) {
  return at_offset(offset, [&] { return find_unit(name, measures, scope); });
}

/// A full stop and spaces, then the second word of a name of two words.
const NamedUnit* find_two_words(std::string_view text, std::size_t start, std::size_t& position,
                                Measures measures, UnitScope scope) {
  std::size_t probe = position;
  if (probe < text.size() && text[probe] == '.') ++probe;
  const std::size_t gap = probe;
  skip_spaces(text, probe);
  if (probe == gap) return nullptr;
  const std::string first(text.substr(start, position - start));
  const std::string_view second = read_letters(text, probe);
  if (second.empty()) return nullptr;
  const NamedUnit* unit = find_at(start, first + " " + std::string(second), measures, scope);
  if (unit != nullptr) position = probe;
  return unit;
}

/// What a name starts with: a letter, `%` or a bracketed code.
bool starts_name(std::string_view text, std::size_t position) {
  return position < text.size() &&
         (is_in_name(text[position]) || text[position] == '%' || text[position] == '[');
}

class UnitReader {
 public:
  UnitReader(std::string_view text, std::size_t position, Measures measures)
      : text_(text), position_(position), measures_(measures) {}

  [[nodiscard]] std::size_t position() const { return position_; }

  Unit read() {
    std::vector<Unit::Part> parts;
    if (text_.substr(position_).starts_with("1/")) {
      ++position_;
    } else {
      parts = product();
    }
    std::size_t probe = position_;
    skip_spaces(text_, probe);
    if (probe < text_.size() && text_[probe] == '/') {
      position_ = probe + 1;
      divide(parts);
    }
    return Unit(std::move(parts));
  }

 private:
  void divide(std::vector<Unit::Part>& parts) {
    skip_spaces(text_, position_);
    const std::size_t start = position_;
    if (!starts_name(text_, start) && (start >= text_.size() || text_[start] != '(')) {
      fail_at(start, "unit.unreadable", "a unit is missing after \"/\"");
    }
    for (const auto& [unit, power] : factor()) add(parts, unit, -power);
    std::size_t probe = position_;
    skip_spaces(text_, probe);
    const bool divides_again = probe < text_.size() && text_[probe] == '/';
    if (divides_again || starts_name(text_, probe) || multiplies(probe)) {
      fail_at(probe, "unit.doubtful", "what follows \"/\" can be read in two ways",
              "put all that is divided by in brackets: GBP/(kg AP)");
    }
  }

  std::vector<Unit::Part> product() {
    std::vector<Unit::Part> parts = factor();
    while (true) {
      std::size_t probe = position_;
      skip_spaces(text_, probe);
      const std::size_t sign = sign_length(probe);
      if (sign > 0) {
        probe += sign;
        skip_spaces(text_, probe);
        if (!starts_name(text_, probe) && !opens(probe)) {
          fail_at(probe, "unit.unreadable", "a unit is missing after the sign of multiplication");
        }
      }
      if (!starts_name(text_, probe) && !(sign > 0 && opens(probe))) return parts;
      position_ = probe;
      for (const auto& [unit, power] : factor()) add(parts, unit, power);
    }
  }

  std::vector<Unit::Part> factor() {
    if (opens(position_)) return bracket();
    const NamedUnit* unit = name();
    return {{unit, exponent()}};
  }

  // A bracket holds a product of plain factors: brackets in brackets say nothing more.
  std::vector<Unit::Part> bracket() {
    const std::size_t start = position_;
    ++position_;
    skip_spaces(text_, position_);
    if (!starts_name(text_, position_)) {
      fail_at(position_, "unit.unreadable", "a unit is missing after \"(\"");
    }
    std::vector<Unit::Part> parts = product();
    skip_spaces(text_, position_);
    if (position_ >= text_.size() || text_[position_] != ')') {
      fail_at(start, "unit.unreadable", "a bracket is not closed");
    }
    ++position_;
    return parts;
  }

  const NamedUnit* name() {
    const std::size_t start = position_;
    if (text_[start] == '[') return code();
    if (text_[start] == '%') {
      ++position_;
      return find_unit("%", measures_);
    }
    const std::string_view word = read_letters(text_, position_);
    const NamedUnit* unit = find_two_words(text_, start, position_, measures_, UnitScope::all);
    if (unit == nullptr) unit = find_at(start, word, measures_, UnitScope::all);
    if (unit == nullptr) fail_unknown_unit(word, start);
    return unit;
  }

  const NamedUnit* code() {
    const std::size_t start = position_;
    const std::size_t close = text_.find(']', start);
    if (close == std::string_view::npos) {
      fail_at(start, "unit.unreadable", "a bracket is not closed");
    }
    position_ = close + 1;
    const std::string_view written = text_.substr(start, position_ - start);
    const NamedUnit* unit = find_unit(written, measures_);
    if (unit == nullptr) {
      fail_at(start, "unit.unknown", "unknown UCUM code " + excerpt(written));
    }
    return unit;
  }

  int exponent() {
    for (const auto& [sign, power] : {std::pair{"\u00B2", 2}, std::pair{"\u00B3", 3}}) {
      if (text_.substr(position_).starts_with(sign)) {
        position_ += std::string_view(sign).size();
        return power;
      }
    }
    if (position_ >= text_.size() || text_[position_] != '^') return 1;
    ++position_;
    const bool negative = position_ < text_.size() && text_[position_] == '-';
    if (negative) ++position_;
    if (position_ >= text_.size() || !is_digit(text_[position_])) {
      fail_at(position_, "unit.unreadable", "a whole number is missing after \"^\"");
    }
    const int power = text_[position_] - '0';
    ++position_;
    if (position_ < text_.size() && is_digit(text_[position_])) {
      fail_at(position_, "unit.power", "a power of a unit has one digit");
    }
    return negative ? -power : power;
  }

  void add(std::vector<Unit::Part>& parts, const NamedUnit* unit, int power) const {
    if (parts.size() >= most_factors) {
      fail_at(position_, "unit.unreadable",
              "a unit of more than " + std::to_string(most_factors) + " factors");
    }
    parts.emplace_back(unit, power);
  }

  [[nodiscard]] bool opens(std::size_t at) const { return at < text_.size() && text_[at] == '('; }
  [[nodiscard]] bool multiplies(std::size_t at) const { return sign_length(at) > 0; }
  [[nodiscard]] std::size_t sign_length(std::size_t at) const {
    if (at < text_.size() && text_[at] == '*') return 1;
    return text_.substr(std::min(at, text_.size())).starts_with(middle_dot) ? middle_dot.size() : 0;
  }

  std::string_view text_;
  std::size_t position_;
  Measures measures_;
};

}  // namespace

std::optional<Unit> read_unit(std::string_view text, std::size_t& position, Measures measures) {
  std::size_t start = position;
  skip_spaces(text, start);
  const bool only_below = text.substr(std::min(start, text.size())).starts_with("1/");
  if (!only_below && !starts_name(text, start)) return std::nullopt;
  UnitReader reader(text, start, measures);
  Unit unit = at_offset(start, [&] { return reader.read(); });
  position = reader.position();
  return unit;
}

Unit parse_unit(std::string_view text, Measures measures) {
  std::size_t position = 0;
  const auto unit = read_unit(text, position, measures);
  skip_spaces(text, position);
  if (!unit || position < text.size()) {
    fail_at(position, "unit.unreadable",
            "no unit is written in \"" + excerpt(text.substr(position)) + "\"");
  }
  return *unit;
}

std::optional<Unit> read_kitchen_unit(std::string_view text, std::size_t& position,
                                      Measures measures) {
  std::size_t probe = position;
  skip_spaces(text, probe);
  const std::size_t start = probe;
  const std::string_view word = read_letters(text, probe);
  if (word.empty() || goes_on(text, probe)) return std::nullopt;
  const NamedUnit* unit = find_two_words(text, start, probe, measures, UnitScope::kitchen);
  if (unit == nullptr) unit = find_at(start, word, measures, UnitScope::kitchen);
  if (unit == nullptr) return std::nullopt;
  if (probe < text.size() && text[probe] == '.') ++probe;
  position = probe;
  return Unit({{unit, 1}});
}

}  // namespace scalepan
