#include "recipe/recipe.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/told.hpp"
#include "recipe/bakers_percent.hpp"
#include "recipe/base_line.hpp"
#include "recipe/made_bases.hpp"

namespace scalepan {

namespace {

void expect_valid(const RecipeInput& input) {
  if (input.name.text.empty()) {
    fail("recipe.name", "the recipe has no name", {}, input.name.place);
  }
  const bool control = std::ranges::any_of(
      input.name.text, [](char c) { return static_cast<unsigned char>(c) < 0x20; });
  if (control) {
    fail("recipe.name", "the name of the recipe holds a control character", {}, input.name.place);
  }
  if (input.serves.sign() <= 0) {
    fail("recipe.serves", "serves is " + exact_text(input.serves) + ", but must be above zero",
         "write the number of portions the amounts are for", input.serves_place);
  }
  for (const Rational& size : input.tested_at) {
    if (size.sign() <= 0) {
      fail("recipe.tested_at", "tested_at holds " + exact_text(size) + ", but must be above zero",
           {}, input.tested_place);
    }
  }
  if (input.lines.empty()) {
    fail("recipe.no_lines", "the recipe has no lines", {}, input.lines_place);
  }
}

void expect_unique_ids(const std::vector<Line>& lines) {
  std::map<std::string_view, const Line*> seen;
  for (const Line& line : lines) {
    const auto [known, fresh] = seen.emplace(line.id, &line);
    if (fresh) continue;
    const std::string first = known->second->place.text();
    fail("recipe.duplicate_id",
         "two lines have the id " + line.id + ", this one and the one at " +
             (first.empty() ? "\"" + excerpt(known->second->text) + "\"" : first),
         "give one an id of its own: { id = \"" + line.id + "_2\", line = \"" + excerpt(line.text) +
             "\" }",
         line.place);
  }
}

/// The rule must give the written amount at the written size.
void expect_rule_agrees(const Line& line, const Size& written) {
  const bool may_differ =
      line.rule.kind == RuleKind::per_portions || line.rule.kind == RuleKind::per_load;
  if (!line.measured || !may_differ) return;
  const Rational ruled = amount_by_rule(line.rule, line.written.coherent(), written).amount;
  if (ruled == line.written.coherent()) return;
  const Unit unit = line.written.unit();
  const std::string loads = line.rule.kind == RuleKind::per_load
                                ? " in " + Quantity(written.loads).text() + " loads"
                                : "";
  fail("rule.contradiction",
       "the line has " + line.written.text() + " for " + exact_text(written.portions) +
           " portions" + loads + ", but its rule (" + text_of(line.rule, unit) + ") gives " +
           Quantity::of_coherent(ruled, unit).text(),
       "change the amount or the rule", line.place);
}

Rational parse_rounding(std::string_view text) {
  std::size_t at = 0;
  const auto percent = read_amount_number(text, at);
  const bool valid = percent && percent->sign() >= 0 && trimmed(text.substr(at)) == "%";
  if (valid) return *percent / Rational(100);
  fail_at(0, "recipe.rounding", "\"" + excerpt(text) + "\" is no share of an amount",
          "write a percentage: rounding = \"5 %\"");
}

void size_by_rule(Line& line, const Size& size) {
  if (!line.measured) return;
  const Unit unit = line.written.unit();
  const auto ruled = [&](const Quantity& written) {
    return located(line.place, line.text,
                   [&] { return amount_by_rule(line.rule, written.coherent(), size); });
  };
  RuledAmount high = ruled(line.written);
  line.exact = Quantity::of_coherent(std::move(high.exact), unit);
  line.amount = Quantity::of_coherent(std::move(high.amount), unit);
  line.amount_low = Quantity::of_coherent(ruled(line.written_low).amount, unit);
}

}  // namespace

Recipe::Recipe(std::shared_ptr<const RecipeInput> read_from, std::shared_ptr<const Catalog> catalog)
    : input_(std::move(read_from)), catalog_(std::move(catalog)) {
  const RecipeInput& input = *input_;
  expect_valid(input);
  name_ = input.name.text;
  serves_ = input.serves;
  reading_ = input.reading;
  tested_at_ = input.tested_at;
  tray_ = input.tray;
  trays_ = input.batch.trays;
  if (const PlacedText& share = input.rounding; !share.text.empty()) {
    rounding_ =
        located(share.place, share.text, [&] { return parse_rounding(trimmed(share.text)); });
  }
  std::string heading;
  for (const LineInput& line : input.lines) {
    located(line.line.place, line.line.text, [&] { add_line(line, input, heading); });
  }
  if (lines_.empty()) {
    fail("recipe.no_lines", "the recipe has headings, but no lines", {}, input.lines_place);
  }
  expect_unique_ids(lines_);
  settle_base_lines(lines_, bases());
  method_ = read_method(input.steps, lines_, input.reading);
  std::vector<UnitWeight> weights;
  for (const Line& line : lines_) weights.push_back(weight_in_batch(line, bases(), *catalog_));
  batch_ = std::make_shared<const Batch>(input.batch, lines_, weights, serves_, measures());
  size_lines(size_of_portions(serves_, serves_));
  for (const Line& line : lines_) expect_rule_agrees(line, size_);
  make_bases();
  expect_unique_ids(food_lines_);
}

/// One that takes from a base, or one in baker's percent.
std::optional<Line> Recipe::read_special_line(const LineInput& input,
                                              const RecipeInput& recipe) const {
  auto share = read_base_share(input, recipe.reading, bases());
  if (!recipe.flour.text.empty()) {
    const Quantity flour = located(recipe.flour.place, recipe.flour.text,
                                   [&] { return parse_flour(recipe.flour.text, measures()); });
    if (share) expect_whole_is_told(*share, recipe.reading, flour);
    if (!share) share = read_percent_line(input, recipe.reading, flour, *catalog_);
  }
  return share ? share : read_base_amount(input, recipe.reading, bases(), *catalog_);
}

void Recipe::add_line(const LineInput& input, const RecipeInput& recipe, std::string& heading) {
  const Reading reading = recipe.reading;
  if (auto line = read_special_line(input, recipe)) {
    line->heading = heading;
    lines_.push_back(std::move(*line));
    return;
  }
  const WrittenLine written = read_written_line(input.line.text, reading, *catalog_);
  if (written.kind == LineKind::heading) heading = written.heading;
  if (written.kind != LineKind::ingredient) return;
  Line line = line_from(written, input, reading, *catalog_);
  if (line.heading.empty()) line.heading = heading;
  lines_.push_back(std::move(line));
}

void Recipe::size_lines(Size size) {
  // The lines first, since their errors have a place.
  for (Line& line : lines_) size_by_rule(line, size);
  size.loads = batch_->loads_at(size);
  size_ = std::move(size);
  for (Line& line : lines_) {
    if (line.rule.kind == RuleKind::per_load) size_by_rule(line, size_);
  }
}

void Recipe::make_bases() {
  made_ = made_bases_of(*this);
  food_lines_ = food_lines_of(*this);
}

Line Recipe::line_at_size(const LineInput& input) const {
  return located(input.line.place, input.line.text, [&] {
    const WrittenLine written = read_written_line(input.line.text, reading_, *catalog_);
    if (written.kind != LineKind::ingredient) {
      fail("line.no_food", "\"" + excerpt(input.line.text) + "\" is no ingredient");
    }
    Line line = line_from(written, input, reading_, *catalog_);
    Size at_written = size_of_portions(serves_, serves_);
    at_written.loads = batch_->loads_at(at_written);
    expect_rule_agrees(line, at_written);
    size_by_rule(line, size_);
    return line;
  });
}

const MadeBase* Recipe::made_base(std::string_view name) const {
  const auto found = std::ranges::find(made_, name, &MadeBase::name);
  return found == made_.end() ? nullptr : &*found;
}

Recipe Recipe::scaled(const Rational& portions) const {
  return sized(size_of_portions(serves_, portions));
}

Recipe Recipe::sized(Size size) const {
  Recipe result = sized_alone(std::move(size));
  result.make_bases();
  return result;
}

Recipe Recipe::sized_alone(Size size) const {
  for (const Rational& portions : {size.served, size.portions}) {
    if (portions.sign() > 0) continue;
    fail("recipe.portions", "a recipe cannot be made for " + exact_text(portions) + " portions",
         "the number of portions must be above zero");
  }
  Recipe result(*this);
  result.size_lines(std::move(size));
  result.made_.clear();
  result.food_lines_.clear();
  return result;
}

bool Recipe::is_tested() const {
  const bool as_large = size_.portions == serves_ * size_.factor;
  return as_large && std::ranges::find(tested_at_, size_.portions) != tested_at_.end();
}

std::string Recipe::tested_text() const {
  const std::string size = tell(Quantity(size_.portions)).text;
  if (tested_at_.empty()) return "no tested size is stated; " + size + " is computed";
  std::string tested = "tested at ";
  for (std::size_t i = 0; i < tested_at_.size(); ++i) {
    tested += (i == 0 ? "" : ", ") + exact_text(tested_at_[i]);
  }
  if (is_tested()) return tested;
  const bool known = std::ranges::find(tested_at_, size_.portions) != tested_at_.end();
  return tested +
         (known ? "; portions of another size are computed" : "; " + size + " is computed");
}

}  // namespace scalepan
