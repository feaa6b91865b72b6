#include "recipe/line.hpp"

#include <algorithm>
#include <cctype>
#include <utility>

#include "measure/amount.hpp"
#include "measure/unit_table.hpp"
#include "recipe/kitchen_words.hpp"

namespace scalepan {

namespace {

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" ") - first + 1);
}

std::size_t offset_in(std::string_view whole, std::string_view part) {
  return static_cast<std::size_t>(part.data() - whole.data());
}

/// The text without the spaces and the word in front.
std::string_view after_word(std::string_view text, std::string_view word) {
  return trimmed(text.substr(word.size()));
}

std::string_view first_word(std::string_view text) { return text.substr(0, text.find(' ')); }

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return result;
}

/// Words of letters and hyphens, in lower case.
std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  std::string word;
  for (const char c : lower(text) + " ") {
    if (std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '-' || (c & 0x80) != 0) {
      word += c;
    } else if (!word.empty()) {
      words.push_back(std::exchange(word, {}));
    }
  }
  return words;
}

/// A line cut at its marks; every part is a view into the text.
struct Parts {
  std::string_view main;
  std::string_view preparation;
  std::string_view note;
  std::string_view rule;
};

Parts cut(std::string_view text) {
  Parts parts;
  const std::size_t bar = text.find('|');
  if (bar != std::string_view::npos) parts.rule = trimmed(text.substr(bar + 1));
  parts.main = text.substr(0, bar);
  const std::size_t open = parts.main.rfind('(');
  if (open != std::string_view::npos && trimmed(parts.main).ends_with(')')) {
    const std::size_t close = parts.main.rfind(')');
    parts.note = trimmed(parts.main.substr(open + 1, close - open - 1));
    parts.main = parts.main.substr(0, open);
  }
  const std::size_t comma = parts.main.find(',');
  if (comma != std::string_view::npos && comma > 0 &&
      !(comma + 1 < parts.main.size() &&
        std::isdigit(static_cast<unsigned char>(parts.main[comma + 1])) != 0)) {
    parts.preparation = trimmed(parts.main.substr(comma + 1));
    parts.main = parts.main.substr(0, comma);
  }
  return parts;
}

/// cooked before drained before EP: pasta `cooked and drained` is cooked.
Stage stage_of(const std::vector<std::string>& preparations) {
  Stage stage = Stage::none;
  const auto rank = [](Stage s) {
    return s == Stage::cooked ? 3 : s == Stage::drained ? 2 : s == Stage::edible ? 1 : 0;
  };
  for (const std::string& word : preparations) {
    const auto found = stage_of_preparation(word);
    if (found && rank(*found) > rank(stage)) stage = *found;
  }
  return stage;
}

class LineReader {
 public:
  LineReader(const LineInput& input, Measures measures, const Catalog& catalog)
      : input_(input), text_(input.line.text), measures_(measures), catalog_(catalog) {}

  Line read() {
    line_.text = input_.line.text;
    line_.place = input_.line.place;
    parts_ = cut(text_);
    std::string_view rest = read_amount_part();
    rest = read_container(rest);
    read_food(rest);
    read_preparation();
    read_stage();
    read_rule();
    read_extras();
    line_.exact = line_.amount = line_.written;
    line_.amount_low = line_.written_low;
    return std::move(line_);
  }

 private:
  std::string_view read_amount_part() {
    std::size_t position = std::min(text_.find_first_not_of(' '), text_.size());
    const std::size_t start = position;
    const std::string_view main =
        text_.substr(0, offset_in(text_, parts_.main) + parts_.main.size());
    const auto amount = read_amount(main, position, measures_, UnitStyle::kitchen);
    if (!amount) {
      fail_at(start, "line.no_amount",
              "no amount is written at the start of \"" + excerpt(text_) + "\"",
              "begin with a number: 500 g leeks, 3 eggs");
    }
    if (amount->low.sign() <= 0) {
      fail_at(start, "line.amount", "an amount must be above zero");
    }
    amount_ = *amount;
    return trimmed(main.substr(position));
  }

  /// Size, container and piece noun, each only where a food follows.
  std::string_view read_container(std::string_view rest) {
    rest = skip_of(rest);
    if (knows(rest)) return rest;
    if (is_size_word(lower(first_word(rest))) && !after_word(rest, first_word(rest)).empty()) {
      line_.size = lower(first_word(rest));
      rest = after_word(rest, first_word(rest));
    }
    const std::string_view word = first_word(rest);
    const std::string_view after = skip_of(after_word(rest, word));
    if (after.empty() || knows(rest)) return rest;
    if (const auto container = container_noun(lower(word))) {
      line_.container = *container;
      line_.containers = amount_.unit ? amount_.times : Rational(0);
      return after;
    }
    const auto noun = amount_.unit ? std::nullopt : piece_noun(lower(word));
    if (!noun) return rest;
    line_.noun = *noun;
    return after;
  }

  static std::string_view skip_of(std::string_view text) {
    return first_word(text) == "of" ? after_word(text, "of") : text;
  }

  [[nodiscard]] bool knows(std::string_view phrase) const {
    return !phrase.empty() && find(phrase).has_value();
  }

  [[nodiscard]] std::optional<FoundFood> find(std::string_view phrase) const {
    try {
      return catalog_.find(phrase);
    } catch (const Error& error) {
      Place place;
      place.offset = offset_in(text_, phrase);
      throw error.at(place);
    }
  }

  /// The phrase, or what is left of it when leading preparations are taken off.
  void read_food(std::string_view phrase) {
    if (phrase.empty()) {
      fail_at(text_.size(), "line.no_food", "no food is written after the amount",
              "write what it is an amount of: 500 g leeks");
    }
    std::string_view rest = phrase;
    std::string leading;
    auto found = find(rest);
    while (!found && stage_of_preparation(lower(first_word(rest))) &&
           !after_word(rest, first_word(rest)).empty()) {
      leading += (leading.empty() ? "" : " ") + lower(first_word(rest));
      rest = after_word(rest, first_word(rest));
      found = find(rest);
    }
    if (!found) expect_no_misspelt_unit(rest);
    line_.food = rest;
    if (found) {
      line_.food_id = found->food->id;
      line_.near = found->near();
    }
    line_.preparations = words_of(leading);
    line_.preparation = leading;
  }

  /// `500 tbps leeks`: not a food of that name, but a unit written wrongly.
  void expect_no_misspelt_unit(std::string_view phrase) const {
    const std::string_view word = first_word(phrase);
    const std::string_view after = after_word(phrase, word);
    if (amount_.unit || after.empty()) return;
    if (misspells_unit(word) || (find(after) && !nearest_units(word).empty())) {
      fail_unknown_unit(word, offset_in(text_, phrase));
    }
  }

  void read_preparation() {
    if (!parts_.preparation.empty()) {
      if (!line_.preparation.empty()) line_.preparation += ", ";
      line_.preparation += parts_.preparation;
      for (std::string& word : words_of(parts_.preparation)) {
        if (stage_of_preparation(word)) line_.preparations.push_back(std::move(word));
      }
    }
    line_.state = input_.state.text.empty() ? known_state() : input_.state.text;
    line_.note = parts_.note;
  }

  /// The state of the food's densities that the preparation names.
  [[nodiscard]] std::string known_state() const {
    const std::vector<std::string> words = words_of(line_.preparation);
    for (const Fact* fact : catalog_.facts(line_.food_id)) {
      if (fact->kind != FactKind::density || fact->state.empty()) continue;
      const std::vector<std::string> state = words_of(fact->state);
      const bool all = std::ranges::all_of(state, [&](const std::string& word) {
        return std::ranges::find(words, word) != words.end();
      });
      if (all) return fact->state;
    }
    return {};
  }

  void read_stage() {
    Stage stage = Stage::as_purchased;
    if (amount_.unit) {
      const Stage prepared = stage_of(line_.preparations);
      if (prepared != Stage::none) stage = prepared;
    }
    if (!input_.stage.text.empty()) stage = stated_stage();
    const Unit unit = amount_.unit.value_or(Unit({{&unit_with_symbol("piece"), 1}}));
    line_.written = Quantity::of_coherent(amount_.high, unit.at(stage));
    line_.written_low = Quantity::of_coherent(amount_.low, unit.at(stage));
  }

  [[nodiscard]] Stage stated_stage() const {
    const auto stage = stage_named(input_.stage.text);
    if (!stage) {
      fail("line.stage", "\"" + excerpt(input_.stage.text) + "\" is no stage",
           "stage is one of AP, EP, cooked, drained, served", input_.stage.place);
    }
    return *stage;
  }

  void read_rule() {
    const Unit unit = line_.written.unit();
    if (!parts_.rule.empty() && !input_.rule.text.empty()) {
      fail("line.rule", "the line has a rule in its text and another beside it", {},
           input_.rule.place);
    }
    if (!input_.rule.text.empty()) {
      line_.rule = located(input_.rule.place, input_.rule.text,
                           [&] { return parse_rule(input_.rule.text, unit, measures_); });
    } else if (!parts_.rule.empty()) {
      line_.rule = rule_in_text(unit);
    }
    const bool counted = unit.dimension().without_stages() == dimension::piece();
    if (line_.rule.kind == RuleKind::whole && !counted) {
      fail_at(offset_in(text_, parts_.main), "rule.unit",
              "only a count can be held to whole pieces, and the line is measured in " +
                  unit.without_stages().symbol());
    }
  }

  [[nodiscard]] Rule rule_in_text(Unit unit) const {
    try {
      return parse_rule(parts_.rule, unit, measures_);
    } catch (const Error& error) {
      Place place;
      const std::size_t inside = error.place().offset;
      place.offset = offset_in(text_, parts_.rule) + (inside == Place::no_offset ? 0 : inside);
      throw error.at(place);
    }
  }

  void read_extras() {
    line_.id = input_.id.text.empty() ? id_of_name(line_.food) : input_.id.text;
    line_.optional = input_.optional || line_.note == "optional";
    if (line_.note == "optional") line_.note.clear();
    if (!input_.note.empty()) line_.note = input_.note;
  }

  const LineInput& input_;
  std::string_view text_;
  Measures measures_;
  const Catalog& catalog_;
  Parts parts_;
  Amount amount_;
  Line line_;
};

}  // namespace

std::string Line::detail() const {
  if (written.dimension().without_stages() == dimension::piece()) {
    return noun.empty() ? size : noun;
  }
  return state;
}

Line read_line(const LineInput& input, Measures measures, const Catalog& catalog) {
  return located(input.line.place, input.line.text,
                 [&] { return LineReader(input, measures, catalog).read(); });
}

std::string id_of_name(std::string_view name) {
  std::string id;
  for (const char c : plain_name(name)) {
    const bool kept = std::isalnum(static_cast<unsigned char>(c)) != 0 || (c & 0x80) != 0;
    if (kept) {
      id += c;
    } else if (!id.empty() && id.back() != '_') {
      id += '_';
    }
  }
  while (!id.empty() && id.back() == '_') id.pop_back();
  return id;
}

}  // namespace scalepan
