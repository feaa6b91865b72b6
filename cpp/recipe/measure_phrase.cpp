#include "recipe/measure_phrase.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "exact/error.hpp"
#include "measure/unit_table.hpp"
#include "recipe/number_words.hpp"

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
    if (read_can_size() || read_lone_size() || read_lone_noun() || read_numbered()) return phrase_;
    cursor_ = start;
    return std::nullopt;
  }

 private:
  [[nodiscard]] bool knows(std::string_view phrase) const {
    try {
      return catalog_.find(trimmed(phrase)).has_value();
    } catch (const Error&) {
      return true;  // a name of several foods is one nevertheless
    }
  }

  /// `#10 can`, `No. 2 can`: one, of the size its maker calls so.
  bool read_can_size() {
    Cursor probe = cursor_;
    const std::size_t start = probe.skip_spaces().at();
    const bool named = probe.take_sign("#") || probe.take_words("no") || probe.take_words("number");
    if (!named) return false;
    if (probe.rest().starts_with('.')) probe.skip(1);
    std::size_t position = probe.skip_spaces().at();
    if (!read_amount_number(probe.text(), position, reading_.decimal)) return false;
    probe.move_to(position);
    const std::string_view size = probe.text().substr(start, position - start);
    const auto word = read_unit_word(probe);
    if (!word || word->kind != UnitKind::container) return false;
    if (phrase_.number.vague()) phrase_.number.low = phrase_.number.high = Rational(1);
    set_unit(*word, start);
    phrase_.size = size;
    cursor_ = probe;
    expect_one_unit(start);
    return true;
  }

  /// `quart box`, `pound package`: a container whose size lacks its number.
  bool read_lone_size() {
    Cursor probe = cursor_;
    const std::size_t start = probe.skip_spaces().at();
    const auto size = read_unit_word(probe);
    if (!size || size->kind != UnitKind::measure || probe.word().empty()) return false;
    const std::string_view text = probe.text().substr(start, probe.at() - start);
    const auto word = read_unit_word(probe);
    if (!word || word->kind != UnitKind::container) return false;
    phrase_.number.low = phrase_.number.high = Rational(1);
    phrase_.each =
        WrittenSize{Rational(1), size->name, resolved_unit(size->name, reading_.measures), text};
    set_unit(*word, start);
    cursor_ = probe;
    return true;
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
    set_unit(*word, start);
    cursor_ = probe;
    return true;
  }

  bool read_numbered() {
    start_ = cursor_.skip_spaces().at();
    auto number = read_number_phrase(cursor_, reading_.decimal);
    if (!number) return false;
    phrase_.number = std::move(*number);
    if (!phrase_.number.vague()) skip_article();
    if (read_multiple() || read_bracketed_size()) return true;
    if (!phrase_.number.vague() && read_can_size()) return true;
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

  /// `(14.5-ounce) can` behind the count.
  bool read_bracketed_size() {
    Cursor probe = cursor_;
    if (!probe.take_sign("(")) return false;
    const auto size = read_size(probe);
    if (!size || !probe.take_sign(")")) return false;
    const std::size_t at = probe.at();
    const auto word = read_unit_word(probe);
    if (!word || word->kind != UnitKind::container) return false;
    phrase_.each = *size;
    set_unit(*word, at);
    cursor_ = probe;
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
    if ((bound || settled_by_bracket(start)) && read_size_and_container(probe, true)) return true;
    probe.move_to(position);
    if (!probe.rest().starts_with('%') && read_unit_word(probe)) {
      fail_at(start, "line.two_numbers",
              "two numbers stand side by side in \"" +
                  excerpt(probe.text().substr(start_, probe.at() - start_)) + "\"",
              "write 2 x 400 g tins, or the amount alone");
    }
    return false;
  }

  /// Whether a bracket further on repeats the second number: `5 50 ounce cans (50 ounces each)`.
  [[nodiscard]] bool settled_by_bracket(std::size_t start) const {
    Cursor size(cursor_.text(), start);
    const auto first = read_size(size);
    const std::size_t open = cursor_.text().find('(', start);
    if (!first || open == std::string_view::npos) return false;
    Cursor bracket(cursor_.text(), open + 1);
    const auto second = read_size(bracket);
    return second && second->number == first->number && second->name == first->name &&
           bracket.take_word("each") && bracket.take_sign(")");
  }

  /// `400 g tins`; `15 ml spoon`, which is 15 mL; `400 g` alone behind `2 x`.
  bool read_size_and_container(Cursor probe, bool needs_container) {
    const auto size = read_size(probe);
    if (!size) return false;
    take_hyphen(probe);
    const std::size_t at = probe.at();
    Cursor behind = probe;
    const auto word = read_unit_word(behind);
    if (word && word->kind == UnitKind::container && !knows(probe.rest())) {
      phrase_.each = *size;
      set_unit(*word, at);
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

  [[nodiscard]] std::optional<WrittenSize> read_size(Cursor& cursor) const {
    Cursor probe = cursor;
    const std::size_t start = probe.skip_spaces().at();
    probe.take_word("about");
    std::size_t position = probe.skip_spaces().at();
    const auto number = read_amount_number(probe.text(), position, reading_.decimal);
    if (!number || number->sign() <= 0) return std::nullopt;
    probe.move_to(position);
    take_hyphen(probe);
    const auto word = read_unit_word(probe);
    if (!word || word->kind != UnitKind::measure) return std::nullopt;
    WrittenSize size{*number, word->name, resolved_unit(word->name, reading_.measures),
                     probe.text().substr(start, probe.at() - start)};
    cursor = probe;
    return size;
  }

  static void take_hyphen(Cursor& cursor) {
    if (cursor.rest().starts_with('-') && letter_length(cursor.text(), cursor.at() + 1) > 0) {
      cursor.skip(1);
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
    set_unit(word, at);
    if (word.kind == UnitKind::measure) read_after_measure(at);
    if (word.kind == UnitKind::container) read_container_size();
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

  void set_unit(const UnitWord& word, std::size_t at) {
    phrase_.kind = word.kind;
    phrase_.unit = word.name;
    phrase_.unit_at = at;
    phrase_.measure.reset();
    if (word.kind == UnitKind::measure) {
      phrase_.measure = resolved_unit(word.name, reading_.measures);
    }
  }

  /// `2 cm piece`, `1 inch piece`, `3-inch stick`: one of that size.
  bool read_length(std::string_view written, const Cursor& behind) {
    Cursor probe = behind;
    take_hyphen(probe);
    const std::size_t at = probe.skip_spaces().at();
    if (!probe.take_word("piece") && !probe.take_word("length")) {
      const auto word = read_unit_word(probe);
      if (!word || word->kind != UnitKind::noun) return false;
      set_unit(*word, at);
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
    while (read_part()) {
    }
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
    set_unit(word, word_at);
  }

  /// `1 1/2-oz can`: one of half an ounce, or of one and a half.
  [[nodiscard]] bool glued_hyphen(std::size_t at) const {
    return at > 0 && cursor_.text()[at - 1] == '-';
  }

  /// The `4 oz` of `1 lb 4 oz`, the `2 tbsp` of `1 cup plus 2 tbsp`.
  bool read_part() {
    Cursor probe = cursor_;
    const bool joined = probe.take_sign("+") || probe.take_word("plus") || probe.take_word("and") ||
                        probe.take_sign("&");
    const std::size_t start = probe.skip_spaces().at();
    if (!joined && start == cursor_.at() &&
        !(start < probe.text().size() && is_digit(probe.text()[start]))) {
      return false;
    }
    std::size_t position = start;
    if (probe.rest().starts_with('-')) return false;
    auto number = read_amount_number(probe.text(), position, reading_.decimal);
    probe.move_to(position);
    if (!number && joined) number = read_number_words(probe);
    if (!number) return false;
    if (probe.rest().starts_with('%')) return false;
    const auto word = read_unit_word(probe);
    if (!word || word->kind == UnitKind::time || word->kind == UnitKind::noun) return false;
    add_part(*number, *word, start, probe);
    cursor_ = probe;
    return true;
  }

  void add_part(const Rational& number, const UnitWord& word, std::size_t start,
                const Cursor& behind) {
    const std::string_view written = behind.text().substr(start, behind.at() - start);
    const std::string_view last = last_part_.empty() ? phrase_.unit : last_part_;
    const auto whole = ratio(phrase_.unit, word.name);
    const auto step = ratio(last, word.name);
    if (word.kind != UnitKind::measure || !whole || !step || *step <= Rational(1)) {
      expect_known_measures(last, word.name, start);
      fail_at(start, "amount.doubtful",
              "\"" + excerpt(written) +
                  "\" does not go on with a smaller unit of the same kind as " + std::string(last));
    }
    if (!phrase_.number.low || !(phrase_.number.high == phrase_.number.low)) {
      fail_at(start, "amount.doubtful", "a range is followed by a second amount",
              "write the range in one unit");
    }
    *phrase_.number.low += number / *whole;
    phrase_.number.high = phrase_.number.low;
    last_part_ = word.name;
  }

  [[nodiscard]] std::optional<Rational> ratio(std::string_view larger,
                                              std::string_view smaller) const {
    return ratio_of_units(larger, smaller, reading_.measures);
  }

  /// A sum of cups and tablespoons depends on which are meant.
  void expect_known_measures(std::string_view larger, std::string_view smaller,
                             std::size_t at) const {
    if (reading_.measures != Measures::unstated) return;
    const auto us = ratio_of_units(larger, smaller, Measures::us);
    if (!us || *us <= Rational(1)) return;
    fail_at(at, "unit.which_measures",
            "how many " + std::string(smaller) + " make a " + std::string(larger) +
                " is not the same in all measures, and none are stated",
            "measures = one of: metric, us, imperial, au");
  }

  /// `1 can (4 ounces) ...`.
  void read_container_size() {
    if (phrase_.each) return;
    Cursor probe = cursor_;
    if (!probe.take_sign("(")) return;
    const auto size = read_size(probe);
    if (!size) return;
    probe.take_word("each");
    if (!probe.take_sign(")")) return;
    phrase_.each = *size;
    cursor_ = probe;
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
    set_unit({UnitKind::measure, "lb"}, cursor_.at());
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
  std::string_view last_part_;
};

}  // namespace

std::optional<MeasurePhrase> read_measure_phrase(Cursor& cursor, Reading reading,
                                                 const Catalog& catalog, AmountPlace place) {
  return MeasureReader(cursor, reading, catalog, place).read();
}

}  // namespace scalepan
