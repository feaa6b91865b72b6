#include "recipe/measure_phrase.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "exact/error.hpp"
#include "measure/unit_table.hpp"
#include "recipe/container_phrase.hpp"
#include "recipe/food_phrase.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/number_words.hpp"
#include "recipe/sum_phrase.hpp"

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
                                                        "lg",
                                                        "lge",
                                                        "med",
                                                        "sm",
                                                        "sml"});

/// Nouns that stand for one where no number does: `Dash`, `pinch of salt`.
constexpr auto lone_nouns = std::to_array<std::string_view>(
    {"pinch", "dash", "handful", "knob", "splash", "squeeze", "sprig", "drop", "grating", "dollop",
     "drizzle", "bunch", "clove", "slice", "thumb"});

/// Nouns that a weight may stand before: `125 g ball`.
bool is_lump(std::string_view noun) {
  constexpr std::array<std::string_view, 9> lumps{"ball", "bar",   "block", "fillet", "loaf",
                                                  "log",  "piece", "slab",  "wedge"};
  return std::ranges::find(lumps, noun) != lumps.end();
}

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
    if (!word || word->plural) return false;
    if (word->kind != UnitKind::noun && word->kind != UnitKind::container) return false;
    const bool meant = same_word(probe.word(), "of") || !fill.empty();
    if (!meant && (!is_lone_noun(word->name) || knows(cursor_.rest()))) return false;
    if (begins_compound(word->name, probe.word())) return false;
    phrase_.number.low = phrase_.number.high = Rational(1);
    phrase_.size = fill;
    phrase_.count_in(*word, start, reading_.measures);
    cursor_ = probe;
    return true;
  }

  bool read_numbered() {
    start_ = cursor_.skip_spaces().at();
    const std::string_view fill = take_fill_before_number();
    auto number = read_number_phrase(cursor_, reading_.decimal);
    if (!number) return false;
    phrase_.number = std::move(*number);
    phrase_.fill = fill;
    expect_number_alone();
    if (!phrase_.number.vague()) skip_article();
    if (read_multiple() || read_bracketed_size(cursor_, phrase_, reading_, catalog_)) return true;
    if (!phrase_.number.vague() && read_can_size(cursor_, phrase_, reading_)) {
      expect_one_unit(start_);
      return true;
    }
    if (read_second_number()) return true;
    read_unit();
    take_bound(cursor_, phrase_.number);
    return true;
  }

  /// The `scant` of `scant 1/4 tsp`.
  std::string_view take_fill_before_number() {
    for (const std::string_view words : fills) {
      Cursor probe = cursor_;
      if (!probe.take_words(words)) continue;
      const std::string_view written = trimmed(cursor_.text().substr(start_, probe.at() - start_));
      if (probe.skip_spaces().done() || letter_length(probe.text(), probe.at()) > 0) return {};
      cursor_ = probe;
      return written;
    }
    return {};
  }

  /// `1st`, `25. Apple Pie`, `350°`, `1 eighth`: numbers of other things than amounts.
  void expect_number_alone() const {
    if (phrase_.number.vague() || !is_digit(cursor_.text()[start_])) return;
    const std::string_view rest = cursor_.rest();
    const std::string_view glued = rest.substr(0, word_end(rest, 0));
    const bool ordinal = same_word(glued, "st") || same_word(glued, "nd") ||
                         same_word(glued, "rd") || same_word(glued, "th");
    const bool degrees = rest.starts_with("\u00B0") || same_word(cursor_.word(), "degrees");
    const bool fraction = !ordinal && is_fraction_name(cursor_.word());
    if (!ordinal && !degrees && !fraction && !rest.starts_with(". ")) return;
    fail_at(start_, "line.no_amount",
            "\"" + excerpt(cursor_.text().substr(start_)) + "\" does not begin with an amount",
            "begin with a number and a unit: 500 g leeks, 3 eggs");
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
    probe.skip_spaces();
    if (!probe.done() && letter_length(probe.text(), probe.at()) > 0) {
      cursor_ = probe;  // `2 x eggs`
      return false;
    }
    return read_pieces(probe) || read_spoons(probe);
  }

  /// `400 g tins`, `150 g` of what follows.
  bool read_pieces(Cursor probe) {
    Cursor spoon = probe;
    if (read_spoons(spoon)) return true;
    const auto piece = read_sized_piece(probe, reading_, catalog_);
    if (!piece || (!piece->each && !piece->word)) return false;
    count_pieces(phrase_, *piece, reading_);
    cursor_ = probe;
    return true;
  }

  /// `1 x 15 ml spoon` is 15 mL.
  bool read_spoons(Cursor probe) {
    const auto size = read_size(probe, reading_);
    if (!size) return false;
    const auto word = read_unit_word(probe);
    if (!word || word->kind != UnitKind::unsized || word->name != "spoon") return false;
    scale_number(size->number);
    phrase_.count_in({UnitKind::measure, size->name}, probe.at(), reading_.measures);
    cursor_ = probe;
    return true;
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
    const bool in_words = !is_digit(cursor_.text()[start_]);
    const bool settled = settled_by_bracket(cursor_.text(), start, reading_);
    if ((bound || in_words || settled) && read_pieces(probe)) return true;
    probe.move_to(position);
    const bool share = probe.rest().starts_with('%') || same_word(probe.word(), "percent");
    if (!share && read_unit_word(probe)) {
      fail_at(start, "line.two_numbers",
              "two numbers stand side by side in \"" +
                  excerpt(probe.text().substr(start_, probe.at() - start_)) + "\"",
              "write 2 x 400 g tins, or the amount alone");
    }
    return false;
  }

  void scale_number(const Rational& factor) {
    for (auto* bound : {&phrase_.number.low, &phrase_.number.high}) {
      if (*bound) **bound *= factor;
    }
  }

  void read_unit() {
    if (take_pound_sign()) return;
    expect_no_price();
    const bool glued = cursor_.at() > 0 && is_digit(cursor_.text()[cursor_.at() - 1]);
    const std::size_t number_end = cursor_.at();
    if (read_length_sign()) return;
    take_hyphen(cursor_);
    Cursor probe = cursor_;
    const std::string_view fill = take_fill(probe);
    const std::size_t at = probe.skip_spaces().at();
    auto word = read_unit_word(probe);
    if (!word && probe.word().size() == 1) expect_clear_letter(probe.word(), at);
    if (!word && glued && at == number_end && letter_length(probe.text(), at) > 0) {
      fail_unknown_unit(probe.word(), at);
    }
    if (!word || (fill.empty() && is_food(*word, at, probe))) return;
    expect_no_temperature(at);
    if (!fill.empty()) (word->kind == UnitKind::measure ? phrase_.fill : phrase_.size) = fill;
    accept(*word, at, probe);
  }

  /// `3 in. stick`, `2" piece`.
  bool read_length_sign() {
    Cursor probe = cursor_;
    const bool inches = same_word(probe.word(), "in");
    if (!inches && !probe.skip_spaces().done() && letter_length(probe.text(), probe.at()) > 0) {
      return false;
    }
    if (!take_length_unit(probe)) return false;
    return read_length(probe);
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
  [[nodiscard]] bool is_food(const UnitWord& word, std::size_t at, const Cursor& behind) const {
    const std::string_view written = cursor_.text().substr(at, word_end(cursor_.text(), at) - at);
    if (begins_compound(written, behind.word())) return !expect_no_pound_cake(word, at);
    if (word.kind == UnitKind::measure || word.kind == UnitKind::time) return false;
    if (trimmed(behind.rest()).empty()) return place_ == AmountPlace::front;
    if (!knows(cursor_.rest())) return false;
    Cursor food = behind;
    food.take_word("of");
    return !knows(food.rest());  // `3 cloves of garlic` is a name, but garlic is one too
  }

  /// `1 pound cake` is a cake or a pound of cake. Returns false where there is no such doubt.
  [[nodiscard]] bool expect_no_pound_cake(const UnitWord& word, std::size_t at) const {
    if (word.kind != UnitKind::measure || word.name != "lb") return false;
    fail_at(at, "amount.doubtful", "\"pound cake\" can be a weight or the name of a cake",
            "write 1 lb cake, or 1 piece pound cake");
  }

  /// `180C` may be an oven, `25c` a price.
  void expect_no_temperature(std::size_t at) const {
    const char letter = cursor_.text()[at];
    const bool alone = word_end(cursor_.text(), at) == at + 1 && at == cursor_.at();
    if (!alone || (letter != 'C' && letter != 'c') || !phrase_.number.high) return;
    constexpr int most_cups = 10;
    if (*phrase_.number.high <= Rational(most_cups)) return;
    fail_at(start_, "line.temperature",
            "\"" + excerpt(cursor_.text().substr(start_, at + 1 - start_)) +
                "\" may be cups, cents or degrees",
            "write cups for cups");
  }

  void accept(const UnitWord& word, std::size_t at, const Cursor& behind) {
    const std::string_view written = cursor_.text().substr(at, behind.at() - at);
    switch (word.kind) {
      case UnitKind::length:
        if (read_length(behind)) return;
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
    if (word.kind != UnitKind::container) add_fraction_behind();
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

  /// `a pound and a half of flour`.
  void add_fraction_behind() {
    Cursor probe = cursor_;
    const auto fraction = read_fraction_in_words(probe);
    if (!fraction || !phrase_.number.low || !phrase_.number.high) return;
    *phrase_.number.low += *fraction;
    *phrase_.number.high += *fraction;
    cursor_ = probe;
  }

  /// `2 cm piece`, `1 inch piece`, `3-inch stick`: one of that size.
  bool read_length(const Cursor& behind) {
    Cursor probe = behind;
    take_hyphen(probe);
    const std::size_t at = probe.skip_spaces().at();
    if (probe.take_word("length")) {
      phrase_.kind = UnitKind::none;
    } else {
      const auto word = read_unit_word(probe);
      if (!word || word->kind != UnitKind::noun) return false;
      expect_size_clear(*word, behind);
      phrase_.count_in(*word, at, reading_.measures);
    }
    phrase_.size = trimmed(cursor_.text().substr(start_, behind.at() - start_));
    phrase_.number = NumberPhrase{};
    phrase_.number.low = phrase_.number.high = Rational(1);
    cursor_ = probe;
    return true;
  }

  /// `2 1/2-inch slices`: two of half an inch, or slices of two and a half.
  void expect_size_clear(const UnitWord& word, const Cursor& behind) const {
    if (!word.plural) return;
    fail_at(start_, "amount.doubtful",
            "\"" + excerpt(cursor_.text().substr(start_, behind.at() - start_)) + " " +
                std::string(word.name) + "\" does not tell how many there are of what size",
            "write 2 x 1 cm slices");
  }

  /// A container (`400 g tin`), a second bound (`1 tsp to 1 tbsp`), or further parts of a sum.
  void read_after_measure(std::size_t at) {
    Cursor probe = cursor_;
    take_hyphen(probe);
    const std::size_t word_at = probe.skip_spaces().at();
    const std::string_view rest = probe.rest();
    const auto word = read_unit_word(probe);
    const bool holds = word && (word->kind == UnitKind::container ||
                                (word->kind == UnitKind::noun && is_lump(word->name)));
    if (holds && !knows(rest) && !trimmed(probe.rest()).starts_with("be ")) {
      take_as_size(*word, word_at, at);
      cursor_ = probe;
      return;
    }
    if (!read_second_bound()) read_sum(cursor_, phrase_, reading_);
  }

  /// `2/3 c. to 1 c.`, `1 tsp. to 1 tbsp.`.
  bool read_second_bound() {
    Cursor probe = cursor_;
    if (!probe.take_word("to") && !probe.take_sign("-") && !probe.take_sign("\u2013")) return false;
    const std::size_t start = probe.skip_spaces().at();
    std::size_t position = start;
    if (probe.rest().starts_with('-')) return false;
    auto number = read_amount_number(probe.text(), position, reading_.decimal);
    probe.move_to(position);
    if (!number) number = read_number_words(probe);
    if (!number) return false;
    take_hyphen(probe);
    const auto word = read_unit_word(probe);
    if (!word || word->kind != UnitKind::measure) return false;
    const auto ratio = word->name == phrase_.unit
                           ? std::optional(Rational(1))
                           : ratio_of_units(word->name, phrase_.unit, reading_.measures);
    const bool rises = ratio && phrase_.number.high && *number * *ratio > *phrase_.number.high;
    if (!rises) {
      fail_at(start, "amount.doubtful",
              "\"" + excerpt(probe.text().substr(start_, probe.at() - start_)) +
                  "\" is no range that rises in one kind of measure",
              "write the range in one unit");
    }
    phrase_.number.high = *number * *ratio;
    cursor_ = probe;
    return true;
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
    const bool alternative =
        probe.take_word("or") || probe.take_word("a") || probe.take_word("per");
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
    constexpr std::array<std::string_view, 7> money{"pennyworth", "cents",     "cent", "pence",
                                                    "dollars",    "shillings", "penny"};
    const std::string_view word = cursor_.word();
    const bool named =
        std::ranges::any_of(money, [&](std::string_view known) { return same_word(word, known); });
    if (!pence && !named) return;
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
      if (probe.rest().starts_with('.')) probe.skip(1);
      Cursor unit = probe;
      if (!read_unit_word(unit)) return {};
      cursor = probe;
      return written;
    }
    return take_adjective(cursor);
  }

  /// `fat` of `2 fat cloves garlic`: before what is counted only.
  static std::string_view take_adjective(Cursor& cursor) {
    Cursor probe = cursor;
    const std::string_view written = probe.take_word();
    if (!is_adjective(written)) return {};
    Cursor unit = probe;
    const auto word = read_unit_word(unit);
    if (!word || word->kind != UnitKind::noun || word->name == "piece") return {};
    cursor = probe;
    return written;
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
