#include "recipe/line.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "exact/text.hpp"
#include "measure/amount.hpp"
#include "measure/count_nouns.hpp"
#include "measure/unit_table.hpp"
#include "recipe/food_phrase.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_parts.hpp"

namespace scalepan {

namespace {

std::size_t offset_in(std::string_view whole, std::string_view part) {
  return static_cast<std::size_t>(part.data() - whole.data());
}

/// The text without the spaces and the word in front.
std::string_view after_word(std::string_view text, std::string_view word) {
  return trimmed(text.substr(word.size()));
}

std::string_view first_word(std::string_view text) { return text.substr(0, text.find(' ')); }

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
      : input_(input),
        plain_(with_plain_spaces(input.line.text)),
        text_(plain_),
        measures_(measures),
        catalog_(catalog) {}

  Line read() {
    line_.text = input_.line.text;
    line_.place = input_.line.place;
    expect_no_controls();
    parts_ = cut_line(text_);
    expect_nothing_hidden(text_, parts_.preparation, measures_);
    expect_nothing_hidden(text_, parts_.note, measures_);
    std::string_view rest = read_amount_part();
    rest = read_container(take_stage(rest));
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
  template <typename Find>
  auto at_offset_of(std::string_view phrase, Find find) const {
    try {
      return find();
    } catch (const Error& error) {
      Place place;
      place.offset = offset_in(text_, phrase);
      throw error.at(place);
    }
  }

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

  void expect_no_controls() const {
    for (std::size_t i = 0; i < text_.size(); ++i) {
      const auto byte = static_cast<unsigned char>(text_[i]);
      if (byte < 0x20U || byte == 0x7FU) {
        fail_at(i, "line.control_character", "the line holds a control character");
      }
    }
  }

  /// `EP` or `AP` in capitals, in front of the food, behind it or as the preparation.
  std::string_view take_stage(std::string_view rest) {
    for (const std::string_view word : {std::string_view("AP"), std::string_view("EP")}) {
      if (first_word(rest) == word) {
        stage_ = stage_named(word);
        return after_word(rest, word);
      }
      if (rest.ends_with(" " + std::string(word))) {
        stage_ = stage_named(word);
        return trimmed(rest.substr(0, rest.size() - word.size()));
      }
      if (parts_.preparation == word) {
        stage_ = stage_named(word);
        parts_.preparation = {};
      }
    }
    return rest;
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
      if (!amount_.unit) line_.size.clear();
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
    return at_offset_of(phrase, [&] { return catalog_.find(phrase); });
  }

  /// The phrase, or what is left of it when leading preparations are taken off.
  void read_food(std::string_view phrase) {
    if (phrase.empty()) {
      fail_at(text_.size(), "line.no_food", "no food is written after the amount",
              "write what it is an amount of: 500 g leeks");
    }
    expect_nothing_hidden(text_, phrase, measures_);
    if (!is_letter(phrase.front()) && !is_beyond_ascii(phrase.front()) &&
        !is_digit(phrase.front())) {
      fail_at(offset_in(text_, phrase), "line.no_food",
              "\"" + excerpt(phrase) + "\" does not begin with a food");
    }
    const FoodPhrase read = food_phrase(phrase);
    if (!read.found) expect_no_misspelt_unit(read.food);
    line_.food = read.food;
    line_.item_key = read.key();
    if (read.found) {
      line_.food_id = read.found->food->id;
      line_.near = read.found->near();
    }
    line_.preparations = preparations_in(read.leading);
    line_.preparation = read.leading;
  }

  [[nodiscard]] FoodPhrase food_phrase(std::string_view phrase) const {
    return at_offset_of(
        phrase, [&] { return read_food_phrase(catalog_, phrase, is_tin(line_.container)); });
  }

  /// `500 tbps leeks`: not a food of that name, but a unit written wrongly.
  void expect_no_misspelt_unit(std::string_view phrase) const {
    const std::string_view word = first_word(phrase);
    const std::string_view after = after_word(phrase, word);
    constexpr std::size_t shortest = 4;
    if (amount_.unit || after.empty() || find(word)) return;
    if (misspells_unit(word, shortest)) fail_unknown_unit(word, offset_in(text_, phrase));
  }

  void read_preparation() {
    if (!parts_.preparation.empty()) {
      if (!line_.preparation.empty()) line_.preparation += ", ";
      line_.preparation += parts_.preparation;
    }
    for (const std::string_view part : {parts_.preparation, parts_.note}) {
      std::ranges::move(preparations_in(part), std::back_inserter(line_.preparations));
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
    const Unit unit = amount_.unit.value_or(Unit::named("piece"));
    Stage stage = Stage::as_purchased;
    // What a tin holds is as purchased, whatever is done after opening it.
    if (!(unit.dimension() == dimension::piece()) && line_.container.empty()) {
      const Stage prepared = stage_of(line_.preparations);
      if (prepared != Stage::none) stage = prepared;
    }
    stage = stage_.value_or(stage);
    if (!input_.stage.text.empty()) stage = stated_stage();
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
  std::string plain_;
  std::string_view text_;
  Measures measures_;
  const Catalog& catalog_;
  LineParts parts_;
  Amount amount_;
  std::optional<Stage> stage_;  // written in the text
  Line line_;
};

}  // namespace

std::string Line::detail() const {
  if (written.dimension().without_stages() == dimension::piece()) {
    const std::string& counted = counted_noun();
    return counted.empty() ? size : counted;
  }
  return state;
}

const std::string& Line::counted_noun() const {
  return noun.empty() && containers.is_zero() ? container : noun;
}

Line read_line(const LineInput& input, Measures measures, const Catalog& catalog) {
  return located(input.line.place, input.line.text,
                 [&] { return LineReader(input, measures, catalog).read(); });
}

std::string id_of_name(std::string_view name) {
  std::string id;
  for (const char c : plain_name(name)) {
    const bool kept = is_letter(c) || is_digit(c) || is_beyond_ascii(c);
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
