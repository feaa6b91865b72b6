#include "recipe/made_bases.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "recipe/base_line.hpp"
#include "recipe/sizing.hpp"

namespace scalepan {

namespace {

using Known = const Recipe*;

/// Every base below a recipe, users before what they use.
class Order {
 public:
  explicit Order(const Recipe& recipe) {
    visit(recipe);
    std::ranges::reverse(bases_);
  }

  [[nodiscard]] const std::vector<const BaseRecipe*>& bases() const { return bases_; }

 private:
  void visit(const Recipe& recipe) {
    for (const BaseRecipe& base : recipe.bases()) {
      if (!seen_.emplace(base.recipe.get(), &base).second) continue;
      visit(*base.recipe);
      bases_.push_back(&base);
    }
  }

  std::map<Known, const BaseRecipe*> seen_;
  std::vector<const BaseRecipe*> bases_;
};

void expect_names_differ(const std::vector<const BaseRecipe*>& bases) {
  std::map<std::string, const BaseRecipe*> seen;
  for (const BaseRecipe* base : bases) {
    const auto [known, fresh] = seen.emplace(spoken(base->name), base);
    if (fresh) continue;
    fail("base.name_clash",
         "two bases are called " + base->name + ": " + known->second->recipe->name() + " and " +
             base->recipe->name(),
         "give one of them another name", base->place);
  }
}

/// The base is at fault, not the recipe that was asked for.
Size size_of_base(const BaseRecipe& base, const Quantity& wanted) {
  try {
    return size_for_at_least(*base.recipe, wanted);
  } catch (const Error& error) {
    fail(error.code(), "the base " + base.name + ": " + error.message(), error.hint(), base.place);
  }
}

/// So many times its written portions. Where some use is an amount or a share, which becomes one,
/// large enough that the batch comes to it, or as little more as steps allow in whole portions.
Recipe made_for(const BaseRecipe& base, const Rational& batches, bool by_amount) {
  const Recipe& written = *base.recipe;
  Recipe made = written.sized_alone(size_of_factor(written.serves(), batches));
  const auto whole = written.batch().amount(written.size());
  if (!whole || !by_amount) return made;
  const Quantity wanted = *whole * batches;
  if (made.batch().amount(made.size())->coherent() >= wanted.coherent()) return made;
  return written.sized_alone(size_of_base(base, wanted));
}

class Maker {
 public:
  explicit Maker(const Recipe& recipe) : order_(recipe) {
    expect_names_differ(order_.bases());
    take_uses(recipe, "");
  }

  std::vector<MadeBase> make() {
    std::vector<MadeBase> made;
    for (const BaseRecipe* base : order_.bases()) {
      std::vector<BaseUse>& uses = uses_[base->recipe.get()];
      Rational batches;
      for (const BaseUse& use : uses) batches += use.batches;
      const bool by_amount = std::ranges::any_of(uses, &BaseUse::by_amount);
      if (batches.is_zero()) continue;  // no use, or tapers that let all of them run out
      auto recipe = std::make_shared<const Recipe>(made_for(*base, batches, by_amount));
      take_uses(*recipe, base->name + ".");
      made.push_back({base->name, std::move(recipe), std::move(uses), batches});
    }
    std::ranges::reverse(made);
    return made;
  }

 private:
  void take_uses(const Recipe& recipe, const std::string& prefix) {
    for (const Line& line : recipe.lines()) {
      if (!line.base) continue;
      const BaseRecipe& base = recipe.bases()[*line.base];
      const bool by_amount = !(line.written.dimension() == dimension::portion());
      uses_[base.recipe.get()].push_back(
          {prefix + line.id, line.amount, batches_of(line, base), by_amount});
    }
  }

  Order order_;
  std::map<Known, std::vector<BaseUse>> uses_;
};

/// Those that take from a base, or those that do not.
std::vector<Line> lines_with_bases(const Recipe& recipe, bool of_bases) {
  std::vector<Line> lines;
  const auto take = [&](const Recipe& from, const std::string& made_in) {
    for (const Line& line : from.lines()) {
      if (line.base.has_value() != of_bases) continue;
      lines.push_back(line);
      if (made_in.empty()) continue;
      lines.back().id = made_in + "." + line.id;
      lines.back().made_in = made_in;
    }
  };
  take(recipe, "");
  for (const MadeBase& made : recipe.made_bases()) take(*made.recipe, made.name);
  return lines;
}

}  // namespace

std::vector<MadeBase> made_bases_of(const Recipe& recipe) { return Maker(recipe).make(); }

std::vector<Line> food_lines_of(const Recipe& recipe) { return lines_with_bases(recipe, false); }

std::vector<Line> base_lines_of(const Recipe& recipe) { return lines_with_bases(recipe, true); }

}  // namespace scalepan
