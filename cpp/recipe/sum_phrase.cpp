#include "recipe/sum_phrase.hpp"

#include "exact/error.hpp"
#include "measure/unit_table.hpp"
#include "recipe/container_phrase.hpp"
#include "recipe/number_words.hpp"

namespace scalepan {

namespace {

/// A sum of cups and tablespoons depends on which are meant.
void expect_known_measures(std::string_view larger, std::string_view smaller, std::size_t at,
                           Measures measures) {
  if (measures != Measures::unstated) return;
  const auto us = ratio_of_units(larger, smaller, Measures::us);
  if (!us || *us <= Rational(1)) return;
  fail_at(at, "unit.which_measures",
          "how many " + std::string(smaller) + " make a " + std::string(larger) +
              " is not the same in all measures, and none are stated",
          "measures = one of: metric, us, imperial, au");
}

class SumReader {
 public:
  SumReader(Cursor& cursor, MeasurePhrase& phrase, Reading reading)
      : cursor_(cursor), phrase_(phrase), reading_(reading), last_(phrase.unit) {}

  void read() {
    while (read_part()) {
    }
  }

 private:
  bool read_part() {
    Cursor probe = cursor_;
    const bool joined = probe.take_sign("+") || probe.take_word("plus") || probe.take_word("and") ||
                        probe.take_sign("&");
    const std::size_t start = probe.skip_spaces().at();
    if (probe.done() || probe.rest().starts_with('-')) return false;
    std::size_t position = start;
    auto number = read_amount_number(probe.text(), position, reading_.decimal);
    probe.move_to(position);
    if (!number && joined) number = read_number_words(probe);
    if (!number || probe.rest().starts_with('%')) return false;
    take_hyphen(probe);
    const auto word = read_unit_word(probe);
    const bool part =
        word && (word->kind == UnitKind::measure || word->kind == UnitKind::container);
    if (!part) return false;
    add(*number, *word, start, probe);
    cursor_ = probe;
    return true;
  }

  void add(const Rational& number, const UnitWord& word, std::size_t start, const Cursor& behind) {
    expect_there(phrase_.unit, phrase_.unit_at);
    expect_there(word.name, start);
    const auto whole = ratio_of_units(phrase_.unit, word.name, reading_.measures);
    const auto step = ratio_of_units(last_, word.name, reading_.measures);
    if (word.kind != UnitKind::measure || !whole || !step || *step <= Rational(1)) {
      expect_known_measures(last_, word.name, start, reading_.measures);
      const std::string_view written = behind.text().substr(start, behind.at() - start);
      fail_at(start, "amount.doubtful",
              "\"" + excerpt(written) +
                  "\" does not go on with a smaller unit of the same kind as " +
                  std::string(last_));
    }
    if (!phrase_.number.low || !(phrase_.number.high == phrase_.number.low)) {
      fail_at(start, "amount.doubtful", "a range is followed by a second amount",
              "write the range in one unit");
    }
    *phrase_.number.low += number / *whole;
    phrase_.number.high = phrase_.number.low;
    last_ = word.name;
  }

  /// Throws `unit.which_measures` for a unit that the stated measures lack.
  void expect_there(std::string_view unit, std::size_t at) const {
    if (reading_.measures == Measures::unstated || resolved_unit(unit, reading_.measures)) return;
    at_offset(at,
              [&] { static_cast<void>(find_unit(unit, reading_.measures, UnitScope::kitchen)); });
  }

  Cursor& cursor_;
  MeasurePhrase& phrase_;
  Reading reading_;
  std::string_view last_;
};

}  // namespace

void read_sum(Cursor& cursor, MeasurePhrase& phrase, Reading reading) {
  SumReader(cursor, phrase, reading).read();
}

bool read_second_bound(Cursor& cursor, MeasurePhrase& phrase, Reading reading,
                       std::size_t start_of_amount) {
  Cursor probe = cursor;
  const bool in_words = probe.take_word("to");
  if (!in_words && !probe.take_sign("-") && !probe.take_sign("\u2013")) return false;
  const std::size_t start = probe.skip_spaces().at();
  std::size_t position = start;
  if (probe.rest().starts_with('-')) return false;
  auto number = read_amount_number(probe.text(), position, reading.decimal);
  probe.move_to(position);
  if (!number) number = read_number_words(probe);
  if (!number) return false;
  take_hyphen(probe);
  const auto word = read_unit_word(probe);
  if (!word || word->kind != UnitKind::measure) return false;
  const auto ratio = word->name == phrase.unit
                         ? std::optional(Rational(1))
                         : ratio_of_units(word->name, phrase.unit, reading.measures);
  // `1 lb - 500 g` says one amount twice, not a range.
  const bool alike = in_words || word->name == phrase.unit;
  const bool rises = alike && ratio && phrase.number.high && *number * *ratio > *phrase.number.high;
  if (!rises) {
    fail_at(start, "amount.doubtful",
            "\"" + excerpt(probe.text().substr(start_of_amount, probe.at() - start_of_amount)) +
                "\" is no range that rises in one kind of measure",
            "write the range in one unit");
  }
  phrase.number.high = *number * *ratio;
  cursor = probe;
  return true;
}

}  // namespace scalepan
