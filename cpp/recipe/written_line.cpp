#include "recipe/written_line.hpp"

#include <algorithm>
#include <utility>

#include "exact/error.hpp"
#include "measure/count_nouns.hpp"
#include "measure/unit_table.hpp"
#include "recipe/cursor.hpp"
#include "recipe/food_head.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_refusals.hpp"
#include "recipe/line_remarks.hpp"
#include "recipe/line_segments.hpp"

namespace scalepan {

namespace {

constexpr auto npos = std::string_view::npos;

/// Characters that lists and footnotes put around a line.
std::string_view without_marks(std::string_view text) {
  text = trimmed(text);
  for (bool again = true; again;) {
    again = false;
    for (const std::string_view mark : {"* ", "*", "\u2022", "\u00B7", "- ", "\u2013 ", "[ ]"}) {
      if (!text.starts_with(mark)) continue;
      text = trimmed(text.substr(mark.size()));
      again = true;
    }
  }
  while (text.ends_with('*') || text.ends_with(',') || text.ends_with(';') ||
         (text.ends_with('.') && !text.ends_with("E.P.") && !text.ends_with("A.P."))) {
    text = trimmed(text.substr(0, text.size() - 1));
  }
  return text;
}

bool has_digit(std::string_view text) { return std::ranges::any_of(text, is_digit); }

class WrittenLineReader {
 public:
  WrittenLineReader(std::string_view text, Reading reading, const Catalog& catalog)
      : plain_(with_plain_spaces(text)), text_(plain_), reading_(reading), catalog_(catalog) {}

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
    expect_no_controls();
    cut_rule();
    body_ = without_marks(body_);
    if (body_.empty()) return expect_no_rule();
    if (is_separator(body_)) {
      line_.kind = LineKind::separator;
      return;
    }
    if (is_heading(body_) && !knows_food(catalog_, body_)) {
      line_.kind = LineKind::heading;
      line_.heading = body_.ends_with(':') ? body_.substr(0, body_.size() - 1) : body_;
      return;
    }
    take_label();
    take_optional_mark();
    expect_measurable(text_.substr(0, text_.find('|')));
    if (!read_amount_first() && !read_food_first()) read_without_amount();
    expect_sound();
  }

  [[nodiscard]] Error with_understood(const Error& error) const {
    if (understood_.empty()) return error;
    return {error.code(), error.message() + "; understood so far: " + excerpt(understood_),
            error.hint(), error.place()};
  }

  void expect_no_controls() {
    for (std::size_t i = 0; i < plain_.size(); ++i) {
      const auto byte = static_cast<unsigned char>(plain_[i]);
      if (byte != '\t' && (byte < 0x20U || byte == 0x7FU)) {
        fail_at(i, "line.control_character", "the line holds a control character");
      }
    }
    // A tab parts columns, as a wide gap does.
    for (std::size_t at = plain_.find('\t'); at != std::string::npos; at = plain_.find('\t')) {
      plain_[at] = ' ';
      tabs_.push_back(at);
    }
  }

  void cut_rule() {
    const std::size_t bar = text_.find('|');
    body_ = text_.substr(0, bar);
    if (bar == npos) return;
    const std::string_view rule = trimmed(text_.substr(bar + 1));
    line_.rule = rule;
    line_.rule_at = rule.empty() ? bar : offset_in(text_, rule);
  }

  void expect_no_rule() {
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
    if (read_tail(rest)) return;
    line_.heading = label;
    Cursor cursor(label);
    line_.optional = cursor.take_words("to serve") || cursor.take_words("to garnish") ||
                     cursor.take_word("optional") || cursor.take_word("garnish");
    body_ = rest;
  }

  /// `when liked, a little minced onion`.
  void take_optional_mark() {
    const std::size_t comma = body_.find(',');
    if (comma == npos || !is_optional_mark(body_.substr(0, comma))) return;
    line_.optional = true;
    body_ = trimmed(body_.substr(comma + 1));
  }

  // The amount in front.

  bool read_amount_first() {
    Cursor cursor(text_, offset_in(text_, body_));
    const std::string_view part = read_part_lead(cursor);
    const std::size_t start = cursor.skip_spaces().at();
    cursor = Cursor(text_.substr(0, offset_in(text_, body_) + body_.size()), start);
    auto phrase = read_measure_phrase(cursor, reading_, catalog_, AmountPlace::front);
    if (!phrase) {
      expect_no_lone_unit(cursor);
      return false;
    }
    line_.part = part;
    apply(*phrase, start);
    understood_ = trimmed(text_.substr(start, cursor.at() - start));
    read_slashed_measure(cursor);
    read_food(cursor.rest());
    return true;
  }

  /// `juice of 2 lemons`, `Grated rind and juice 1 lemon`: moves to the amount.
  static std::string_view read_part_lead(Cursor& cursor) {
    Cursor probe = cursor;
    probe.take_word("the");
    const std::size_t start = probe.skip_spaces().at();
    bool named = false;
    bool loose = true;  // may stand without `of`
    while (true) {
      const std::string_view word = probe.word();
      const std::string_view part = part_of_food(word);
      named = named || !part.empty();
      loose = loose && (part.empty() || (part != "meat" && part != "skin" && part != "peel" &&
                                         part != "seeds" && part != "leaves"));
      const bool filler = same_word(word, "and") || is_participle(word) || is_adverb(word);
      if (part.empty() && (!filler || word.empty())) break;
      probe.take_word();
    }
    if (!named) return {};
    const std::size_t end = probe.at();
    const bool of = probe.take_word("of") || probe.take_word("from");
    if (!of && !loose) return {};
    Cursor number = probe;
    const auto count = read_number_or_nothing(number);
    if (!count || count->vague()) return {};
    cursor = probe;
    return probe.text().substr(start, end - start);
  }

  static std::optional<NumberPhrase> read_number_or_nothing(Cursor& cursor) {
    try {
      return read_number_phrase(cursor, DecimalMark::point);
    } catch (const Error&) {
      return std::nullopt;
    }
  }

  /// `fl oz canola oil`: the number is lost.
  void expect_no_lone_unit(Cursor cursor) const {
    const std::size_t start = cursor.skip_spaces().at();
    const std::string_view rest = cursor.rest();
    const auto word = read_unit_word(cursor);
    if (!word || word->kind != UnitKind::measure || cursor.word().empty()) return;
    if (knows_food(catalog_, rest) || rest.find("  ") != npos) return;
    fail_at(start, "line.no_amount",
            "the unit \"" + excerpt(cursor.text().substr(start, cursor.at() - start)) +
                "\" has no number",
            "write how many: 2 " + std::string(word->name));
  }

  void apply(const MeasurePhrase& phrase, std::size_t start) {
    const NumberPhrase& number = phrase.number;
    for (const auto& bound : {number.low, number.high}) {
      if (bound && bound->sign() <= 0) {
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
    if (line_.unit.empty() && (!number.vague() || number.few)) line_.unit = "piece";
    few_ = number.few && phrase.kind == UnitKind::none;
    line_.to_taste = number.vague();
  }

  /// `200g/7oz`, `4 cups or 6 oz`.
  void read_slashed_measure(Cursor& cursor) {
    Cursor probe = cursor;
    if (!probe.take_sign("/") && !probe.take_word("or")) return;
    auto second = read_second(probe);
    if (!second || line_.unit_kind != UnitKind::measure || second->unit.empty()) return;
    add_second(std::move(*second), cursor.at());
    cursor = probe;
  }

  // The food in front, as in two columns.

  bool read_food_first() {
    for (const auto& [food, tail] : food_first_cuts()) {
      if (trimmed(food).empty() || !read_tail(tail)) continue;
      body_ = trimmed(food);
      const auto [phrase, rest] = *read_tail(tail);
      apply(phrase, offset_in(text_, tail));
      understood_ = trimmed(tail);
      read_food(body_);
      read_tail_rest(rest);
      return true;
    }
    return false;
  }

  using Cut = std::pair<std::string_view, std::string_view>;

  /// At the last wide gap, at a dash or colon, and before the last number.
  [[nodiscard]] std::vector<Cut> food_first_cuts() const {
    std::vector<Cut> cuts;
    const auto cut_at = [&](std::size_t at, std::size_t length) {
      if (at != npos && at > 0) cuts.emplace_back(body_.substr(0, at), body_.substr(at + length));
    };
    for (std::size_t at = body_.find("  "); at != npos; at = body_.find("  ", at + 2))
      cut_at(at, 2);
    for (const std::size_t tab : tabs_) {
      const std::size_t start = offset_in(text_, body_);
      if (tab > start && tab < start + body_.size()) cut_at(tab - start, 1);
    }
    for (const std::string_view dash : {" - ", " \u2013 ", " \u2014 ", ": "}) {
      cut_at(body_.rfind(dash), dash.size());
    }
    for (std::size_t at = body_.find(' '); at != npos; at = body_.find(' ', at + 1)) {
      const std::string_view tail = body_.substr(at + 1);
      std::size_t position = 0;
      if (!tail.empty() && starts_with_number(tail, position)) cut_at(at, 1);
    }
    return cuts;
  }

  static bool starts_with_number(std::string_view text, std::size_t& position) {
    try {
      return read_amount_number(text, position).has_value();
    } catch (const Error&) {
      return false;
    }
  }

  using Tail = std::pair<MeasurePhrase, std::string_view>;

  /// The whole tail as an amount, and what stands behind it: a size, the food again, brackets.
  [[nodiscard]] std::optional<Tail> read_tail(std::string_view tail) const {
    tail = trimmed(tail);
    if (tail.empty()) return std::nullopt;
    Cursor cursor(text_.substr(0, offset_in(text_, tail) + tail.size()), offset_in(text_, tail));
    if (is_wish(tail)) return Tail{{}, tail};
    std::optional<MeasurePhrase> phrase;
    try {
      phrase = read_measure_phrase(cursor, reading_, catalog_, AmountPlace::behind);
    } catch (const Error& error) {
      if (error.code() == "line.two_units" || error.code() == "amount.doubtful") throw;
      return std::nullopt;
    }
    if (!phrase || phrase->number.article || phrase->number.vague()) return std::nullopt;
    const std::string_view rest = trimmed(cursor.rest());
    const std::string_view word = first_word(rest);
    const bool ends = rest.empty() || rest.starts_with('(') || rest.starts_with(',');
    const bool sized = is_size_word(word) && rest.size() >= word.size();
    const std::string_view behind = trimmed(rest.substr(word.size()));
    const bool sized_end =
        sized && (behind.empty() || behind.starts_with('(') || behind.starts_with(','));
    if (!ends && !sized_end) expect_summed(rest, cursor);
    return ends || sized_end ? std::optional<Tail>({*phrase, rest}) : std::nullopt;
  }

  /// A sum of unlike things: `2 cans + 9 cups`.
  static void expect_summed(std::string_view rest, const Cursor& cursor) {
    if (!rest.starts_with('+')) return;
    fail_at(cursor.at(), "line.sum",
            "\"" + excerpt(rest) + "\" is added to something of another kind", "write two lines");
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
    for (const Segment& segment : cut_segments(rest, text_)) read_remark(segment);
  }

  // No amount.

  void read_without_amount() {
    if (starts_with_stray_number()) fail_no_amount();
    const std::string_view word = first_word(body_);
    if (is_method_verb(word) && !knows_food(catalog_, body_)) {
      fail_at(offset_in(text_, body_), "line.no_food",
              "\"" + excerpt(body_) + "\" reads like a step of the method",
              "write an amount and a food: 500 g leeks");
    }
    read_food(body_);
    const bool numbered = std::ranges::any_of(
        line_.foods, [&](const std::string& food) { return has_digit(food) && !knows(food); });
    if (numbered || holds_amount(body_)) fail_no_amount();
  }

  [[noreturn]] void fail_no_amount() const {
    fail_at(offset_in(text_, body_), "line.no_amount",
            "no amount can be read in \"" + excerpt(body_) + "\"",
            "begin with a number: 500 g leeks, 3 eggs");
  }

  /// A number behind a wide gap, or one with a unit, that no reading of the line took up.
  static bool holds_amount(std::string_view text) {
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (!is_digit(text[i]) || (i > 0 && text[i - 1] != ' ' && text[i - 1] != '(')) continue;
      if (i > 1 && text.substr(i - 2, 2) == "  ") return true;
      std::size_t position = i;
      if (!starts_with_number(text, position)) continue;
      Cursor cursor(text, position);
      const auto word = read_unit_word(cursor);
      if (word && word->kind != UnitKind::length && word->kind != UnitKind::time) return true;
    }
    return false;
  }

  [[nodiscard]] bool starts_with_stray_number() const {
    const std::string_view name = body_.substr(0, body_.find_first_of("(,"));
    return has_digit(name) && !knows(name) && name.find('%') == npos && name.find('#') == npos;
  }

  [[nodiscard]] bool knows(std::string_view name) const { return knows_food(catalog_, name); }

  // Food and remarks.

  void read_food(std::string_view rest) {
    expect_summed(trimmed(rest), Cursor(text_, offset_in(text_, rest)));
    std::vector<Segment> segments = cut_segments(rest, text_);
    const std::size_t head = find_head(segments);
    if (head == segments.size()) {
      for (const Segment& segment : segments) read_remark(segment);
      return;
    }
    read_head(segments[head]);
    take_lists(segments, head);
    for (std::size_t i = 0; i < segments.size(); ++i) {
      if (i != head && !segments[i].text.empty()) read_remark(segments[i]);
    }
  }

  /// The segment that names the food: the first that is no bracket and no mere state.
  std::size_t find_head(std::vector<Segment>& segments) {
    for (std::size_t i = 0; i < segments.size(); ++i) {
      Segment& segment = segments[i];
      if (segment.bracket || is_wish(segment.text)) continue;
      const bool more = i + 1 < segments.size() && !segments[i + 1].bracket;
      if (knows(segment.text)) return i;
      const std::vector<std::string_view> words = words_of(segment.text);
      const bool state = tells_state(segment.text) && words.size() == 1;
      if (!more && state && line_.has_amount()) continue;
      if (!more) return i;
      const bool adjective = words.size() == 1 && is_adjective(words.front());
      if (!state && !adjective) return i;
      const std::string_view next = segments[i + 1].text;
      if (adjective && !state && !tells_state(next)) {
        const std::size_t start = offset_in(text_, segment.text);
        segment.text = text_.substr(start, offset_in(text_, next) + next.size() - start);
        segments[i + 1].text = {};
        return i;
      }
      if (tells_state(next) && words_of(next).size() == 1) return i;
    }
    return segments.size();
  }

  void read_head(const Segment& segment) {
    std::string_view name = segment.text;
    line_.food_at = offset_in(text_, name);
    name = take_counted_part(name);
    FoodHead head = read_food_head(name, line_.unit_kind == UnitKind::container, catalog_);
    if (name.data() >= text_.data() && !head.name.empty() && inverted_part_.empty()) {
      line_.food_at = offset_in(text_, head.name);
    }
    if (line_.size.empty()) line_.size = head.size;
    if (!head.stage.empty()) line_.stage = stage_named(head.stage);
    line_.foods = std::move(head.foods);
    line_.states.insert(line_.states.end(), head.states.begin(), head.states.end());
    line_.alternatives.insert(line_.alternatives.end(), head.alternatives.begin(),
                              head.alternatives.end());
    for (const std::string_view other : head.beside) add_beside(other);
    for (const std::string_view note : head.notes) add_note(note);
    take_noun_behind();
    if (head.bound == Bound::or_more) line_.high.reset();
    if (head.bound == Bound::or_less) line_.low.reset();
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

  /// `2 garlic cloves`, `3 thyme sprigs`: the noun behind the food.
  void take_noun_behind() {
    if (line_.unit_kind != UnitKind::none || !line_.has_amount() || line_.foods.size() != 1) return;
    std::string& food = line_.foods.front();
    const std::size_t space = food.rfind(' ');
    if (space == npos) return;
    const auto noun = part_noun(lower(std::string_view(food).substr(space + 1)));
    const std::string whole = food.substr(0, space);
    if (!noun || !knows(whole)) return;
    line_.unit_kind = UnitKind::noun;
    line_.unit = *noun;
    food = whole;
  }

  /// `sage, thyme, and marjoram`; `potato-flour, arrowroot, or tapioca`.
  void take_lists(std::vector<Segment>& segments, std::size_t head) {
    std::size_t last = segments.size();
    bool alternatives = false;
    for (std::size_t i = head + 1; i < segments.size(); ++i) {
      Cursor cursor(segments[i].text);
      const bool either = cursor.take_word("or") || cursor.take_word("either");
      if (segments[i].bracket || (!either && !cursor.take_word("and"))) continue;
      if (tells_state(cursor.rest()) || trimmed(cursor.rest()).empty()) continue;
      if (!either && starts_beside(cursor.rest())) continue;
      last = i;
      alternatives = either;
    }
    if (last == segments.size()) last = unmarked_list_end(segments, head);
    for (std::size_t i = head + 1; i <= last && last < segments.size(); ++i) {
      std::string_view text = segments[i].text;
      if (segments[i].bracket || text.empty() || is_reference(text)) continue;
      Cursor cursor(text);
      if (!cursor.take_word("or") && !cursor.take_word("either")) cursor.take_word("and");
      if (tells_state(cursor.rest())) continue;
      (alternatives ? line_.alternatives : line_.foods).emplace_back(trimmed(cursor.rest()));
      segments[i].text = {};
    }
  }

  /// `Pepper, salt`: without an amount, names of two foods are two foods.
  [[nodiscard]] std::size_t unmarked_list_end(const std::vector<Segment>& segments,
                                              std::size_t head) const {
    const std::size_t none = segments.size();
    if (line_.has_amount() || head + 2 != segments.size() || segments[head + 1].bracket) {
      return none;
    }
    const std::string_view second = segments[head + 1].text;
    const std::string inverted = std::string(second) + " " + std::string(segments[head].text);
    const bool two = knows(segments[head].text) && knows(second) && !knows(inverted);
    return two ? head + 1 : none;
  }

  static bool starts_beside(std::string_view text) {
    Cursor cursor(text);
    return read_number_or_nothing(cursor).has_value();
  }

  void add_beside(std::string_view text) {
    if (line_.beside.empty()) line_.beside_at = offset_in(text_, text);
    line_.beside.emplace_back(text);
  }

  void add_note(std::string_view note) {
    if (is_wish(note)) line_.to_taste = true;
    line_.notes.emplace_back(note);
  }

  void read_remark(const Segment& segment) {
    const std::string_view text = trimmed(segment.text);
    if (text.empty()) return;
    if (is_optional_mark(text)) {
      line_.optional = true;
    } else if (is_wish(text)) {
      add_note(text);
    } else if (const auto stage = stage_in_remark(text)) {
      line_.stage = *stage;
      if (text.size() > 4) line_.states.emplace_back(text);
    } else if (!read_amount_remark(text)) {
      read_word_remark(text, segment.bracket);
    }
  }

  /// A second measure, a bound, a fill, a part.
  bool read_amount_remark(std::string_view text) {
    Cursor cursor(text_.substr(0, offset_in(text_, text) + text.size()), offset_in(text_, text));
    if (auto second = read_second(cursor); second && trimmed(cursor.rest()).empty()) {
      take_second(std::move(*second), offset_in(text_, text));
      return true;
    }
    if (is_more_mark(text)) {
      line_.high.reset();
      return true;
    }
    if (is_fill(text) && line_.unit_kind == UnitKind::measure) {
      line_.fill = text;
      return true;
    }
    if (names_parts(text)) {
      if (!line_.part.empty()) line_.part += ", ";
      line_.part += text;
      return true;
    }
    if (is_size_word(text) && line_.size.empty()) {
      line_.size = text;
      return true;
    }
    return false;
  }

  void read_word_remark(std::string_view text, bool bracket) {
    Cursor cursor(text);
    const bool other = cursor.take_word("or") || cursor.take_word("oder");
    if (other && !tells_state(cursor.rest())) {
      const std::string_view rest = trimmed(cursor.rest());
      rest.empty() ? add_note(text) : static_cast<void>(line_.alternatives.emplace_back(rest));
      return;
    }
    if (const std::string_view added = added_food(text); !added.empty()) {
      add_beside(added);
    } else if (tells_state(text)) {
      line_.states.emplace_back(text);
    } else if (bracket || is_reference(text) || has_digit(text) || is_note(text)) {
      line_.notes.emplace_back(text);
    } else if (!names_the_food(text)) {
      line_.states.emplace_back(text);
    }
  }

  /// `Pepper, black`, `Cheese, Mozzarella`: the name with its last word first.
  bool names_the_food(std::string_view text) {
    if (line_.foods.size() != 1) return false;
    std::string& food = line_.foods.front();
    const std::string inverted = std::string(text) + " " + food;
    if (knows(inverted)) {
      food = inverted;
      return true;
    }
    const auto is_capital = [](char c) { return c >= 'A' && c <= 'Z'; };
    if (!is_capital(text.front()) || !is_capital(food.front())) return false;
    food += ", " + std::string(text);
    return true;
  }

  /// `(about 8 oz)`, `(½ cup)`, `about 2 ounces each`; moves past it.
  std::optional<SecondMeasure> read_second(Cursor& cursor) const {
    Cursor probe = cursor;
    const std::size_t start = probe.skip_spaces().at();
    if (probe.word().starts_with('e')) return std::nullopt;
    std::optional<MeasurePhrase> phrase;
    try {
      phrase = read_measure_phrase(probe, reading_, catalog_, AmountPlace::behind);
    } catch (const Error&) {
      return std::nullopt;
    }
    if (!phrase || !phrase->number.low || !phrase->number.high || phrase->number.article ||
        (phrase->kind != UnitKind::measure && phrase->kind != UnitKind::none)) {
      return std::nullopt;
    }
    SecondMeasure second;
    second.text = probe.text().substr(start, probe.at() - start);
    second.low = *phrase->number.low;
    second.high = *phrase->number.high;
    second.unit = phrase->unit;
    second.measure = phrase->measure;
    second.each = probe.take_word("each");
    if (!second.each) static_cast<void>(probe.take_words("in all") || probe.take_word("total"));
    cursor = probe;
    return second;
  }

  /// `A piece of butter, one and a half ounce`: the measure tells what the piece does not.
  void take_second(SecondMeasure second, std::size_t at) {
    if (second.unit.empty() && !line_.has_amount()) {
      line_.notes.push_back(second.text);
      return;
    }
    const bool loose = line_.article && !second.unit.empty() &&
                       line_.unit_kind != UnitKind::measure &&
                       line_.unit_kind != UnitKind::container && !second.each;
    if (!loose && line_.has_amount()) {
      add_second(std::move(second), at);
      return;
    }
    line_.low = second.low;
    line_.high = second.high;
    line_.unit_kind = UnitKind::measure;
    line_.unit = second.unit;
    line_.unit_at = at;
    line_.measure = second.measure;
    line_.article = line_.to_taste = false;
  }

  void add_second(SecondMeasure second, std::size_t at) {
    if (!second.each && contradicts(line_, second)) {
      fail_at(at, "line.second_measure",
              "two measures of one amount contradict: " + amount_text(line_) + " and " +
                  second.text + " lie more than a fifth apart",
              "write the one that is right");
    }
    line_.second_measures.push_back(std::move(second));
  }

  void expect_sound() {
    if (line_.foods.empty() && !line_.part.empty())
      line_.foods.push_back(std::exchange(line_.part, {}));
    if (line_.foods.empty()) {
      fail_at(offset_in(text_, body_) + body_.size(), "line.no_food",
              "no food is written after the amount", "write what it is an amount of: 500 g leeks");
    }
  }

  void expect_food() const {
    const std::string& food = line_.foods.front();
    const char first = food.front();
    if (!is_letter(first) && !is_beyond_ascii(first) && !is_digit(first)) {
      fail_at(line_.food_at, "line.no_food",
              "\"" + excerpt(food) + "\" does not begin with a food");
    }
    if (few_ && !food.ends_with('s')) {
      fail_at(offset_in(text_, body_), "line.vague",
              "\"" + excerpt(body_) + "\" counts what is not in the plural", "write the amount");
    }
    expect_no_misspelt_unit(food);
    if (is_quality(food) && !knows(food)) {
      fail_at(line_.food_at, "line.no_food", "\"" + excerpt(food) + "\" is no food");
    }
  }

  /// `500 tbps leeks`: not a food of that name, but a unit written wrongly.
  void expect_no_misspelt_unit(const std::string& food) const {
    const std::string_view word = first_word(food);
    const std::string_view after = trimmed(std::string_view(food).substr(word.size()));
    constexpr std::size_t shortest = 4;
    const bool bare = line_.unit_kind == UnitKind::none && line_.has_amount();
    if (!bare || after.empty() || knows(food) || knows(word)) return;
    const std::size_t space = food.rfind(' ');
    if (part_noun(lower(std::string_view(food).substr(space + 1)))) return;
    if (misspells_unit(word, shortest)) fail_unknown_unit(word, line_.food_at);
  }

  std::string plain_;
  std::string_view text_;
  std::string_view body_;
  Reading reading_;
  const Catalog& catalog_;
  std::vector<std::size_t> tabs_;
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
