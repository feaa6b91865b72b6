#include "recipe/measure_phrase.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "exact/error.hpp"
#include "measure/unit_table.hpp"
#include "recipe/container_phrase.hpp"
#include "recipe/food_phrase.hpp"
#include "recipe/sum_phrase.hpp"

namespace scalepan {

namespace {

constexpr auto fills = std::to_array<std::string_view>(
    {"heaping",    "heaped",        "rounded",        "rounding",       "level",
     "even",       "scant",         "scanted",        "generous",       "good",
     "full",       "large",         "small",          "slight",         "brimming",
     "packed",     "firmly packed", "tightly packed", "lightly packed", "loosely packed",
     "well packed"});

/// Nouns that stand for one where no number does: `Dash`, `pinch of salt`.
constexpr auto lone_nouns =
    std::to_array<std::string_view>({"pinch", "dash", "handful", "knob", "splash", "squeeze",
                                     "sprig", "drop", "grating", "dollop"});

bool is_lone_noun(std::string_view noun) {
  return std::ranges::find(lone_nouns, noun) != lone_nouns.end();
}

class MeasureReader {
 public:
  MeasureReader(Cursor& cursor, Reading reading, const Catalog& catalog, AmountPlace place)
      : cursor_(cursor), reading_(reading), catalog_(catalog), place_(place) {}

  std::optional<MeasurePhrase> read() {
    const Cursor start = cursor_;
    const bool digit = !cursor_.skip_spaces().done() && is_digit(cursor_.rest().front());
    if (!digit && read_without_number()) return phrase_;
    if (read_numbered()) return phrase_;
    cursor_ = start;
    return std::nullopt;
  }

 private:
  [[nodiscard]] bool knows(std::string_view phrase) const {
    return knows_food(catalog_, trimmed(phrase));
  }

  bool read_without_number() {
    return read_can_size(cursor_, phrase_, reading_) ||
           read_lone_size(cursor_, phrase_, reading_) || read_lone_noun();
  }

  bool read_lone_noun() {
    Cursor probe = cursor_;
    const std::string_view fill = take_fill(probe);
    const std::size_t start = probe.skip_spaces().at();
    const auto word = read_unit_word(probe);
    if (!word || word->kind != UnitKind::noun || !is_lone_noun(word->name)) return false;
    if (word->plural || knows(cursor_.rest())) return false;
    phrase_.number.low = phrase_.number.high = Rational(1);
    phrase_.size = fill;
    phrase_.count_in(*word, start, reading_.measures);
    cursor_ = probe;
    return true;
  }

  bool read_numbered() {
    start_ = cursor_.skip_spaces().at();
    auto number = read_number_phrase(cursor_, reading_.decimal);
    if (!number) return false;
    phrase_.number = std::move(*number);
    if (!phrase_.number.vague()) skip_article();
    if (read_multiple() || read_bracketed_size(cursor_, phrase_, reading_)) return true;
    if (!phrase_.number.vague() && read_can_size(cursor_, phrase_, reading_)) {
      expect_one_unit(start_);
      return true;
    }
    if (read_second_number()) return true;
    read_unit();
    return true;
  }

  /// The `a` of `half a lemon`, `1/2 a nutmeg`.
  void skip_article() {
    if (phrase_.number.article) return;
    Cursor probe = cursor_;
    probe.take_word("of");
    if (probe.take_word("a") || probe.take_word("an")) cursor_ = probe;
  }

  /// `x 400 g tins` behind the count.
  bool read_multiple() {
    Cursor probe = cursor_;
    if (!probe.take_sign("\u00D7") && !take_letter_x(probe)) return false;
    return read_size_and_container(probe, false);
  }

  static bool take_letter_x(Cursor& cursor) {
    Cursor probe = cursor;
    if (!probe.take_sign("x") && !probe.take_sign("X")) return false;
    if (!probe.done() && probe.rest().front() != ' ' && !is_digit(probe.rest().front())) {
      return false;
    }
    cursor = probe;
    return true;
  }

  /// `14-oz can` behind a count, `3-inch` behind a count; two bare numbers are refused.
  bool read_second_number() {
    Cursor probe = cursor_;
    const std::size_t start = probe.skip_spaces().at();
    if (probe.done() || !is_digit(probe.rest().front()) || start == cursor_.at()) return false;
    std::size_t position = start;
    if (!read_amount_number(probe.text(), position, reading_.decimal)) return false;
    const bool bound = probe.text().substr(position).starts_with('-');
    if ((bound || settled_by_bracket(cursor_.text(), start, reading_)) &&
        read_size_and_container(probe, true))
      return true;
    probe.move_to(position);
    if (!probe.rest().starts_with('%') && read_unit_word(probe)) {
      fail_at(start, "line.two_numbers",
              "two numbers stand side by side in \"" +
                  excerpt(probe.text().substr(start_, probe.at() - start_)) + "\"",
              "write 2 x 400 g tins, or the amount alone");
    }
    return false;
  }

  /// `400 g tins`; `15 ml spoon`, which is 15 mL; `400 g` alone behind `2 x`.
  bool read_size_and_container(Cursor probe, bool needs_container) {
    const auto size = read_size(probe, reading_);
    if (!size) return false;
    take_hyphen(probe);
    const std::size_t at = probe.at();
    Cursor behind = probe;
    const auto word = read_unit_word(behind);
    if (word && word->kind == UnitKind::container && !knows(probe.rest())) {
      phrase_.each = *size;
      phrase_.count_in(*word, at, reading_.measures);
      cursor_ = behind;
      return true;
    }
    if (needs_container) return false;
    scale_number(size->number);
    phrase_.kind = UnitKind::measure;
    phrase_.unit = size->name;
    phrase_.unit_at = at;
    phrase_.measure = size->unit;
    cursor_ = word && word->kind == UnitKind::unsized && word->name == "spoon" ? behind : probe;
    return true;
  }

  void scale_number(const Rational& factor) {
    for (auto* bound : {&phrase_.number.low, &phrase_.number.high}) {
      if (*bound) **bound *= factor;
    }
  }

  void read_unit() {
    if (take_pound_sign()) return;
    expect_no_price();
    take_hyphen(cursor_);
    Cursor probe = cursor_;
    const std::string_view fill = take_fill(probe);
    const std::size_t at = probe.skip_spaces().at();
    auto word = read_unit_word(probe);
    if (!word && probe.word().size() == 1) expect_clear_letter(probe.word(), at);
    if (!word || (fill.empty() && is_food(*word, probe))) return;
    if (word->kind == UnitKind::noun && !fill.empty() && is_size(fill)) {
      phrase_.size = fill;
    } else if (!fill.empty() && word->kind == UnitKind::measure) {
      phrase_.fill = fill;
    } else if (!fill.empty()) {
      phrase_.size = fill;
    }
    accept(*word, at, probe);
  }

  static bool is_size(std::string_view word) {
    return same_word(word, "large") || same_word(word, "small") || same_word(word, "good");
  }

  /// `c` of `4 c`; letters that could be two units are refused.
  void expect_clear_letter(std::string_view letter, std::size_t at) const {
    try {
      static_cast<void>(find_unit(letter, reading_.measures, UnitScope::kitchen));
    } catch (const Error& error) {
      Place place;
      place.offset = at;
      throw error.at(place);
    }
  }

  /// Whether what looks like a unit begins the name of a food, or is the food: `2 cloves`.
  [[nodiscard]] bool is_food(const UnitWord& word, const Cursor& behind) const {
    if (word.kind == UnitKind::measure || word.kind == UnitKind::time) {
      return same_word(word.name, "stone") && same_word(behind.word(), "fruit");
    }
    if (trimmed(behind.rest()).empty()) return place_ == AmountPlace::front;
    return knows(cursor_.rest());
  }

  void accept(const UnitWord& word, std::size_t at, const Cursor& behind) {
    const std::string_view written = cursor_.text().substr(at, behind.at() - at);
    switch (word.kind) {
      case UnitKind::length:
        if (read_length(written, behind)) return;
        fail_at(at, "line.no_measure",
                "\"" + excerpt(written) + "\" measures a length, which is no amount of food",
                "write what has that length: " +
                    excerpt(cursor_.text().substr(start_, behind.at() - start_)) + " piece");
      case UnitKind::time:
        fail_at(at, "line.time", "\"" + excerpt(written) + "\" is a time, not an amount",
                "times stand in the method");
      case UnitKind::unsized:
        fail_at(at, "line.no_measure", "\"" + excerpt(written) + "\" has no agreed size",
                "write a weight, a volume or a count");
      case UnitKind::none:
      case UnitKind::measure:
      case UnitKind::noun:
      case UnitKind::container:
        break;
    }
    expect_no_doubt(word, at, written);
    cursor_ = behind;
    phrase_.count_in(word, at, reading_.measures);
    if (word.kind == UnitKind::measure) read_after_measure(at);
    if (word.kind == UnitKind::container) read_container_size(cursor_, phrase_, reading_);
    expect_one_unit(at);
  }

  /// `1-3 cup` may mean a third of a cup or one to three cups.
  void expect_no_doubt(const UnitWord& word, std::size_t at, std::string_view written) const {
    if (!phrase_.number.hyphened || !word.in_full_singular) return;
    const std::string low = phrase_.number.low ? exact_text(*phrase_.number.low) : "";
    const std::string high = phrase_.number.high ? exact_text(*phrase_.number.high) : "";
    fail_at(start_, "amount.doubtful",
            "\"" + excerpt(cursor_.text().substr(start_, at + written.size() - start_)) +
                "\" can mean " + low + "/" + high + " or " + low + " to " + high,
            "write " + low + "/" + high + ", or " + low + " to " + high);
  }

  /// `2 cm piece`, `1 inch piece`, `3-inch stick`: one of that size.
  bool read_length(std::string_view written, const Cursor& behind) {
    Cursor probe = behind;
    take_hyphen(probe);
    const std::size_t at = probe.skip_spaces().at();
    if (!probe.take_word("piece") && !probe.take_word("length")) {
      const auto word = read_unit_word(probe);
      if (!word || word->kind != UnitKind::noun) return false;
      phrase_.count_in(*word, at, reading_.measures);
    }
    const std::size_t end = offset_in(cursor_.text(), written) + written.size();
    phrase_.size = trimmed(cursor_.text().substr(start_, end - start_));
    phrase_.number = NumberPhrase{};
    phrase_.number.low = phrase_.number.high = Rational(1);
    cursor_ = probe;
    return true;
  }

  /// A container (`400 g tin`), or further parts of a sum.
  void read_after_measure(std::size_t at) {
    Cursor probe = cursor_;
    take_hyphen(probe);
    const std::size_t word_at = probe.skip_spaces().at();
    const std::string_view rest = probe.rest();
    const auto word = read_unit_word(probe);
    if (word && word->kind == UnitKind::container && !knows(rest) &&
        !trimmed(probe.rest()).starts_with("be ")) {
      take_as_size(*word, word_at, at);
      cursor_ = probe;
      return;
    }
    read_sum(cursor_, phrase_, reading_);
  }

  void take_as_size(const UnitWord& word, std::size_t word_at, std::size_t at) {
    const std::string_view text = trimmed(cursor_.text().substr(start_, cursor_.at() - start_));
    const auto number = phrase_.number.low;
    if (!number || !(phrase_.number.high == number)) {
      fail_at(start_, "amount.doubtful", "the size of a container is one figure",
              "write 2 x 400 g tins");
    }
    if (word.plural || (phrase_.number.mixed && glued_hyphen(at))) {
      const std::string words = excerpt(text) + " " + std::string(word.name);
      fail_at(start_, "amount.doubtful",
              "\"" + words + "\" does not tell how many there are of what size",
              "write 2 x 400 g tins");
    }
    phrase_.each = WrittenSize{*number, phrase_.unit, phrase_.measure, text};
    phrase_.number.low = phrase_.number.high = Rational(1);
    phrase_.count_in(word, word_at, reading_.measures);
  }

  /// `1 1/2-oz can`: one of half an ounce, or of one and a half.
  [[nodiscard]] bool glued_hyphen(std::size_t at) const {
    return at > 0 && cursor_.text()[at - 1] == '-';
  }

  /// `2 cans cups`, `1 teaspoon or tablespoon`.
  void expect_one_unit(std::size_t at) {
    Cursor probe = cursor_;
    const bool alternative = probe.take_word("or");
    const std::size_t second = probe.skip_spaces().at();
    const auto word = read_unit_word(probe);
    if (!word || word->kind != UnitKind::measure) return;
    if (!alternative && knows(cursor_.rest())) return;
    fail_at(
        second, "line.two_units",
        "one number has two units in \"" +
            excerpt(cursor_.text().substr(start_, probe.at() - start_)) + "\"",
        "write one amount: " + std::string(trimmed(cursor_.text().substr(start_, at - start_))) +
            " " + std::string(phrase_.unit));
  }

  /// `3# onions`: pounds.
  bool take_pound_sign() {
    if (phrase_.number.vague() || !cursor_.rest().starts_with('#')) return false;
    const std::string_view behind = cursor_.rest().substr(1);
    if (!behind.empty() && is_digit(behind.front())) return false;
    phrase_.count_in({UnitKind::measure, "lb"}, cursor_.at(), reading_.measures);
    cursor_.skip(1);
    return true;
  }

  /// `1d. yeast`: what a pennyworth was is not known.
  void expect_no_price() const {
    const std::string_view rest = cursor_.rest();
    const bool pence = rest == "d" || rest.starts_with("d.") || rest.starts_with("d ");
    if (!pence && !same_word(cursor_.word(), "pennyworth")) return;
    fail_at(start_, "line.price",
            "\"" + excerpt(cursor_.text().substr(start_, cursor_.at() + 1 - start_)) +
                "\" is a price, not an amount",
            "write a weight, a volume or a count");
  }

  std::string_view take_fill(Cursor& cursor) const {
    for (const std::string_view words : fills) {
      Cursor probe = cursor;
      const std::size_t start = probe.skip_spaces().at();
      if (!probe.take_words(words)) continue;
      const std::string_view written = probe.text().substr(start, probe.at() - start);
      Cursor unit = probe;
      if (!read_unit_word(unit)) return {};
      cursor = probe;
      return written;
    }
    return {};
  }

  Cursor& cursor_;
  Reading reading_;
  const Catalog& catalog_;
  AmountPlace place_;
  MeasurePhrase phrase_;
  std::size_t start_ = 0;
};

}  // namespace

void MeasurePhrase::count_in(const UnitWord& word, std::size_t at, Measures measures) {
  kind = word.kind;
  unit = word.name;
  unit_at = at;
  measure.reset();
  if (word.kind == UnitKind::measure) measure = resolved_unit(word.name, measures);
}

std::optional<MeasurePhrase> read_measure_phrase(Cursor& cursor, Reading reading,
                                                 const Catalog& catalog, AmountPlace place) {
  return MeasureReader(cursor, reading, catalog, place).read();
}

}  // namespace scalepan
