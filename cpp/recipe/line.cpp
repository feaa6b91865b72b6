#include "recipe/line.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "exact/text.hpp"
#include "measure/count_nouns.hpp"
#include "measure/unit_table.hpp"
#include "recipe/food_phrase.hpp"
#include "recipe/kitchen_words.hpp"
#include "recipe/line_segments.hpp"
#include "recipe/second_amounts.hpp"

namespace scalepan {

namespace {

std::string joined(const std::vector<std::string>& texts) {
  std::string all;
  for (const std::string& text : texts) all += (all.empty() ? "" : ", ") + text;
  return all;
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

class LineMaker {
 public:
  LineMaker(const WrittenLine& written, const LineInput& input, Reading reading,
            const Catalog& catalog)
      : written_(written), input_(input), reading_(reading), catalog_(catalog) {}

  Line make() {
    line_.text = input_.line.text;
    line_.place = input_.line.place;
    line_.heading = written_.heading;
    expect_nothing_beside(written_, input_.line.text);
    read_food();
    read_preparation();
    read_counting();
    read_amount();
    read_rule();
    read_extras();
    line_.exact = line_.amount = line_.written;
    line_.amount_low = line_.written_low;
    return std::move(line_);
  }

 private:
  void read_food() {
    line_.food = written_.food();
    line_.several = written_.foods.size() > 1;
    const bool tinned = written_.unit_kind == UnitKind::container && is_tin(written_.unit);
    const FoodPhrase phrase =
        at_offset(written_.food_at, [&] { return read_food_phrase(catalog_, line_.food, tinned); });
    line_.item_key = phrase.key();
    line_.part = written_.part;
    if (!phrase.found) return;
    line_.food_id = phrase.found->food->id;
    line_.near = phrase.found->near();
    if (written_.unit == "piece") line_.part_of_one = yield_of_part(*phrase.found->food);
  }

  /// The piece weight of `lemon juice` by the size `lemon`.
  [[nodiscard]] std::optional<Quantity> yield_of_part(const Food& food) const {
    const std::string whole = food.name + " " + written_.part;
    if (written_.part.empty() || !knows_food(catalog_, whole)) return std::nullopt;
    const auto part = catalog_.find(whole);
    for (const Fact* fact : catalog_.facts(part ? part->food->id : "")) {
      if (fact->kind == FactKind::piece && fact->size == food.name) {
        return Quantity::of_coherent(fact->value.coherent(), Unit::named("g").at(fact->to));
      }
    }
    return std::nullopt;
  }

  void read_preparation() {
    line_.preparation = joined(written_.states);
    for (const std::string& text : written_.states) {
      std::ranges::move(preparations_in(text), std::back_inserter(line_.preparations));
    }
    line_.state = input_.state.text.empty() ? known_state() : input_.state.text;
  }

  /// The state of the food's densities that the preparation names.
  [[nodiscard]] std::string known_state() const {
    const std::vector<std::string_view> words = words_of(line_.preparation);
    for (const Fact* fact : catalog_.facts(line_.food_id)) {
      if (fact->kind != FactKind::density || fact->state.empty()) continue;
      const std::vector<std::string_view> state = words_of(fact->state);
      const bool all = std::ranges::all_of(state, [&](std::string_view word) {
        return std::ranges::any_of(words, [&](std::string_view w) { return same_word(w, word); });
      });
      if (all) return fact->state;
    }
    return {};
  }

  void read_counting() {
    line_.size = size_written_out(lower(written_.size));
    line_.fill = written_.fill;
    line_.vague = written_.vague;
    if (written_.unit_kind == UnitKind::noun && written_.unit != "piece") {
      line_.noun = written_.unit;
    }
    if (written_.unit_kind != UnitKind::container) return;
    line_.container = written_.unit;
    if (written_.each) line_.containers = *high_bound();
  }

  /// Of a bound that is open, the other.
  [[nodiscard]] const std::optional<Rational>& high_bound() const {
    return written_.high ? written_.high : written_.low;
  }
  [[nodiscard]] const std::optional<Rational>& low_bound() const {
    return written_.low ? written_.low : written_.high;
  }

  void read_amount() {
    if (written_.about) line_.hedge = "about";
    line_.measured = written_.has_amount();
    if (!line_.measured) return expect_left_to_cook();
    if (!written_.high) line_.hedge = "at least";
    if (!written_.low) line_.hedge = "at most";
    Unit unit = unit_of_amount();
    unit = unit.at(stage_of_amount(unit));
    const Rational each = written_.each ? written_.each->value() : Rational(1);
    line_.written = Quantity(*high_bound() * each, unit);
    line_.written_low = Quantity(*low_bound() * each, unit);
    check_second_measures();
  }

  /// Without an amount, the line must say that this is meant.
  void expect_left_to_cook() const {
    if (written_.to_taste || written_.optional || !written_.heading.empty()) return;
    fail_at(written_.food_at, "line.no_amount",
            "no amount is written in \"" + excerpt(input_.line.text) + "\"",
            "write one, or say that it is left to the cook: " + line_.food + ", to taste");
  }

  [[nodiscard]] Unit unit_of_amount() const {
    if (!written_.each_text.empty()) {
      if (written_.each) return written_.each->unit();
      fail_at(written_.unit_at, "unit.which_measures",
              "it is not stated which measures \"" + excerpt(written_.each_text) + "\" means",
              "measures = one of: metric, us, imperial, au");
    }
    if (written_.unit_kind != UnitKind::measure) return Unit::named("piece");
    if (written_.measure) return *written_.measure;
    return at_offset(written_.unit_at, [&] {
      return Unit({{find_unit(written_.unit, reading_.measures, UnitScope::kitchen), 1}});
    });
  }

  [[nodiscard]] Stage stage_of_amount(Unit unit) {
    if (!input_.stage.text.empty()) return stated_stage();
    if (written_.stage) return *written_.stage;
    const bool counted = unit.dimension() == dimension::piece();
    // What a tin holds is as purchased, whatever is done after opening it.
    if (counted || !line_.container.empty()) return Stage::as_purchased;
    if (is_raw()) return Stage::as_purchased;
    const Stage prepared = stage_of(line_.preparations);
    if (prepared != Stage::none) return prepared;
    if (unit.dimension() != dimension::volume() || !fills_only_when_edible()) {
      return Stage::as_purchased;
    }
    line_.doubts.push_back("the " + unit.symbol() +
                           " is taken as of the edible portion, as the figures of the food are "
                           "(write AP or EP behind the name to say which)");
    return Stage::edible;
  }

  /// All densities of the food are of its edible portion: no one fills a cup with peel and stones.
  [[nodiscard]] bool fills_only_when_edible() const {
    bool found = false;
    for (const Fact* fact : catalog_.facts(line_.food_id)) {
      if (fact->kind != FactKind::density) continue;
      if (fact->from != Stage::edible) return false;
      found = true;
    }
    return found;
  }

  /// `raw potatoes, boiled`, `rice (dry weight), boiled`: measured before it is cooked.
  [[nodiscard]] bool is_raw() const {
    if (stage_of(line_.preparations) != Stage::cooked) return false;
    const std::string told = lower(line_.preparation + " " + joined(written_.notes));
    return told.find("raw") != std::string::npos || told.find("uncooked") != std::string::npos ||
           told.find("dry weight") != std::string::npos;
  }

  [[nodiscard]] Stage stated_stage() const {
    const auto stage = stage_named(input_.stage.text);
    if (!stage) {
      fail("line.stage", "\"" + excerpt(input_.stage.text) + "\" is no stage",
           "stage is one of AP, EP, cooked, drained, served", input_.stage.place);
    }
    return *stage;
  }

  void check_second_measures() {
    for (const SecondMeasure& second : written_.second_measures) {
      std::string doubt = at_offset(input_.line.text.find(second.text),
                                    [&] { return doubt_of(line_, second, catalog_); });
      if (!doubt.empty()) line_.doubts.push_back(std::move(doubt));
    }
  }

  void read_rule() {
    if (!written_.rule.empty() && !input_.rule.text.empty()) {
      fail("line.rule", "the line has a rule in its text and another beside it", {},
           input_.rule.place);
    }
    const bool in_text = input_.rule.text.empty();
    const std::string& rule = in_text ? written_.rule : input_.rule.text;
    if (rule.empty()) {
      if (written_.to_taste && line_.measured) line_.rule.kind = RuleKind::to_taste;
      return;
    }
    expect_amount_to_rule(in_text ? Place{} : input_.rule.place);
    const Unit unit = line_.written.unit();
    const auto parse = [&] { return parse_rule(rule, unit, reading_.measures); };
    line_.rule = in_text ? within(written_.rule_at, parse)
                         : located(input_.rule.place, input_.rule.text, parse);
    const bool counted = unit.dimension().without_stages() == dimension::piece();
    if (line_.rule.kind == RuleKind::whole && !counted) {
      fail_at(written_.food_at, "rule.unit",
              "only a count can be held to whole pieces, and the line is measured in " +
                  unit.without_stages().symbol());
    }
  }

  void expect_amount_to_rule(Place place) const {
    if (line_.measured) return;
    if (place.text().empty()) place.offset = written_.rule_at;
    fail("line.rule", "the line has a rule, but no amount for it", {}, place);
  }

  /// Errors inside a part of the text that begins at `start`.
  template <typename Read>
  static Rule within(std::size_t start, Read read) {
    try {
      return read();
    } catch (const Error& error) {
      Place place;
      const std::size_t inside = error.place().offset;
      place.offset = start + (inside == Place::no_offset ? 0 : inside);
      throw error.at(place);
    }
  }

  void read_extras() {
    line_.id = input_.id.text.empty() ? id_of_name(line_.food) : input_.id.text;
    line_.optional = input_.optional || written_.optional;
    std::vector<std::string> notes = written_.notes;
    if (!input_.note.empty()) notes = {input_.note};
    for (const std::string& other : written_.alternatives) {
      notes.push_back("or " + other);
      line_.doubts.push_back("the other choice, " + other +
                             ", is neither costed nor among the allergens");
    }
    for (const std::string& other : written_.beside) notes.push_back("with " + other);
    line_.note = joined(notes);
  }

  const WrittenLine& written_;
  const LineInput& input_;
  Reading reading_;
  const Catalog& catalog_;
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

std::optional<Quantity> Line::part_amount() const {
  if (!part_of_one) return std::nullopt;
  return *part_of_one * amount.coherent();
}

const std::string& Line::counted_noun() const {
  return noun.empty() && containers.is_zero() ? container : noun;
}

bool Line::drained_later() const {
  return written.stage() == Stage::as_purchased && stage_of(preparations) == Stage::drained;
}

Line line_from(const WrittenLine& written, const LineInput& input, Reading reading,
               const Catalog& catalog) {
  return LineMaker(written, input, reading, catalog).make();
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
