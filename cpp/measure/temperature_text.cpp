#include "measure/temperature_text.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>

#include "exact/text.hpp"
#include "measure/temperature.hpp"

namespace scalepan {

namespace {

using Words = std::span<const std::string_view>;

constexpr auto places = std::to_array<std::string_view>({"at", "to"});
/// Words before a heat, never before a difference.
constexpr auto before_heats = std::to_array<std::string_view>(
    {"at", "to", "until", "till", "from", "above", "below", "over", "under", "reaches"});
constexpr auto before_differences =
    std::to_array<std::string_view>({"within", "another", "further", "\u00B1", "+/-"});
constexpr auto changes = std::to_array<std::string_view>(
    {"drop", "rise", "fall", "difference", "increase", "decrease", "change", "gap", "spread"});
constexpr auto verbs = std::to_array<std::string_view>(
    {"cool",  "chill", "heat",     "warm",     "raise",  "lower",  "reduce", "drop", "drops",
     "rise",  "rises", "increase", "decrease", "fall",   "falls",  "turn",   "up",   "down",
     "cools", "heats", "reducing", "raising",  "change", "differ", "differs"});
/// With no `to` between them and a figure, either may be meant: `drop 5 °C`, `heat up 60 °C`.
constexpr auto maybe_changes = std::to_array<std::string_view>(
    {"by",   "drop",  "drops", "raise", "rise", "rises", "lower", "reduce", "increase", "decrease",
     "fall", "falls", "cool",  "heat",  "up",   "down",  "plus",  "minus",  "extra",    "through"});
constexpr auto comparisons = std::to_array<std::string_view>(
    {"cooler", "colder", "hotter", "warmer", "higher", "lower", "more", "less", "above", "below"});
constexpr auto turns =
    std::to_array<std::string_view>({"turn", "turned", "rotate", "tilt", "angle"});
constexpr auto heats = std::to_array<std::string_view>(
    {"oven", "heat", "temperature", "thermostat", "grill", "down", "up"});

bool is_one_of(std::string_view word, Words words) {
  return std::ranges::find(words, lower(word)) != words.end();
}

constexpr std::size_t most_words = 8;

bool ends_clause(char c) { return std::string_view(".,;:!?").find(c) != std::string_view::npos; }

/// The words before a place, the nearest first, at most back to the clause's beginning.
std::vector<std::string_view> words_before(std::string_view text, std::size_t at) {
  std::vector<std::string_view> words;
  std::string_view rest = trimmed(text.substr(0, at));
  while (!rest.empty() && !ends_clause(rest.back()) && words.size() < most_words) {
    std::size_t start = rest.size();
    while (start > 0 && !is_space(rest[start - 1])) --start;
    std::string_view word = rest.substr(start);
    rest = trimmed(rest.substr(0, start));
    while (!word.empty() && (word.front() == '(' || word.front() == '"')) word.remove_prefix(1);
    words.push_back(word);
  }
  return words;
}

enum class Meaning : std::uint8_t { heat, difference, either };

class TextReader {
 public:
  TextReader(std::string_view text, DecimalMark mark)
      : text_(text), plain_(with_plain_spaces(text)), mark_(mark) {}

  void read() {
    while (at_ < plain_.size()) {
      if (!read_temperature() && !read_unread() && !read_gas_mark()) ++at_;
    }
    told_ += text_.substr(copied_);
  }

  std::string told() && { return std::move(told_); }
  std::vector<std::string> untold() && { return std::move(untold_); }

 private:
  bool read_temperature() {
    const auto found = temperature_at(plain_, at_, mark_);
    if (!found) return false;
    const std::vector<std::string_view> before = words_before(plain_, at_);
    if (found->mark == ScaleMark::letter && !is_no_cup(*found, before)) {
      if (may_be_heat(*found) && !found->read.beside) leave(found->end);
      at_ = found->end;
      return true;
    }
    switch (meaning(*found, before)) {
      case Meaning::heat:
        expect_heat(found->read, at_);
        tell(*found, scalepan::told(found->read));
        break;
      case Meaning::difference:
        if (found->mark == ScaleMark::letter) {
          leave(found->end);
        } else {
          expect_difference(found->read, at_);
          tell(*found, told_difference(found->read));
        }
        break;
      case Meaning::either:
        if (!found->read.beside) leave(found->end);
        break;
    }
    at_ = found->end;
    return true;
  }

  [[nodiscard]] Meaning meaning(const FoundTemperature& found,
                                const std::vector<std::string_view>& before) const {
    const auto word = [&](std::size_t i) { return i < before.size() ? before[i] : ""; };
    const std::string_view behind = word_behind(found.end);
    const bool compared = is_one_of(behind, comparisons) && !is_more_or_less(found.end);
    if (is_one_of(word(0), before_heats)) return compared ? Meaning::either : Meaning::heat;
    if (is_one_of(word(0), before_differences)) return Meaning::difference;
    if (word(0) == "of" && is_one_of(word(1), changes)) return Meaning::difference;
    if (lower(word(0)) == "by" && std::ranges::any_of(before, [](auto one) {
          return is_one_of(one, verbs) || is_one_of(one, comparisons);
        })) {
      return Meaning::difference;
    }
    if (is_one_of(word(0), maybe_changes)) return Meaning::either;
    // `between 57 and 60 °C`: the first has no scale of its own.
    if (word(0) == "and" && has_digit(word(1)) && lower(word(2)) == "between") {
      return Meaning::either;
    }
    if (!compared) return Meaning::heat;
    return is_last_or_than(found.end, behind) ? Meaning::difference : Meaning::either;
  }

  /// Letters alone: `180C` is no cup, and `at 63 C` is none; `to 2 C flour` is.
  [[nodiscard]] bool is_no_cup(const FoundTemperature& found,
                               const std::vector<std::string_view>& before) const {
    const std::size_t letter = found.end - 1;
    const bool attached = letter > 0 && is_digit(plain_[letter - 1]);
    const bool three = abs(found.read.written.high) >= Rational(100);
    const bool two = abs(found.read.written.high) >= Rational(10);
    const std::string_view word = before.empty() ? "" : before.front();
    if (lower(word) == "at" && two) return true;
    return three && (found.read.beside || attached || is_one_of(word, places) ||
                     found.read.written.scale == Scale::fahrenheit);
  }

  static bool may_be_heat(const FoundTemperature& found) {
    return abs(found.read.written.high) >= Rational(10);
  }

  /// Figures before a degree sign that were not read: no scale, a fraction, another decimal mark.
  bool read_unread() {
    if (!is_digit(plain_[at_])) return false;
    std::size_t end = at_;
    while (end < plain_.size() && is_of_number(end)) ++end;
    std::size_t mark = end;
    skip_spaces(plain_, mark);
    const std::size_t behind = mark + degree_length(mark);
    if (behind > mark && !is_angle()) leave(behind_scale(behind));
    at_ = behind > mark ? behind_scale(behind) : end;
    return true;
  }

  [[nodiscard]] bool is_of_number(std::size_t at) const {
    if (is_digit(plain_[at])) return true;
    const bool joint = plain_[at] == '.' || plain_[at] == ',' || plain_[at] == '/';
    return joint && at + 1 < plain_.size() && is_digit(plain_[at + 1]);
  }

  [[nodiscard]] std::size_t degree_length(std::size_t at) const {
    for (const std::string_view sign : {"°", "º", "℃", "℉"}) {
      if (std::string_view(plain_).substr(at).starts_with(sign)) return sign.size();
    }
    for (const std::string_view word :
         {"degrees", "degree", "deg", "celsius", "fahrenheit", "kelvin"}) {
      if (is_word(at, word)) return word.size();
    }
    return 0;
  }

  [[nodiscard]] std::size_t behind_scale(std::size_t at) const {
    std::size_t scale = at;
    skip_spaces(plain_, scale);
    for (const std::string_view word : {"celsius", "fahrenheit", "c", "f"}) {
      if (is_word(scale, word)) return scale + word.size();
    }
    return at;
  }

  [[nodiscard]] bool is_angle() const {
    const std::vector<std::string_view> before = words_before(plain_, at_);
    const auto any = [&](Words words) {
      return std::ranges::any_of(before, [&](auto word) { return is_one_of(word, words); });
    };
    return any(turns) && !any(heats);
  }

  bool read_gas_mark() {
    if (at_ > 0 && is_letter(plain_[at_ - 1])) return false;
    std::size_t end = at_;
    for (const std::string_view words : {"gas mark", "gas", "mark"}) {
      if (is_word(at_, words)) {
        end = at_ + words.size();
        break;
      }
    }
    if (end == at_) return false;
    std::size_t number = end;
    skip_spaces(plain_, number);
    std::size_t last = number;
    while (last < plain_.size() && (is_digit(plain_[last]) || plain_[last] == '/')) ++last;
    // Beside degrees it says nothing more.
    const bool beside = copied_ > 0 && trimmed(text_.substr(copied_, at_ - copied_)).size() <= 1;
    if (last > number && !beside) leave(last);
    at_ = std::max(end, last);
    return true;
  }

  [[nodiscard]] bool is_word(std::size_t at, std::string_view word) const {
    const std::size_t end = at + word.size();
    const bool whole = end >= plain_.size() || !is_letter(plain_[end]);
    return at < plain_.size() && whole &&
           lower(std::string_view(plain_).substr(at, word.size())) == word;
  }

  [[nodiscard]] std::string_view word_behind(std::size_t at) const {
    skip_spaces(plain_, at);
    std::size_t end = at;
    while (end < plain_.size() && is_letter(plain_[end])) ++end;
    return std::string_view(plain_).substr(at, end - at);
  }

  [[nodiscard]] bool is_more_or_less(std::size_t at) const {
    skip_spaces(plain_, at);
    return lower(std::string_view(plain_).substr(at, 12)) == "more or less";
  }

  [[nodiscard]] bool is_last_or_than(std::size_t at, std::string_view word) const {
    skip_spaces(plain_, at);
    const std::string_view next = word_behind(at + word.size());
    return next.empty() || lower(next) == "than";
  }

  void tell(const FoundTemperature& found, const std::string& told) {
    told_ += text_.substr(copied_, at_ - copied_);
    told_ += found.open_bracket ? std::string(text_.substr(at_, found.end - at_)) : told;
    copied_ = found.end;
  }

  void leave(std::size_t end) { untold_.emplace_back(text_.substr(at_, end - at_)); }

  std::string_view text_;
  std::string plain_;
  DecimalMark mark_;
  std::size_t at_ = 0;
  std::size_t copied_ = 0;
  std::string told_;
  std::vector<std::string> untold_;
};

TextReader read_text(std::string_view text, DecimalMark mark) {
  TextReader reader(text, mark);
  reader.read();
  return reader;
}

}  // namespace

std::string with_both_scales(std::string_view text, DecimalMark mark) {
  return read_text(text, mark).told();
}

std::vector<std::string> untold_temperatures(std::string_view text, DecimalMark mark) {
  return read_text(text, mark).untold();
}

}  // namespace scalepan
