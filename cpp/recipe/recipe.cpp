#include "recipe/recipe.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "exact/number_text.hpp"

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
void expect_rule_agrees(const Line& line, const Rational& serves) {
  if (line.rule.kind != RuleKind::per_portions) return;
  const Rational& written = line.written.coherent();
  const Rational ruled = amount_by_rule(line.rule, written, serves, serves).amount;
  if (ruled == written) return;
  const Unit unit = line.written.unit();
  fail("rule.contradiction",
       "the line has " + line.written.text() + " for " + exact_text(serves) +
           " portions, but its rule (" + text_of(line.rule, unit) + ") gives " +
           Quantity::of_coherent(ruled, unit).text(),
       "change the amount or the rule", line.place);
}

void size_by_rule(Line& line, const Rational& serves, const Rational& portions) {
  if (!line.measured) return;
  const Unit unit = line.written.unit();
  const auto ruled = [&](const Quantity& written) {
    return amount_by_rule(line.rule, written.coherent(), serves, portions);
  };
  RuledAmount high = ruled(line.written);
  line.exact = Quantity::of_coherent(std::move(high.exact), unit);
  line.amount = Quantity::of_coherent(std::move(high.amount), unit);
  line.amount_low = Quantity::of_coherent(ruled(line.written_low).amount, unit);
}

}  // namespace

Recipe::Recipe(const RecipeInput& input, std::shared_ptr<const Catalog> catalog)
    : catalog_(std::move(catalog)) {
  expect_valid(input);
  name_ = input.name.text;
  serves_ = portions_ = input.serves;
  measures_ = input.reading.measures;
  tested_at_ = input.tested_at;
  std::string heading;
  for (const LineInput& line : input.lines) {
    located(line.line.place, line.line.text, [&] { add_line(line, input.reading, heading); });
  }
  if (lines_.empty()) {
    fail("recipe.no_lines", "the recipe has headings, but no lines", {}, input.lines_place);
  }
  expect_unique_ids(lines_);
}

void Recipe::add_line(const LineInput& input, Reading reading, std::string& heading) {
  const WrittenLine written = read_written_line(input.line.text, reading, *catalog_);
  if (written.kind == LineKind::heading) heading = written.heading;
  if (written.kind != LineKind::ingredient) return;
  Line line = line_from(written, input, reading, *catalog_);
  if (line.heading.empty()) line.heading = heading;
  expect_rule_agrees(line, serves_);
  size_by_rule(line, serves_, portions_);
  lines_.push_back(std::move(line));
}

Recipe Recipe::scaled(const Rational& portions) const {
  if (portions.sign() <= 0) {
    fail("recipe.portions", "a recipe cannot be made for " + exact_text(portions) + " portions",
         "the number of portions must be above zero");
  }
  Recipe result(*this);
  result.portions_ = portions;
  for (Line& line : result.lines_) size_by_rule(line, serves_, portions);
  return result;
}

std::string Recipe::tested_text() const {
  const std::string size = exact_text(portions_);
  if (tested_at_.empty()) return "no tested size is stated; " + size + " is computed";
  std::string tested = "tested at ";
  for (std::size_t i = 0; i < tested_at_.size(); ++i) {
    tested += (i == 0 ? "" : ", ") + exact_text(tested_at_[i]);
  }
  const bool known = std::ranges::find(tested_at_, portions_) != tested_at_.end();
  return known ? tested : tested + "; " + size + " is computed";
}

}  // namespace scalepan
