#include "recipe/sizing.hpp"

#include <algorithm>
#include <utility>

#include "exact/number_text.hpp"
#include "food/convert.hpp"
#include "measure/nearest.hpp"
#include "measure/told.hpp"

namespace scalepan {

namespace {

std::string portions_text(const Rational& portions) {
  const std::string count = tell(Quantity(portions)).text;
  return count + (portions == Rational(1) ? " portion" : " portions");
}

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
  Rational factor() const {
    const Rational wanted = target_.coherent() / course_.per;
    const auto factor = course_.growth.last_at_most(wanted);
    if (!factor) fail_never();
    if (factor->is_zero()) fail_below_all();
    if (!(course_.growth.at(*factor) == wanted)) fail_between(*factor);
    return *factor;
  }

 private:
  [[nodiscard]] std::string amount(const Rational& grown) const {
    return amount_text(grown * course_.per, target_.unit());
  }
  [[nodiscard]] std::string asked() const { return tell(target_).text; }

  [[nodiscard]] std::string size_text(const Rational& factor) const {
    if (!growing_.portions) return portions_text(growing_.serves * factor);
    return tell(Quantity(factor)).text + " times the written amounts";
  }

  [[noreturn]] void fail_never() const {
    fail("size.target",
         "no size comes to " + asked() + ": the amounts do not grow with it, and make " +
             amount(course_.growth.at(1)),
         "every line is fixed");
  }

  [[noreturn]] void fail_below_all() const {
    fail("size.unreachable",
         "a batch of " + asked() + " cannot be made: the smallest one comes to more than " +
             amount(course_.growth.above(Rational(0))),
         "lines that are fixed or go in steps are in every batch");
  }

  [[noreturn]] void fail_between(const Rational& factor) const {
    const std::string below = size_text(factor) + " come to " + amount(course_.growth.at(factor));
    const std::string start = "a batch of " + asked() + " cannot be made: " + below;
    if (const auto end = course_.growth.end(); end && *end == factor) {
      fail("size.unreachable", start + ", and a taper ends there",
           "give the taper a further point");
    }
    fail("size.unreachable",
         start + ", and any more to more than " + amount(course_.growth.above(factor)),
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

/// One line's food against what there is of it.
class StockedLine {
 public:
  StockedLine(const Recipe& recipe, const Stock& stock)
      : recipe_(recipe), stock_(stock), line_(find()) {}

  [[nodiscard]] const Line& line() const { return line_; }

  /// The largest factor it allows; nothing where any size is.
  [[nodiscard]] std::optional<Rational> factor() const {
    const Rational unit = amount_of_unit();
    const Growing growing{recipe_.serves(), std::nullopt};
    Growth growth;
    add_growth(growth, line_.rule, line_.written.coherent(), unit, growing);
    if (line_.rule.kind == RuleKind::per_load) {
      const Rational each = amount_by_rule(line_.rule, line_.written.coherent(), {}).amount;
      recipe_.batch().add_load_growth(growth, each * unit, growing);
    }
    return growth.last_at_most(stock_.amount.coherent());
  }

 private:
  [[nodiscard]] const Line& find() const {
    std::vector<std::string_view> names;
    for (const Line& line : recipe_.lines()) {
      if (line.id == stock_.line.text || plain_name(line.food) == plain_name(stock_.line.text)) {
        if (line.measured) return line;
        fail("size.stock", "the line " + line.id + " states no amount", {}, stock_.line.place);
      }
      names.push_back(line.id);
    }
    const std::string near = nearest_hint(nearest_names(stock_.line.text, names));
    std::string all;
    for (const std::string_view name : names) all += (all.empty() ? "" : ", ") + std::string(name);
    fail("size.stock", "no line of the recipe is " + excerpt(stock_.line.text),
         near.empty() ? "lines: " + all : near, stock_.line.place);
  }

  /// The line's coherent unit in the stock's.
  [[nodiscard]] Rational amount_of_unit() const {
    const Quantity& stock = stock_.amount;
    const Quantity& written = line_.written;
    const bool same_stage = stock.stage() == Stage::none || stock.stage() == written.stage();
    if (same_stage && stock.dimension().without_stages() == written.dimension().without_stages()) {
      return 1;
    }
    const Food* food = recipe_.catalog().food(line_.food_id);
    if (food == nullptr) {
      fail("size.stock",
           "the stock of " + line_.food + " is " + stock.text() +
               ", but the recipe measures it in " + written.unit().symbol(),
           "state the stock as the recipe measures it", stock_.line.place);
    }
    const Stage stage = stock.stage() == Stage::none ? written.stage() : stock.stage();
    const Form from{kind_of(written.dimension().without_stages()), written.stage(), line_.detail()};
    const Form to{kind_of(stock.dimension().without_stages()), stage, {}};
    return conversion(recipe_.catalog(), *food, from, to, line_.preparations).factor;
  }

  const Recipe& recipe_;
  const Stock& stock_;
  const Line& line_;
};

LimitedSize whole_portions(const Recipe& recipe, std::string line, const Rational& factor) {
  const Rational exact = recipe.serves() * factor;
  const Rational portions = floor(exact);
  if (portions.is_zero()) {
    fail("size.stock", "the stock of " + line + " is enough for " + portions_text(exact) + " only",
         "one whole portion needs more");
  }
  return {{portions, portions, portions / recipe.serves(), 1}, std::move(line), exact};
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
  const Rational factor = Search(recipe, target, before, {recipe.serves(), std::nullopt}).factor();
  const Rational portions = recipe.serves() * factor;
  return {portions, portions, factor, 1};
}

Size size_for_portions_of(const Recipe& recipe, const Serving& serving, const Quantity& portion) {
  Size size = size_for_serving(recipe, serving);
  const Quantity target = portion * size.portions;
  expect_positive(target);
  size.factor = Search(recipe, target, false, {recipe.serves(), size.portions}).factor();
  return size;
}

LimitedSize size_for_stock(const Recipe& recipe, const std::vector<Stock>& stock) {
  std::optional<Rational> least;
  std::string limiting;
  for (const Stock& entry : stock) {
    const StockedLine stocked(recipe, entry);
    const auto factor = stocked.factor();
    if (!factor || (least && *least <= *factor)) continue;
    least = factor;
    limiting = stocked.line().id;
  }
  if (!least) fail("size.stock", "the stock limits nothing: no line of it grows with the size");
  return whole_portions(recipe, std::move(limiting), *least);
}

}  // namespace scalepan
