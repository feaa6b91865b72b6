#include "recipe/written_line.hpp"

#include <algorithm>
#include <utility>

#include "exact/error.hpp"
#include "measure/count_nouns.hpp"
#include "measure/unit_table.hpp"
#include "recipe/cursor.hpp"
#include "recipe/food_first.hpp"
#include "recipe/food_head.hpp"
#include "recipe/food_list.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_parts.hpp"
#include "recipe/line_refusals.hpp"
#include "recipe/line_remarks.hpp"
#include "recipe/line_segments.hpp"
#include "recipe/line_source.hpp"
#include "recipe/line_text.hpp"
#include "recipe/remark_reader.hpp"
#include "recipe/state_words.hpp"

namespace scalepan {

namespace {

constexpr auto npos = std::string_view::npos;

class WrittenLineReader {
 public:
  WrittenLineReader(std::string_view text, Reading reading, const Catalog& catalog)
      : plain_(plain_text(text)), source_{plain_.text, reading, catalog, plain_.tabs} {}

  WrittenLine read() {
    try {
      read_line();
    } catch (const Error& error) {
      throw with_understood(error);
    }
    return std::move(line_);
  }

 private:
  void read_line() {
    cut_rule();
    if (is_separator(body_)) {
      line_.kind = LineKind::separator;
      return;
    }
    body_ = without_marks(body_);
    if (body_.empty()) fail_empty();
    if (is_heading(body_) && !knows(body_) && !holds_amount(body_)) {
      line_.kind = LineKind::heading;
      line_.heading = body_.ends_with(':') ? body_.substr(0, body_.size() - 1) : body_;
      return;
    }
    take_label();
    take_optional_mark();
    expect_ingredient(body_, source_);
    expect_measurable(source_.text.substr(0, source_.text.find('|')));
    if (!read_amount_first() && !read_amount_behind()) read_without_amount();
    expect_sound();
  }

  [[nodiscard]] Error with_understood(const Error& error) const {
    if (understood_.empty()) return error;
    return {error.code(), error.message() + "; understood so far: " + excerpt(understood_),
            error.hint(), error.place()};
  }

  void cut_rule() {
    const std::size_t bar = source_.text.find('|');
    body_ = source_.text.substr(0, bar);
    if (bar == npos) return;
    const std::string_view rule = trimmed(source_.text.substr(bar + 1));
    line_.rule = rule;
    line_.rule_at = rule.empty() ? bar : source_.offset(rule);
  }

  [[noreturn]] static void fail_empty() {
    fail_at(0, "line.empty", "the line is empty", "write an amount and a food: 500 g leeks");
  }

  /// `To serve: lemon wedges`.
  void take_label() {
    const std::size_t colon = body_.find(':');
    if (colon == npos || body_.find('(') < colon) return;
    const std::string_view label = trimmed(body_.substr(0, colon));
    const std::string_view rest = trimmed(body_.substr(colon + 1));
    constexpr std::size_t most_words = 4;
    if (label.empty() || has_digit(label) || words_of(label).size() > most_words) return;
    if (read_tail(rest, source_)) return;
    line_.heading = label;
    Cursor cursor(label);
    line_.optional = cursor.take_words("to serve") || cursor.take_words("to garnish") ||
                     cursor.take_word("optional") || cursor.take_word("garnish");
    body_ = rest;
  }

  /// `when liked, a little minced onion`.
  void take_optional_mark() {
    const bool bracket = body_.starts_with('(');
    const std::size_t end = body_.find(bracket ? ')' : ',');
    if (end == npos || !is_optional_mark(body_.substr(bracket ? 1 : 0, end - (bracket ? 1 : 0)))) {
      return;
    }
    line_.optional = true;
    body_ = trimmed(body_.substr(end + 1));
  }

  // The amount in front.

  bool read_amount_first() {
    if (knows(body_)) return false;  // `half and half`
    Cursor cursor(source_.text, source_.offset(body_));
    const std::string_view part = read_part_lead(cursor, source_.reading.decimal);
    const std::size_t start = cursor.skip_spaces().at();
    cursor = Cursor(source_.text.substr(0, source_.offset(body_) + body_.size()), start);
    auto phrase = read_front(cursor, start);
    if (!phrase) {
      expect_no_lone_unit(cursor);
      return false;
    }
    line_.part = part;
    apply(*phrase, start, cursor.at());
    understood_ = trimmed(source_.text.substr(start, cursor.at() - start));
    expect_not_each(cursor);
    remarks().read_slashed_measure(cursor);
    read_food(cursor.rest());
    return true;
  }

  /// An unknown unit says which number stands before it.
  std::optional<MeasurePhrase> read_front(Cursor& cursor, std::size_t start) {
    try {
      return read_measure_phrase(cursor, source_.reading, source_.catalog, AmountPlace::front);
    } catch (const Error& error) {
      const std::size_t at = error.place().offset;
      if (error.code() == "unit.unknown" && at != Place::no_offset && at > start) {
        understood_ = trimmed(source_.text.substr(start, at - start));
      }
      throw;
    }
  }

  /// `1 tsp each cumin and coriander`: so much of each, which is one line a food.
  void expect_not_each(Cursor cursor) const {
    cursor.take_sign(",");
    if (!same_word(cursor.word(), "each")) return;
    fail_at(cursor.skip_spaces().at(), "line.each",
            "\"" + excerpt(trimmed(cursor.rest())) + "\" gives one amount of each of several foods",
            "write one line a food");
  }

  /// `fl oz canola oil`: the number is lost.
  void expect_no_lone_unit(Cursor cursor) const {
    const std::size_t start = cursor.skip_spaces().at();
    const std::string_view rest = cursor.rest();
    const auto word = read_unit_word(cursor);
    if (!word || word->kind != UnitKind::measure || cursor.word().empty()) return;
    if (knows(rest) || rest.find("  ") != npos) return;
    fail_at(start, "line.no_amount",
            "the unit \"" + excerpt(cursor.text().substr(start, cursor.at() - start)) +
                "\" has no number",
            "write how many: 2 " + std::string(word->name));
  }

  void apply(const MeasurePhrase& phrase, std::size_t start, std::size_t end) {
    const NumberPhrase& number = phrase.number;
    const auto each = phrase.each ? std::optional(phrase.each->number) : std::nullopt;
    for (const auto& figure : {number.low, number.high, each}) {
      if (figure && figure->sign() <= 0) {
        fail_at(start, "line.amount", "an amount must be above zero");
      }
    }
    line_.low = number.low;
    line_.high = number.high;
    line_.about = number.about;
    line_.article = number.article;
    line_.unit_kind = phrase.kind;
    line_.unit = phrase.unit;
    line_.unit_at = phrase.unit_at;
    line_.measure = phrase.measure;
    line_.fill = phrase.fill;
    line_.size = phrase.size;
    if (phrase.each) {
      line_.each_text = phrase.each->text;
      if (phrase.each->unit) line_.each = Quantity(phrase.each->number, *phrase.each->unit);
    }
    if (phrase.kind == UnitKind::none && phrase.each) line_.unit = "piece";
    if (line_.unit.empty() && (!number.vague() || number.few)) line_.unit = "piece";
    few_ = number.few && phrase.kind == UnitKind::none;
    line_.to_taste = number.vague();
    if (number.vague()) line_.vague = trimmed(source_.text.substr(start, end - start));
  }

  // The food in front, as in two columns.

  bool read_amount_behind() {
    const auto cut = read_food_first(body_, source_);
    if (!cut) return false;
    body_ = cut->food;
    const std::size_t tail = source_.offset(cut->tail);
    apply(cut->amount.phrase, tail, tail + cut->tail.size());
    understood_ = cut->tail;
    read_food(body_);
    read_tail_rest(cut->amount.rest);
    return true;
  }

  void read_tail_rest(std::string_view rest) {
    if (is_wish(rest)) {
      line_.to_taste = true;
      line_.notes.emplace_back(rest);
      return;
    }
    const std::string_view word = first_word(rest);
    if (is_size_word(word)) {
      line_.size = word;
      rest = rest.substr(word.size());
    }
    for (const Segment& segment : cut_segments(rest, source_.text)) remarks().read(segment);
  }

  // No amount.

  void read_without_amount() {
    if (starts_with_stray_number()) fail_no_amount();
    read_food(body_);
    const bool numbered = std::ranges::any_of(
        line_.foods, [&](const std::string& food) { return has_digit(food) && !knows(food); });
    const bool unread = !line_.has_amount() && (holds_amount(body_) || !line_.beside.empty() ||
                                                names_measure(line_.food(), source_));
    if (numbered || unread) fail_no_amount();
  }

  [[noreturn]] void fail_no_amount() {
    understood_ = {};
    fail_at(source_.offset(body_), "line.no_amount",
            "no amount can be read in \"" + excerpt(body_) + "\"",
            "begin with a number: 500 g leeks, 3 eggs");
  }

  [[nodiscard]] bool starts_with_stray_number() const {
    const std::string_view name = body_.substr(0, body_.find_first_of("(,"));
    return has_digit(name) && !knows(name) && name.find('%') == npos && name.find('#') == npos;
  }

  [[nodiscard]] RemarkReader remarks() { return {line_, source_}; }
  [[nodiscard]] bool knows(std::string_view name) const { return source_.knows(name); }

  // Food and remarks.

  void read_food(std::string_view rest) {
    expect_no_sum(trimmed(rest), source_);
    std::vector<Segment> segments = cut_segments(rest, source_.text);
    const std::size_t head = find_head(segments);
    if (head == segments.size()) {
      for (const Segment& segment : segments) remarks().read(segment);
      return;
    }
    if (head > 0 && segments[head - 1].bracket)
      take_unit_behind_bracket(line_, segments[head], source_);
    read_head(segments[head]);
    take_lists(line_, segments, head, source_);
    for (std::size_t i = 0; i < segments.size(); ++i) {
      if (i != head && !segments[i].text.empty()) remarks().read(segments[i]);
    }
  }

  /// The segment that names the food: the first that is no bracket and no mere state.
  std::size_t find_head(std::vector<Segment>& segments) {
    for (std::size_t i = 0; i < segments.size(); ++i) {
      Segment& segment = segments[i];
      if (segment.bracket || is_wish(segment.text)) continue;
      if (is_size_word(segment.text) && i + 1 < segments.size()) continue;  // `2 medium (8 oz) ...`
      const bool more = i + 1 < segments.size() && !segments[i + 1].bracket;
      if (knows(segment.text)) return i;
      const std::vector<std::string_view> words = words_of(segment.text);
      const bool state =
          tells_state(segment.text) && words.size() == 1 && !same_word(segment.text, "roast");
      if (!more && state && line_.has_amount()) continue;
      if (!more) return i;
      const bool adjective = words.size() == 1 && is_adjective(words.front());
      if (!state && !adjective) return i;
      const std::string_view next = segments[i + 1].text;
      if (adjective && !state && !tells_state(next)) {
        const std::size_t start = source_.offset(segment.text);
        segment.text = source_.text.substr(start, source_.offset(next) + next.size() - start);
        segments[i + 1].text = {};
        return i;
      }
      if (tells_state(next) && words_of(next).size() == 1) return i;
    }
    return segments.size();
  }

  void read_head(const Segment& segment) {
    std::string_view name = segment.text;
    line_.food_at = source_.offset(name);
    name = take_counted_part(name);
    FoodHead head = read_food_head(name, line_.unit_kind == UnitKind::container, source_.catalog);
    if (!head.name.empty() && inverted_part_.empty()) {
      line_.food_at = source_.offset(head.name);
    }
    if (line_.size.empty()) line_.size = head.size;
    if (!head.stage.empty()) line_.stage = stage_mark(head.stage);
    line_.foods = std::move(head.foods);
    line_.states.insert(line_.states.end(), head.states.begin(), head.states.end());
    line_.alternatives.insert(line_.alternatives.end(), head.alternatives.begin(),
                              head.alternatives.end());
    for (const std::string_view other : head.beside) remarks().add_beside(other);
    for (const std::string_view note : head.notes) remarks().add_note(note);
    take_noun_behind(line_, source_);
    if (head.bound == Bound::or_more) line_.high.reset();
    if (head.bound == Bound::or_less) line_.low.reset();
    if (head.bound == Bound::or_so) line_.about = true;
    if (head.other_number && line_.low && line_.high) {
      line_.low = std::min(*line_.low, *head.other_number);
      line_.high = std::max(*line_.high, *head.other_number);
    }
    if (!line_.foods.empty()) {
      expect_food();
      understood_text_ = std::string(understood_) + " " + line_.food();
      understood_ = trimmed(std::string_view(understood_text_));
    }
  }

  /// `yolks of eggs` behind a count; `1/4 cup yolks of eggs` is of egg yolks.
  std::string_view take_counted_part(std::string_view name) {
    Cursor cursor(name);
    const std::string_view word = cursor.take_word();
    if (part_of_food(word).empty() || !cursor.take_word("of")) return name;
    const std::string_view rest = trimmed(cursor.rest());
    if (rest.empty() || knows(name)) return name;
    if (line_.unit_kind != UnitKind::measure) {
      line_.part = word;
      return rest;
    }
    // A measure of `yolks of eggs` is of egg yolks.
    inverted_part_ = std::string(rest.ends_with('s') ? rest.substr(0, rest.size() - 1) : rest) +
                     " " + std::string(word);
    return knows(inverted_part_) ? std::string_view(inverted_part_) : name;
  }

  void expect_sound() {
    if (line_.foods.empty() && !line_.part.empty())
      line_.foods.push_back(std::exchange(line_.part, {}));
    if (line_.foods.empty()) {
      fail_at(source_.offset(body_) + body_.size(), "line.no_food",
              "no food is written after the amount", "write what it is an amount of: 500 g leeks");
    }
    for (const std::string& name : line_.foods) expect_food_name(name, source_, line_.food_at);
  }

  void expect_food() const {
    const std::string& food = line_.foods.front();
    expect_food_name(food, source_, line_.food_at);
    if (few_ && !food.ends_with('s')) {
      fail_at(source_.offset(body_), "line.vague",
              "\"" + excerpt(body_) + "\" counts what is not in the plural", "write the amount");
    }
    if (line_.unit_kind == UnitKind::none && line_.has_amount()) {
      expect_no_unit_in(food, source_, line_.food_at);
    }
  }

  PlainText plain_;
  LineSource source_;
  std::string_view body_;
  std::string_view understood_;
  std::string understood_text_;
  std::string inverted_part_;
  bool few_ = false;
  WrittenLine line_;
};

}  // namespace

std::string WrittenLine::food() const {
  std::string all;
  for (const std::string& food : foods) all += (all.empty() ? "" : " and ") + food;
  return all;
}

WrittenLine read_written_line(std::string_view text, Reading reading, const Catalog& catalog) {
  return WrittenLineReader(text, reading, catalog).read();
}

}  // namespace scalepan
