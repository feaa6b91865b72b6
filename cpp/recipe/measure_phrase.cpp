#include "recipe/measure_phrase.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "exact/error.hpp"
#include "measure/unit_table.hpp"
#include "recipe/amount_doubts.hpp"
#include "recipe/container_phrase.hpp"
#include "recipe/fill_words.hpp"
#include "recipe/food_phrase.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/number_words.hpp"
#include "recipe/sum_phrase.hpp"

namespace scalepan {

namespace {

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
  [[nodiscard]] AmountSoFar so_far() const { return {start_, phrase_.number, cursor_}; }
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
    const std::string_view fill = take_fill_before_number(cursor_);
    auto number = read_number_phrase(cursor_, reading_.decimal);
    if (!number) return false;
    phrase_.number = std::move(*number);
    phrase_.fill = fill;
    expect_number_alone(so_far());
    if (!phrase_.number.vague()) skip_article();
    if (read_multiple() || read_bracketed_size(cursor_, phrase_, reading_, catalog_)) return true;
    if (!phrase_.number.vague() && read_can_size(cursor_, phrase_, reading_)) {
      expect_one_unit(so_far(), phrase_.unit, start_, catalog_);
      return true;
    }
    if (read_second_number()) return true;
    read_unit();
    take_bound(cursor_, phrase_.number);
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
    const bool third = !probe.skip_spaces().done() && is_digit(probe.rest().front());
    if (!share && (third || read_unit_word(probe))) {
      fail_at(start, "line.two_numbers",
              "two numbers stand side by side in \"" +
                  excerpt(probe.text().substr(start_, probe.at() - start_)) + "\"",
              "write 2 x 400 g tins, or one number without spaces");
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
    expect_no_price(so_far());
    const bool glued = cursor_.at() > 0 && is_digit(cursor_.text()[cursor_.at() - 1]);
    const std::size_t number_end = cursor_.at();
    if (read_length_sign()) return;
    take_hyphen(cursor_);
    Cursor probe = cursor_;
    const std::string_view fill = take_fill(probe);
    const std::size_t at = probe.skip_spaces().at();
    auto word = read_unit_word(probe);
    if (!word && probe.word().size() == 1) expect_clear_letter(probe.word(), at, reading_.measures);
    if (!word && glued && at == number_end && letter_length(probe.text(), at) > 0) {
      fail_unknown_unit(probe.word(), at);
    }
    if (!word || (fill.empty() && is_food(*word, at, probe))) return;
    expect_no_temperature(so_far(), at);
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

  /// Whether what looks like a unit begins the name of a food, or is the food: `2 cloves`.
  [[nodiscard]] bool is_food(const UnitWord& word, std::size_t at, const Cursor& behind) const {
    const std::string_view written = cursor_.text().substr(at, word_end(cursor_.text(), at) - at);
    if (begins_compound(written, behind.word())) {
      expect_no_pound_cake(word, at);
      return true;
    }
    if (word.kind == UnitKind::measure || word.kind == UnitKind::time) return false;
    if (trimmed(behind.rest()).empty()) return place_ == AmountPlace::front;
    if (!knows(cursor_.rest())) return false;
    Cursor food = behind;
    food.take_word("of");
    return !knows(food.rest());  // `3 cloves of garlic` is a name, but garlic is one too
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
                lower(written).starts_with("gr")
                    ? "nearest: g; in old books it is a grain, of which a pound has 7000"
                    : "write a weight, a volume or a count");
      case UnitKind::none:
      case UnitKind::measure:
      case UnitKind::noun:
      case UnitKind::container:
        break;
    }
    expect_clear_range(so_far(), word, behind.at());
    cursor_ = behind;
    phrase_.count_in(word, at, reading_.measures);
    if (word.kind != UnitKind::container) add_fraction_behind();
    if (word.kind == UnitKind::measure) read_after_measure(at);
    if (word.kind == UnitKind::container) read_container_size(cursor_, phrase_, reading_);
    expect_one_unit(so_far(), phrase_.unit, at, catalog_);
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
      expect_clear_size(so_far(), *word, probe.at());
      phrase_.count_in(*word, at, reading_.measures);
    }
    phrase_.size = trimmed(cursor_.text().substr(start_, behind.at() - start_));
    phrase_.number = NumberPhrase{};
    phrase_.number.low = phrase_.number.high = Rational(1);
    cursor_ = probe;
    return true;
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
    if (!read_second_bound(cursor_, phrase_, reading_, start_)) {
      read_sum(cursor_, phrase_, reading_);
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
      const std::size_t end = word_end(cursor_.text(), word_at);
      const std::string words = excerpt(so_far().up_to(end));
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

  /// `3# onions`: pounds.
  bool take_pound_sign() {
    if (phrase_.number.vague() || !cursor_.rest().starts_with('#')) return false;
    const std::string_view behind = cursor_.rest().substr(1);
    if (!behind.empty() && is_digit(behind.front())) return false;
    phrase_.count_in({UnitKind::measure, "lb"}, cursor_.at(), reading_.measures);
    cursor_.skip(1);
    return true;
  }

  Cursor& cursor_;
  Reading reading_;
  const Catalog& catalog_;
  AmountPlace place_;
  MeasurePhrase phrase_;
  std::size_t start_ = 0;
};

}  // namespace

bool lie_apart(const Rational& a, const Rational& b) {
  return abs(a - b) * Rational(5) > std::max(a, b);
}

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
