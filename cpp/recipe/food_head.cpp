#include "recipe/food_head.hpp"

#include <algorithm>
#include <array>

#include "exact/error.hpp"
#include "recipe/cursor.hpp"
#include "recipe/food_phrase.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_parts.hpp"
#include "recipe/line_remarks.hpp"
#include "recipe/line_segments.hpp"
#include "recipe/state_words.hpp"
#include "recipe/unit_words.hpp"

namespace scalepan {

namespace {

/// Words behind the name that begin a remark.
constexpr std::array<std::string_view, 8> remark_words{"for",  "from",  "at",     "weighed",
                                                       "each", "until", "enough", "weighing"};
constexpr std::array<std::string_view, 20> purposes{
    "taste",   "serve", "finish",   "garnish", "cover",  "decorate", "thicken",
    "make",    "bind",  "coat",     "dust",    "fry",    "grease",   "roll",
    "moisten", "mix",   "sprinkle", "dredge",  "season", "baste"};
constexpr std::array<std::string_view, 4> wishes{"needed", "desired", "required", "liked"};
/// Words that go on with a clause after its participle.
constexpr std::array<std::string_view, 18> clause_words{
    "in", "into", "on",   "with", "and",  "or",         "fine",    "small", "up",
    "to", "over", "very", "well", "thin", "lengthwise", "through", "for",   "together"};

/// `chicken or vegetable stock`: both are stocks.
constexpr std::array<std::string_view, 6> liquors{"stock",    "broth", "bouillon",
                                                  "consomme", "gravy", "soup"};

bool starts_number(std::string_view text) { return number_or_nothing(text).has_value(); }

bool is_leading(std::string_view word) {
  return stage_of_preparation(lower(word)) || is_condition(word) || is_adverb(word) ||
         is_size_word(word);
}

class HeadReader {
 public:
  HeadReader(std::string_view phrase, bool product, const Catalog& catalog)
      : words_(words_of(phrase)), product_(product), catalog_(catalog), last_(words_.size()) {}

  FoodHead read() {
    skip_repeated();
    skip_articles();
    if (!knows(text())) {
      take_stage();
      cut_counted_alternative();
      cut_clauses();
      take_bound();
      cut_alternative();
      if (!product_) strip_leading();
    }
    split_foods();
    return std::move(head_);
  }

 private:
  [[nodiscard]] std::string_view text() const { return text_of(words_, first_, last_); }
  [[nodiscard]] std::string_view word(std::size_t i) const {
    return i < words_.size() ? words_[i] : std::string_view();
  }
  [[nodiscard]] bool knows(std::string_view name) const { return knows_food(catalog_, name); }

  /// `5 eggs Eggs`: a column of units repeats the food.
  void skip_repeated() {
    if (last_ - first_ > 1 && same_word(word(first_), word(first_ + 1))) ++first_;
  }

  void skip_articles() {
    while (first_ + 1 < last_ && (same_word(word(first_), "of") || same_word(word(first_), "the") ||
                                  same_word(word(first_), "a") || same_word(word(first_), "an"))) {
      ++first_;
    }
  }

  void take_stage() {
    if (last_ - first_ < 2) return;
    for (const std::size_t at : {first_, last_ - 1}) {
      if (!stage_mark(word(at))) continue;
      head_.stage = word(at);
      at == first_ ? ++first_ : --last_;
      return;
    }
  }

  /// The first word behind a name that begins a clause ends the name.
  void cut_clauses() {
    for (std::size_t i = first_ + 1; i < last_; ++i) {
      if (!has_noun_before(i)) continue;
      if (cut_beside(i) || cut_remark(i) || cut_state(i)) return;
    }
  }

  [[nodiscard]] bool has_noun_before(std::size_t end) const {
    for (std::size_t i = first_; i < end; ++i) {
      if (!is_leading(word(i)) && !same_word(word(i), "and") && !same_word(word(i), "or"))
        return true;
    }
    return false;
  }

  bool cut_beside(std::size_t i) {
    const bool with = same_word(word(i), "with");
    const bool adds = same_word(word(i), "plus") || same_word(word(i), "and") || word(i) == "&";
    if (!with && !adds) return false;
    const std::string_view rest = text_of(words_, i + 1, last_);
    const bool extra = same_word(word(i), "plus");
    if (!extra && (rest.empty() || !starts_number(rest))) {
      if (!with) return false;
      head_.states.push_back(text_of(words_, i, last_));
    } else if (extra && !starts_number(rest)) {
      head_.notes.push_back(text_of(words_, i, last_));
    } else {
      head_.beside.push_back(rest);
    }
    last_ = i;
    return true;
  }

  bool cut_remark(std::size_t i) {
    const bool purpose = same_word(word(i), "to") && is_one_of(word(i + 1), purposes);
    const bool wish =
        (same_word(word(i), "as") || same_word(word(i), "if") || same_word(word(i), "when")) &&
        is_one_of(word(i + 1), wishes);
    const bool shares = same_word(word(i), "in") && same_word(word(i + 1), "equal");
    const bool reference =
        same_word(word(i), "No") && i + 1 < last_ && is_digit(word(i + 1).front());
    const bool numeral =
        i + 1 == last_ && i > first_ && word(i).find_first_not_of("IVX") == std::string_view::npos;
    if (!purpose && !wish && !shares && !reference && !numeral &&
        !is_one_of(word(i), remark_words)) {
      return false;
    }
    head_.notes.push_back(text_of(words_, i, last_));
    last_ = i;
    return true;
  }

  /// A participle that nothing but its own clause follows.
  bool cut_state(std::size_t i) {
    std::size_t verb = i;
    while (verb + 1 < last_ && is_adverb(word(verb))) ++verb;
    if (!is_participle(word(verb)) || same_word(word(verb), "roast")) return false;
    const bool ends =
        verb + 1 == last_ || is_one_of(word(verb + 1), clause_words) || is_adverb(word(verb + 1));
    if (!ends || (verb + 1 < last_ && goes_on_with_food(verb + 1))) return false;
    head_.states.push_back(text_of(words_, i, last_));
    last_ = i;
    return true;
  }

  /// `cooked and peeled prawns`: the clause is a part of the name.
  [[nodiscard]] bool goes_on_with_food(std::size_t i) const {
    if (!same_word(word(i), "and") && !same_word(word(i), "or")) return false;
    return !is_participle(word(i + 1)) && !is_adverb(word(i + 1));
  }

  void take_bound() {
    if (last_ - first_ < 3 || !same_word(word(last_ - 2), "or")) return;
    if (same_word(word(last_ - 1), "more")) head_.bound = Bound::or_more;
    if (same_word(word(last_ - 1), "less")) head_.bound = Bound::or_less;
    if (same_word(word(last_ - 1), "so")) head_.bound = Bound::or_so;
    if (head_.bound != Bound::none) last_ -= 2;
  }

  /// `1 large or 2 small onions`, `1/2 oz. of butter or 2 tablespoonfuls of suet`: a choice with
  /// an amount of its own, whose name the first shares where it has none.
  void cut_counted_alternative() {
    for (std::size_t i = first_ + 1; i + 1 < last_; ++i) {
      const std::string_view rest = text_of(words_, i + 1, last_);
      if (!same_word(word(i), "or") || !starts_number(rest)) continue;
      if (!take_other_number(rest)) {
        head_.alternatives.push_back(rest);
        if (!has_noun_before(i)) take_name_of(i + 1, i);
      }
      last_ = i;
      return;
    }
  }

  /// `two` of `an egg or two`: the other bound of the amount.
  bool take_other_number(std::string_view text) {
    Cursor cursor(text);
    const auto number = number_or_nothing(cursor, DecimalMark::point);
    if (!number || !number->low || number->article || !trimmed(cursor.rest()).empty()) return false;
    if (number->low->sign() <= 0) return false;
    head_.other_number = number->low;
    return true;
  }

  /// The name behind number, unit, sizes and states becomes the shared one.
  void take_name_of(std::size_t start, std::size_t left_end) {
    std::size_t name = start + 1;
    Cursor unit(text_of(words_, name, last_));
    if (name + 1 < last_ && read_unit_word(unit)) ++name;
    while (name + 1 < last_ && (is_leading(word(name)) || is_adjective(word(name)))) ++name;
    shared_noun_ = text_of(words_, name, last_);
    for (std::size_t i = first_; i < left_end; ++i) {
      if (is_size_word(word(i))) {
        head_.size = word(i);
      } else {
        head_.states.push_back(word(i));
      }
    }
    first_ = left_end;
  }

  void cut_alternative() {
    for (std::size_t i = first_ + 1; i < last_; ++i) {
      if (!same_word(word(i), "or") && !same_word(word(i), "and/or")) continue;
      if (!has_noun_before(i) && i + 1 < last_ && is_leading(word(i + 1))) continue;
      if (i + 1 == last_) {
        head_.notes.push_back(word(i));
      } else {
        head_.alternatives.push_back(text_of(words_, i + 1, last_));
        share_head_noun(i);
      }
      last_ = std::min(last_, i);
      return;
    }
  }

  /// `red or white wine`: the first choice is red wine.
  void share_head_noun(std::size_t or_at) {
    const std::string_view noun = word(last_ - 1);
    const std::string_view left = text_of(words_, first_, or_at);
    if (last_ - or_at < 3 || starts_number(text_of(words_, or_at + 1, last_))) return;
    const bool adjective = is_adjective(word(or_at - 1)) && !knows(left);
    const bool liquor = is_one_of(noun, liquors) && !is_one_of(word(or_at - 1), liquors);
    const bool known = knows(std::string(left) + " " + std::string(noun));
    if (!adjective && !liquor && !known) return;
    // `red or yellow bell pepper` shares all behind the second adjective.
    const bool both = adjective && is_adjective(word(or_at + 1));
    shared_noun_ = both ? text_of(words_, or_at + 2, last_) : noun;
    cut_listed_adjectives(or_at);
  }

  /// `red, yellow or orange pepper`: the first of them is the choice read.
  void cut_listed_adjectives(std::size_t or_at) {
    for (std::size_t i = first_; i + 1 < or_at; ++i) {
      const char* behind = word(i).data() + word(i).size();
      if (*behind != ',') continue;
      for (std::size_t other = i + 1; other < or_at; ++other) {
        head_.alternatives.push_back(word(other));
      }
      last_ = i + 1;
      return;
    }
  }

  void strip_leading() {
    const std::size_t start = first_;
    std::size_t state_end = first_;
    while (first_ + 1 < last_ && !knows(text())) {
      if (is_size(first_)) {
        take_size();
        state_end = first_;
        continue;
      }
      if (!take_leading_state()) break;
      state_end = first_;
    }
    while (state_end > start && is_size_or_joint(state_end - 1)) --state_end;
    if (chosen_end_ > start) state_end = chosen_end_;
    if (state_end > start) add_leading(start, state_end);
  }

  [[nodiscard]] bool is_size(std::size_t i) const {
    if (is_size_word(word(i)) && !same_word(word(i), "sized") && !same_word(word(i), "little"))
      return true;
    const bool compound =
        same_word(word(i), "good") || same_word(word(i), "fair") || same_word(word(i), "medium");
    return (compound && same_word(word(i + 1), "sized")) ||
           (same_word(word(i), "very") && i + 2 < last_ && is_size_word(word(i + 1)));
  }

  void take_size() {
    std::size_t end = first_ + 1;
    while (end + 1 < last_ && (same_word(word(end), "sized") || same_word(word(end), "size") ||
                               (same_word(word(first_), "very") && is_size_word(word(end))))) {
      ++end;
    }
    if (!head_.size.empty()) head_.size += " ";
    head_.size += text_of(words_, first_, end);
    first_ = end;
  }

  [[nodiscard]] bool is_size_or_joint(std::size_t i) const {
    return is_size_word(word(i)) || same_word(word(i), "and");
  }

  /// One state word with its adverbs, and the `and` behind it where a state follows.
  bool take_leading_state() {
    std::size_t verb = first_;
    while (verb + 1 < last_ && is_adverb(word(verb))) ++verb;
    if (verb + 1 >= last_) return false;
    const bool told = verb > first_ && is_participle(word(verb));
    const bool prepared = stage_of_preparation(lower(word(verb))).has_value();
    const bool condition = is_condition(word(verb)) && !same_word(word(verb), "whole") &&
                           !makes_a_name(word(verb + 1));
    if (!told && !prepared && !condition) return false;
    first_ = verb + 1;
    take_joint();
    return true;
  }

  /// The `and` of `stoned and chopped`, and a participle behind it; the `or frozen` of `fresh or
  /// frozen`, which is another choice.
  void take_joint() {
    if (first_ + 2 >= last_) return;
    const bool either = same_word(word(first_), "or");
    if (!either && !same_word(word(first_), "and")) return;
    const bool state = is_leading(word(first_ + 1)) || is_participle(word(first_ + 1));
    if (!state) return;
    if (either) {
      head_.alternatives.push_back(word(first_ + 1));
      chosen_end_ = first_;
    }
    const bool past = either || !is_leading(word(first_ + 1));
    first_ += past ? std::size_t{2} : std::size_t{1};
  }

  void add_leading(std::size_t start, std::size_t end) {
    while (start < end && is_size_word(word(start))) ++start;
    const std::string_view state = text_of(words_, start, end);
    if (!state.empty()) head_.states.insert(head_.states.begin(), state);
  }

  void split_foods() {
    const std::string_view name = text();
    head_.name = name.empty() ? shared_noun_ : name;
    if (name.empty() && !shared_noun_.empty()) head_.foods.emplace_back(shared_noun_);
    if (name.empty()) return;
    for (std::size_t i = first_ + 1; i + 1 < last_ && !product_ && !knows(name); ++i) {
      if (!same_word(word(i), "and") && word(i) != "&") continue;
      const std::string_view left = text_of(words_, first_, i);
      if (is_adjective(word(i - 1)) && !knows(left)) continue;
      if (belong_together(word(i - 1), word(i + 1))) continue;
      add_food(left);
      first_ = i + 1;
    }
    add_food(text());
  }

  /// `onion/shallot`: the first is read, the other is another choice.
  std::string_view without_slashed(std::string_view name) {
    const std::size_t slash = name.find('/');
    if (slash == std::string_view::npos || slash == 0 || knows(name)) return name;
    const bool words = is_letter(name[slash - 1]) && letter_length(name, slash + 1) > 0;
    if (!words) return name;
    head_.alternatives.push_back(name.substr(slash + 1));
    return name.substr(0, slash);
  }

  void add_food(std::string_view name) {
    std::string food(without_slashed(name));
    if (!shared_noun_.empty()) food += (food.empty() ? "" : " ") + std::string(shared_noun_);
    head_.foods.push_back(std::move(food));
  }

  std::vector<std::string_view> words_;
  bool product_;
  const Catalog& catalog_;
  std::size_t first_ = 0;
  std::size_t last_;
  std::string_view shared_noun_;
  std::size_t chosen_end_ = 0;  // of the states before `or`
  FoodHead head_;
};

}  // namespace

FoodHead read_food_head(std::string_view phrase, bool product, const Catalog& catalog) {
  return HeadReader(phrase, product, catalog).read();
}

}  // namespace scalepan
