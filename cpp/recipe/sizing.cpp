#include "recipe/sizing.hpp"

#include <algorithm>
#include <utility>

#include "exact/number_text.hpp"
#include "food/convert.hpp"
#include "measure/nearest.hpp"
#include "measure/told.hpp"

namespace scalepan {

namespace {

std::string amount_text(const Rational& coherent, Unit unit) {
  return tell(Quantity::of_coherent(coherent, unit)).text;
}

/// A target on its course, and the words for where that misses it.
class Search {
 public:
  Search(const Recipe& recipe, const Quantity& target, bool before, Growing growing)
      : target_(target),
        growing_(std::move(growing)),
        course_(recipe.batch().course_of(target, before, growing_)) {}

  /// The factor that meets the target.
  [[nodiscard]] Rational factor() const {
    const Rational factor = nearest_below();
    if (factor.is_zero()) fail_below_all();
    if (!meets(factor)) fail_between(factor);
    return factor;
  }

  /// The same, or that of the next whole portions.
  [[nodiscard]] Rational factor_of_enough() const {
    const Rational factor = nearest_below();
    if (!factor.is_zero() && meets(factor)) return factor;
    const auto end = course_.growth.end();
    if (end && *end == factor) fail_between(factor);
    const Rational next = (floor(growing_.serves * factor) + Rational(1)) / growing_.serves;
    return end ? std::min(*end, next) : next;
  }

 private:
  [[nodiscard]] Rational wanted() const { return target_.coherent() / course_.per; }
  [[nodiscard]] bool meets(const Rational& factor) const {
    return course_.growth.at(factor) == wanted();
  }
  [[nodiscard]] Rational nearest_below() const {
    const auto factor = course_.growth.last_at_most(wanted());
    if (!factor) fail_never();
    return *factor;
  }
  [[nodiscard]] std::string amount(const Rational& grown) const {
    return amount_text(grown * course_.per, target_.unit());
  }
  /// What the sizes behind a factor begin with; where the batch rises at once, none comes to that.
  [[nodiscard]] std::string amount_above(const Rational& factor, std::string_view open,
                                         std::string_view closed) const {
    const std::string above = amount(course_.growth.above(factor));
    return course_.growth.rises_after(factor) ? std::string(open) + above
                                              : above + std::string(closed);
  }
  [[nodiscard]] std::string asked() const { return tell(target_).text; }

  [[nodiscard]] std::string size_text(const Rational& factor) const {
    if (growing_.portions)
      return tell(Quantity(factor)).text + " times the written amounts come to ";
    const Rational portions = growing_.serves * factor;
    return portions_text(portions) + (portions == Rational(1) ? " comes to " : " come to ");
  }

  [[noreturn]] void fail_never() const {
    fail("size.target",
         "no size comes to " + asked() + ": the amounts do not grow with it, and make " +
             amount(course_.growth.at(1)),
         "every line is fixed");
  }

  [[noreturn]] void fail_below_all() const {
    fail("size.unreachable",
         "a batch of " + asked() + " cannot be made: the smallest one comes to " +
             amount_above(0, "more than ", ""),
         "lines that are fixed or go in steps are in every batch");
  }

  [[noreturn]] void fail_between(const Rational& factor) const {
    const std::string below = size_text(factor) + amount(course_.growth.at(factor));
    const std::string start = "a batch of " + asked() + " cannot be made: " + below;
    if (const auto end = course_.growth.end(); end && *end == factor) {
      fail("size.unreachable", start + ", and a taper ends there",
           "give the taper a further point");
    }
    fail("size.unreachable",
         start + ", and any more to " + amount_above(factor, "more than ", " or more"),
         "a line that goes in steps jumps over it: take one of the two sizes");
  }

  const Quantity& target_;
  Growing growing_;
  Batch::Course course_;
};

void expect_positive(const Quantity& target) {
  if (target.coherent().sign() > 0) return;
  fail("size.target", "a batch of " + target.text() + " is asked for, but must be above zero");
}

/// What there is of a food against the lines that take it.
class StockedLines {
 public:
  StockedLines(const Recipe& recipe, const LineStock& stock) : recipe_(recipe), stock_(stock) {
    if (!find_by_id()) find_by_food();
  }

  /// The first of them.
  [[nodiscard]] const Line& line() const { return *lines_.front(); }

  /// The largest factor it allows; nothing where any size is.
  [[nodiscard]] std::optional<Rational> factor() const {
    const Growing growing{recipe_.serves(), std::nullopt};
    Growth growth;
    for (const Line* line : lines_) add_line(growth, *line, growing);
    return growth.last_at_most(stock_.amount.coherent());
  }

 private:
  [[noreturn]] void refuse(const std::string& message, const std::string& hint = {}) const {
    fail("size.stock", message, hint, stock_.line.place);
  }

  void take(const Line& line) {
    if (!line.measured) refuse("the line " + line.id + " states no amount");
    lines_.push_back(&line);
  }

  bool find_by_id() {
    const auto found = std::ranges::find(recipe_.lines(), stock_.line.text, &Line::id);
    if (found == recipe_.lines().end()) return false;
    const bool named = is_called(*found);
    if (!named) take(*found);
    return !named;
  }

  [[nodiscard]] bool is_called(const Line& line) const {
    return plain_name(line.food) == plain_name(stock_.line.text) ||
           id_of_name(line.food) == stock_.line.text;
  }

  /// Lines that name the food otherwise, `egg` and `eggs`, take it too.
  void find_by_food() {
    const auto called =
        std::ranges::find_if(recipe_.lines(), [this](const Line& line) { return is_called(line); });
    if (called == recipe_.lines().end()) fail_unknown();
    for (const Line& line : recipe_.lines()) {
      const bool same = line.base ? line.base == called->base : line.item_key == called->item_key;
      if (same && line.base.has_value() == called->base.has_value()) take(line);
    }
    for (const Line& line : recipe_.food_lines()) {
      if (line.made_in.empty() || called->base || line.item_key != called->item_key) continue;
      refuse(
          "the stock of " + excerpt(stock_.line.text) + " also goes into " + line.id +
              ", and how much of it a base takes is not told by one line",
          "give the line an id that is no name of the food, and the stock by that; or the stock of "
          "the base");
    }
  }

  [[noreturn]] void fail_unknown() const {
    std::vector<std::string_view> names;
    std::string all;
    for (const Line& line : recipe_.lines()) {
      names.push_back(line.id);
      all += (all.empty() ? "" : ", ") + line.id;
    }
    const std::string near = nearest_hint(nearest_names(stock_.line.text, names));
    refuse("no line of the recipe is " + excerpt(stock_.line.text),
           near.empty() ? "lines: " + all : near);
  }

  void add_line(Growth& growth, const Line& line, const Growing& growing) const {
    const Rational unit = amount_of_unit(line);
    add_growth(growth, line.rule, line.written.coherent(), unit, growing);
    if (line.rule.kind != RuleKind::per_load) return;
    const Rational each = amount_by_rule(line.rule, line.written.coherent(), {}).amount;
    recipe_.batch().add_load_growth(growth, each * unit, growing);
  }

  /// A weight of what is trimmed or cooked is another one than as it was bought.
  void expect_stage(const Line& line) const {
    const Stage stage = line.written.stage();
    const bool counted = stock_.amount.dimension().without_stages() == dimension::piece();
    if (counted || stock_.amount.stage() != Stage::none) return;
    if (stage == Stage::none || stage == Stage::as_purchased) return;
    const std::string text = stock_.amount.text();
    refuse("it is not said whether " + text + " of " + line.food + " are as purchased or " +
               std::string(name_of(stage)),
           "write " + text + " AP or " + text + " " + std::string(symbol_of(stage)));
  }

  /// The line's coherent unit in the stock's.
  [[nodiscard]] Rational amount_of_unit(const Line& line) const {
    const Quantity& stock = stock_.amount;
    const Quantity& written = line.written;
    expect_stage(line);
    const bool same_stage = stock.stage() == Stage::none || stock.stage() == written.stage();
    if (same_stage && stock.dimension().without_stages() == written.dimension().without_stages()) {
      return 1;
    }
    const Food* food = recipe_.catalog().food(line.food_id);
    if (food == nullptr) {
      refuse("the stock of " + line.food + " is " + stock.text() +
                 ", but the recipe measures it in " + written.unit().symbol(),
             "state the stock as the recipe measures it");
    }
    const Stage stage = stock.stage() == Stage::none ? written.stage() : stock.stage();
    const Form from{kind_of(written.dimension().without_stages()), written.stage(), line.detail()};
    const Form to{kind_of(stock.dimension().without_stages()), stage, {}};
    return conversion(recipe_.catalog(), *food, from, to, line.preparations).factor;
  }

  const Recipe& recipe_;
  const LineStock& stock_;
  std::vector<const Line*> lines_;
};

LimitedSize whole_portions(const Recipe& recipe, std::string line, const Rational& factor) {
  const Rational exact = recipe.serves() * factor;
  const Rational portions = floor(exact);
  if (portions.is_zero()) {
    fail("size.stock", "the stock of " + line + " is enough for " + portions_text(exact) + " only",
         "one whole portion needs more");
  }
  return {size_of_portions(recipe.serves(), portions), std::move(line), exact};
}

}  // namespace

Size size_for_serving(const Recipe& recipe, const Serving& serving) {
  if (serving.portions.sign() <= 0) {
    fail("recipe.portions",
         "a recipe cannot be made for " + exact_text(serving.portions) + " portions",
         "the number of portions must be above zero");
  }
  if (serving.spare.sign() < 0) {
    fail("size.spare", "there cannot be " + exact_text(serving.spare) + " spare portions");
  }
  if (serving.loss.sign() < 0 || serving.loss >= Rational(1)) {
    fail("size.loss",
         "a serving loss of " + exact_text(serving.loss * Rational(100)) + " % leaves no portion",
         "write a percentage from 0 and below 100, of the batch that is made");
  }
  const Rational made = (serving.portions + serving.spare) / (Rational(1) - serving.loss);
  return {serving.portions, made, made / recipe.serves(), 1};
}

Size size_for_batch(const Recipe& recipe, const Quantity& target, bool before) {
  expect_positive(target);
  const Search search(recipe, target, before, {recipe.serves(), std::nullopt});
  return size_of_factor(recipe.serves(), search.factor());
}

Size size_for_at_least(const Recipe& recipe, const Quantity& target) {
  const Search search(recipe, target, false, {recipe.serves(), std::nullopt});
  return size_of_factor(recipe.serves(), search.factor_of_enough());
}

Size size_for_portions_of(const Recipe& recipe, const Serving& serving, const Quantity& portion) {
  Size size = size_for_serving(recipe, serving);
  const Quantity target = portion * size.portions;
  expect_positive(target);
  size.factor = Search(recipe, target, false, {recipe.serves(), size.portions}).factor();
  return size;
}

LimitedSize size_for_stock(const Recipe& recipe, const std::vector<LineStock>& stock) {
  std::optional<Rational> least;
  std::string limiting;
  for (const LineStock& entry : stock) {
    const StockedLines stocked(recipe, entry);
    const auto factor = stocked.factor();
    if (!factor || (least && *least <= *factor)) continue;
    least = factor;
    limiting = stocked.line().id;
  }
  if (!least) fail("size.stock", "the stock limits nothing: no line of it grows with the size");
  return whole_portions(recipe, std::move(limiting), *least);
}

}  // namespace scalepan
