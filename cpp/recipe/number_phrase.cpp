#include "recipe/number_phrase.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "exact/error.hpp"
#include "recipe/number_words.hpp"

namespace scalepan {

namespace {

enum class Hedge : std::uint8_t { none, about, at_least, at_most };

constexpr auto hedges = std::to_array<std::pair<std::string_view, Hedge>>({
    {"about", Hedge::about},
    {"around", Hedge::about},
    {"approximately", Hedge::about},
    {"approx", Hedge::about},
    {"roughly", Hedge::about},
    {"circa", Hedge::about},
    {"ca", Hedge::about},
    {"at least", Hedge::at_least},
    {"not less than", Hedge::at_least},
    {"rather more than", Hedge::at_least},
    {"a little more than", Hedge::at_least},
    {"more than", Hedge::at_least},
    {"over", Hedge::at_least},
    {"just over", Hedge::at_least},
    {"nearly", Hedge::at_most},
    {"almost", Hedge::at_most},
    {"not quite", Hedge::at_most},
    {"a little less than", Hedge::at_most},
    {"at most", Hedge::at_most},
    {"up to", Hedge::at_most},
    {"not more than", Hedge::at_most},
    {"no more than", Hedge::at_most},
    {"rather less than", Hedge::at_most},
    {"less than", Hedge::at_most},
    {"just under", Hedge::at_most},
    {"under", Hedge::at_most},
});

constexpr auto vague_words = std::to_array<std::string_view>(
    {"a few",          "a very few", "few",        "some",           "a little",
     "a very little",  "little",     "several",    "plenty of",      "a good deal of",
     "a bit of",       "a touch of", "a taste of", "a suspicion of", "a trace of",
     "enough",         "lots of",    "plenty",     "a lot of",       "equal quantities of",
     "equal parts of", "equal parts"});

Hedge take_hedge(Cursor& cursor) {
  if (letter_length(cursor.text(), cursor.skip_spaces().at()) == 0) {
    return cursor.take_sign("~") ? Hedge::about : Hedge::none;
  }
  for (const auto& [words, hedge] : hedges) {
    if (!cursor.take_words(words)) continue;
    if (hedge == Hedge::about) cursor.take_sign(".");
    return hedge;
  }
  return Hedge::none;
}

class NumberReader {
 public:
  NumberReader(Cursor& cursor, DecimalMark mark) : cursor_(cursor), mark_(mark) {}

  std::optional<NumberPhrase> read() {
    const Cursor start = cursor_;
    const Hedge hedge = take_hedge(cursor_);
    if (read_first()) {
      read_bracketed_choice();
      read_range();
      apply(hedge);
      take_bound(cursor_, phrase_);
      return phrase_;
    }
    cursor_ = start;
    const std::size_t at = cursor_.skip_spaces().at();
    if (!take_vague()) return std::nullopt;
    const std::string_view words = cursor_.text().substr(at, cursor_.at() - at);
    NumberPhrase vague;
    vague.few = words.ends_with("few") || words.ends_with("Few") || same_word(words, "several");
    return vague;
  }

 private:
  bool read_first() {
    between_ = cursor_.take_word("between");
    const std::size_t start = cursor_.skip_spaces().at();
    auto number = read_number();
    if (!number) number = read_article();
    if (!number) return false;
    const std::string_view digits = cursor_.text().substr(start, cursor_.at() - start);
    phrase_.mixed =
        !digits.empty() && is_digit(digits.front()) && digits.find(' ') != std::string_view::npos;
    phrase_.low = phrase_.high = std::move(number);
    return true;
  }

  std::optional<Rational> read_number() {
    Cursor probe = cursor_;
    std::size_t position = probe.skip_spaces().at();
    auto number = read_amount_number(probe.text(), position, mark_);
    if (number) {
      probe.move_to(position);
      expect_no_misprint(*number, probe);
      if (number->is_integer()) add_fraction(*number, probe);
    } else {
      number = read_number_words(probe);
    }
    if (number) cursor_ = probe;
    return number;
  }

  /// `11/2 cups` is one and a half with its space lost, or five and a half.
  void expect_no_misprint(const Rational& number, const Cursor& behind) const {
    const std::size_t start = Cursor(cursor_).skip_spaces().at();
    const std::string_view written = behind.text().substr(start, behind.at() - start);
    const std::size_t slash = written.find_first_not_of("0123456789");
    if (slash == std::string_view::npos || slash < 2 || number <= Rational(1)) return;
    const std::string_view bottom = written.substr(written.find_last_not_of("0123456789") + 1);
    if (bottom.empty() || written.substr(slash).starts_with('.')) return;
    const bool spoons = bottom == "2" || bottom == "3" || bottom == "4" || bottom == "8";
    const bool mixed = written.find_first_of(" -&") != std::string_view::npos;
    const char top = written[slash - 1];
    if (!spoons || mixed || top == '0' || top >= bottom.front()) return;
    const std::string spaced =
        std::string(written.substr(0, slash - 1)) + " " + std::string(written.substr(slash - 1));
    fail_at(start, "number.doubtful",
            "\"" + excerpt(written) + "\" may be a mixed number that lost its space",
            "write " + mixed_text(number) + ", or " + excerpt(spaced));
  }

  /// The rest of `1 and 1/2`, `2 and a half`.
  void add_fraction(Rational& number, Cursor& cursor) const {
    if (const auto fraction = read_fraction_in_words(cursor)) {
      number += *fraction;
      return;
    }
    Cursor probe = cursor;
    if (!probe.take_word("and")) return;
    std::size_t position = probe.skip_spaces().at();
    const auto fraction = read_amount_number(probe.text(), position, mark_);
    if (!fraction || fraction->is_integer() || *fraction > Rational(1)) return;
    number += *fraction;
    cursor.move_to(position);
  }

  std::optional<Rational> read_article() {
    Cursor probe = cursor_;
    if (!probe.take_word("a") && !probe.take_word("an")) return std::nullopt;
    if (auto half = read_bound_fraction(probe)) {  // `a half-pound`
      cursor_ = probe;
      return half;
    }
    if (same_word(probe.word(), "couple")) {
      fail_at(cursor_.skip_spaces().at(), "line.vague", "\"a couple\" may mean two or a few",
              "write the number");
    }
    for (const std::string_view words : vague_words) {
      if (Cursor(cursor_).take_words(words)) return std::nullopt;
    }
    cursor_ = probe;
    phrase_.article = true;
    return Rational(1);
  }

  bool take_vague() {
    if (same_word(cursor_.word(), "couple")) {
      fail_at(cursor_.skip_spaces().at(), "line.vague", "\"couple\" may mean two or a few",
              "write the number");
    }
    return std::ranges::any_of(vague_words,
                               [&](std::string_view words) { return cursor_.take_words(words); });
  }

  void read_range() {
    Cursor probe = cursor_;
    const std::size_t start = probe.at();
    // Of `2- or 3-inch`, `3-to-4-pound`.
    Cursor hanging = probe;
    if (probe.rest().starts_with('-')) hanging.skip(1);
    const bool in_words = hanging.take_word("to") || hanging.take_word("or") ||
                          (between_ && hanging.take_word("and"));
    if (in_words) {
      probe = hanging;
      if (probe.rest().starts_with('-')) probe.skip(1);
    } else if (!take_dash(probe)) {
      return;
    }
    std::swap(cursor_, probe);
    const auto last = read_number();
    std::swap(cursor_, probe);
    if (!last || (in_words && phrase_.article)) return;
    const std::string_view written = probe.text().substr(start, probe.at() - start);
    if (*last < *phrase_.low && !in_words) {
      fail_at(start, "amount.doubtful",
              "\"" + excerpt(written) +
                  "\" is neither the rest of a mixed number nor the end of a range",
              "write 1 1/2, or 1 to 2");
    }
    phrase_.hyphened =
        !in_words && written.starts_with('-') && phrase_.low->is_integer() && last->is_integer();
    phrase_.high = std::max(*phrase_.low, *last);
    phrase_.low = std::min(*phrase_.low, *last);
    cursor_ = probe;
  }

  /// A dash, with a digit or a vulgar fraction behind it.
  static bool take_dash(Cursor& cursor) {
    for (const std::string_view dash : {"-", "\u2013", "\u2014", "\u2011", "\u2012"}) {
      if (!cursor.take_sign(dash)) continue;
      cursor.skip_spaces();
      return !cursor.done() && letter_length(cursor.text(), cursor.at()) == 0 &&
             !cursor.rest().starts_with('-');
    }
    return false;
  }

  /// `1 (or 2)`.
  void read_bracketed_choice() {
    Cursor probe = cursor_;
    if (!probe.take_sign("(") || !probe.take_word("or")) return;
    std::swap(cursor_, probe);
    const auto other = read_number();
    std::swap(cursor_, probe);
    if (!other || !probe.take_sign(")")) return;
    phrase_.high = std::max(*phrase_.low, *other);
    phrase_.low = std::min(*phrase_.low, *other);
    cursor_ = probe;
  }

  void apply(Hedge hedge) {
    phrase_.about = hedge == Hedge::about;
    if (hedge == Hedge::at_least) phrase_.high.reset();
    if (hedge == Hedge::at_most) phrase_.low.reset();
  }

  Cursor& cursor_;
  DecimalMark mark_;
  NumberPhrase phrase_;
  bool between_ = false;
};

}  // namespace

void take_bound(Cursor& cursor, NumberPhrase& phrase) {
  if (phrase.vague() || !phrase.low || !phrase.high) return;
  if (cursor.take_words("or more")) {
    phrase.high.reset();
  } else if (cursor.take_words("or less") || cursor.take_words("or fewer")) {
    phrase.low.reset();
  } else if (cursor.take_words("or so") || cursor.take_words("or thereabouts")) {
    phrase.about = true;
  }
}

std::optional<NumberPhrase> read_number_phrase(Cursor& cursor, DecimalMark mark) {
  return NumberReader(cursor, mark).read();
}

}  // namespace scalepan
