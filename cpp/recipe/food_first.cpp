#include "recipe/food_first.hpp"

#include <utility>

#include "exact/error.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_remarks.hpp"

namespace scalepan {

namespace {

constexpr auto npos = std::string_view::npos;

using Cut = std::pair<std::string_view, std::string_view>;

class Cutter {
 public:
  explicit Cutter(std::string_view body) : body_(body) {}

  void cut_at(std::size_t at, std::size_t length) {
    if (at == npos || at == 0) return;
    cuts_.emplace_back(trimmed(body_.substr(0, at)), trimmed(body_.substr(at + length)));
  }

  void cut_at_gaps(const LineSource& source) {
    for (std::size_t at = body_.find("  "); at != npos; at = body_.find("  ", at + 2)) {
      cut_at(at, 2);
    }
    const std::size_t start = source.offset(body_);
    for (const std::size_t tab : source.tabs) {
      if (tab > start && tab < start + body_.size()) cut_at(tab - start, 1);
    }
    for (const std::string_view dash : {" - ", " \u2013 ", " \u2014 ", ": "}) {
      cut_at(body_.rfind(dash), dash.size());
    }
  }

  void cut_before_numbers(DecimalMark mark) {
    for (std::size_t at = body_.find(' '); at != npos; at = body_.find(' ', at + 1)) {
      const std::string_view tail = body_.substr(at + 1);
      std::size_t position = 0;
      if (!tail.empty() && starts_with_number(tail, position, mark)) cut_at(at, 1);
    }
  }

  [[nodiscard]] const std::vector<Cut>& cuts() const { return cuts_; }

 private:
  std::string_view body_;
  std::vector<Cut> cuts_;
};

/// Behind a single space a bare number may be a page or a year, unless the food is known.
bool leaves_food(std::string_view food, std::string_view tail, const LineSource& source) {
  const std::string_view between = source.text.substr(
      source.offset(food) + food.size(), source.offset(tail) - source.offset(food) - food.size());
  if (between != " ") return true;
  return !has_digit(food) && (source.knows(food) || !is_digit(tail.back()));
}

bool ends_or_marks(std::string_view rest) {
  return rest.empty() || rest.starts_with('(') || rest.starts_with(',');
}

/// A size word, and nothing but marks behind it.
bool is_size_tail(std::string_view rest) {
  const std::string_view word = first_word(rest);
  return is_size_word(word) && ends_or_marks(trimmed(rest.substr(word.size())));
}

}  // namespace

bool starts_with_number(std::string_view text, std::size_t& position, DecimalMark mark) {
  try {
    return read_amount_number(text, position, mark).has_value();
  } catch (const Error&) {
    return false;
  }
}

bool holds_amount(std::string_view text) {
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

void expect_no_sum(std::string_view rest, const LineSource& source) {
  if (!rest.starts_with('+')) return;
  fail_at(source.offset(rest), "line.sum",
          "\"" + excerpt(rest) + "\" is added to something of another kind", "write two lines");
}

std::optional<Tail> read_tail(std::string_view text, const LineSource& source) {
  text = trimmed(text);
  if (text.empty()) return std::nullopt;
  if (is_wish(text)) return Tail{{}, text};
  Cursor cursor = source.cursor(text);
  std::optional<MeasurePhrase> phrase;
  try {
    phrase = read_measure_phrase(cursor, source.reading, source.catalog, AmountPlace::behind);
  } catch (const Error& error) {
    if (error.code() == "line.two_units" || error.code() == "amount.doubtful") throw;
    return std::nullopt;
  }
  if (!phrase || phrase->number.article || phrase->number.vague()) return std::nullopt;
  const std::string_view rest = trimmed(cursor.rest());
  expect_no_sum(rest, source);
  const bool each = same_word(rest, "each");
  if (!each && !ends_or_marks(rest) && !is_size_tail(rest)) return std::nullopt;
  // `24 each` counts pieces; `1 tsp each` would be of each of several foods.
  if (each && phrase->kind != UnitKind::none) return std::nullopt;
  if (each) return Tail{*phrase, {}};
  return Tail{*phrase, rest};
}

std::optional<FoodFirst> read_food_first(std::string_view body, const LineSource& source) {
  Cutter cutter(body);
  cutter.cut_at_gaps(source);
  cutter.cut_before_numbers(source.reading.decimal);
  for (const auto& [food, tail] : cutter.cuts()) {
    if (food.empty() || !leaves_food(food, tail, source)) continue;
    if (auto amount = read_tail(tail, source)) return FoodFirst{food, tail, std::move(*amount)};
  }
  return std::nullopt;
}

}  // namespace scalepan
